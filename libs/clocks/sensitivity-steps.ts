import type { Measure } from './inputs.js';

/** What follows from other inputs, so that nobody moves it by itself. */
type Outcome = 'hotHours' | 'hardGelPercent';

/** How far a maker usually moves a measure, and why that far. */
export interface UsualStep {
  /** In the unit of the measure, above 0. */
  readonly by: number;
  readonly why: string;
}

const FAT_STEP: UsualStep = {
  by: 10,
  why: 'Recipes are written in steps of five or ten percent of the fats; ten is a change one can feel.',
};

/** The usual step of every measure: common practice and judgement, no source. */
export const usualSteps: Readonly<Record<Exclude<Measure, Outcome>, UsualStep>> = {
  lyeConcentrationPercent: {
    by: 3,
    why: 'Most makers stay between 28 and 35 %, and go from one habit to the next by about three.',
  },
  sodiumLactatePercent: { by: 1, why: 'It is dosed at 1, 2 or 3 % of the fats.' },
  saltPercent: { by: 1, why: 'As a hardener it is dosed at half a percent to two.' },
  sugarPercent: { by: 1, why: 'It is dosed at one or two percent.' },
  clayPercent: { by: 1, why: 'It is dosed at one to three percent.' },
  alcoholPercent: { by: 1, why: 'Beer that was boiled for longer or not as long differs by about this.' },
  superfatPercent: { by: 3, why: 'Most makers stay between 2 and 8 %.' },
  kohSharePercent: { by: 5, why: 'Bars take five per cent of it, seldom more.' },
  hardFattyAcidsPercent: {
    by: 10,
    why: 'Trading a tenth of the fats, liquid oil for a hard fat, moves them by up to this.',
  },
  oleicPercent: {
    by: 10,
    why: 'Trading a tenth of the fats, olive oil for a hard fat, moves it by up to this.',
  },
  polyunsaturatedPercent: {
    by: 10,
    why: 'Trading a tenth of the fats, sunflower oil for a hard fat, moves it by up to this.',
  },
  castorPercent: { by: 5, why: 'It is used at five or ten percent, seldom more.' },
  buttersPercent: FAT_STEP,
  olivePomacePercent: FAT_STEP,
  lardPercent: FAT_STEP,
  freeAcidsPercent: { by: 2, why: 'As a hardener stearic acid is dosed at one to three percent.' },
  waxPercent: { by: 1, why: 'Beeswax is dosed at one or two percent.' },
  batterTemperatureC: {
    by: 5,
    why: 'Lye and fats are mixed within five to eight degrees of what was meant.',
  },
  roomTemperatureC: {
    by: 5,
    why: 'A bench at home is that much warmer or cooler from one season to the next.',
  },
  castMl: { by: 40, why: 'Cavities of a guest soap, a bar and a large bar differ by about this.' },
  pieceMl: { by: 40, why: 'The same of the finished bar.' },
  coatMm: { by: 1, why: 'A coat is dipped once or twice, at a millimetre or two each.' },
  beadMm: { by: 3, why: 'Nozzles come in steps of two to four millimetres.' },
  meltMl: { by: 3, why: 'A thin glaze and a thick one differ by about this.' },
  gelPercent: { by: 25, why: 'A towel more or less changes the chance of gel by about this.' },
  roomHumidityPercent: { by: 15, why: 'A dry spell and a wet week differ by about this indoors.' },
};
