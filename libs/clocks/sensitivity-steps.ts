import type { Measure } from './inputs.js';

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
export const usualSteps: Readonly<Record<Measure, UsualStep>> = {
  lyeConcentrationPercent: {
    by: 3,
    why: 'Most makers stay between 28 and 35 %, and go from one habit to the next by about three.',
  },
  sodiumLactatePercent: { by: 1, why: 'It is dosed at 1, 2 or 3 % of the fats.' },
  saltPercent: { by: 1, why: 'As a hardener it is dosed at half a percent to two.' },
  sugarPercent: { by: 1, why: 'It is dosed at one or two percent.' },
  hardFattyAcidsPercent: {
    by: 10,
    why: 'Trading a tenth of the fats, liquid oil for a hard fat, moves them by up to this.',
  },
  oleicPercent: {
    by: 10,
    why: 'Trading a tenth of the fats, olive oil for a hard fat, moves it by up to this.',
  },
  castorPercent: { by: 5, why: 'It is used at five or ten percent, seldom more.' },
  buttersPercent: FAT_STEP,
  olivePomacePercent: FAT_STEP,
  batterTemperatureC: {
    by: 5,
    why: 'Lye and fats are mixed within five to eight degrees of what was meant.',
  },
  roomTemperatureC: {
    by: 5,
    why: 'A bench at home is that much warmer or cooler from one season to the next.',
  },
  roomHumidityPercent: { by: 15, why: 'A dry spell and a wet week differ by about this indoors.' },
};
