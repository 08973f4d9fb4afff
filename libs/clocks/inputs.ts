/**
 * Every quantity a rule may read. The shares of additives and of single fats are percent of the mass of the
 * fats; the shares of fatty acids are percent of the fatty acids. Names end in the unit.
 */
export interface ClockInputs {
  /** NaOH as a share of NaOH and water, by mass. */
  readonly lyeConcentrationPercent: number;
  /** Sodium lactate as the 60 % solution that is sold. */
  readonly sodiumLactatePercent: number;
  readonly saltPercent: number;
  /** Sugar, and that of honey, milk and fruit. */
  readonly sugarPercent: number;
  readonly clayPercent: number;
  /** What of the alcohol in a liquid is still there when it goes in. */
  readonly alcoholPercent: number;
  readonly superfatPercent: number;
  /** KOH as a share of the alkali, by moles; above a tenth a soap is a paste, of which no time is known. */
  readonly kohSharePercent: number;
  /** Saturated fatty acids of 12 to 18 carbons. */
  readonly hardFattyAcidsPercent: number;
  readonly oleicPercent: number;
  /** Linoleic and linolenic acid. */
  readonly polyunsaturatedPercent: number;
  readonly castorPercent: number;
  readonly buttersPercent: number;
  readonly olivePomacePercent: number;
  readonly lardPercent: number;
  /** Fats that are free fatty acids, such as stearic acid. */
  readonly freeAcidsPercent: number;
  readonly waxPercent: number;
  readonly batterTemperatureC: number;
  readonly roomTemperatureC: number;
  /** Relative humidity. */
  readonly roomHumidityPercent: number;
  /** How the air moves where soap stands and cures: shut in, as in any room, or before a fan or in a draught. */
  readonly air: 'still' | 'usual' | 'moving';
  /** Read only for soap that sets in a mould; coats, piping and glaze do not care. */
  readonly mould: 'silicone-cavity' | 'lined-wood' | 'lined-carton' | 'rigid-plastic';
  readonly fragrance: 'none' | 'slowing' | 'mild' | 'brisk' | 'strong' | 'seizing' | 'ricing' | 'unknown';
  readonly mixing: 'blender' | 'to-emulsion' | 'hand';
  /** What the batch has been through when it goes into the mould. Batter that is mixed hot and poured as batter is `cold`. */
  readonly process: 'cold' | 'cooked' | 'rebatched';
  /** What one cavity holds: the whole loaf where bars are cut from it. */
  readonly castMl: number;
  /** The soap of one finished piece. */
  readonly pieceMl: number;
  /** Thickness of a dipped coat. */
  readonly coatMm: number;
  /** Width of a piped line. */
  readonly beadMm: number;
  /** Melted base on one piece. */
  readonly meltMl: number;
  /** Share of the part that is expected to go through gel, from its balance of heat. */
  readonly gelPercent: number;
  /** The same, as far as its fats are hard and quick, such as coconut: none up to 60 % hard fatty acids, all from 80 % on. */
  readonly hardGelPercent: number;
  /** How long it is too hot to be handled, from its balance of heat. */
  readonly hotHours: number;
}

/** The inputs that are measured. */
export type Measure = {
  [K in keyof ClockInputs]: ClockInputs[K] extends number ? K : never;
}[keyof ClockInputs];

/** The inputs that are chosen from a list. */
export type Choice = Exclude<keyof ClockInputs, Measure>;

/**
 * The point at which every rule's factor is 1 and every state takes its base time. Also the plain answer to
 * a quantity that means nothing for a part, such as the mould of a dipped coat.
 */
export const referenceInputs: ClockInputs = {
  lyeConcentrationPercent: 33,
  sodiumLactatePercent: 0,
  saltPercent: 0,
  sugarPercent: 0,
  clayPercent: 0,
  alcoholPercent: 0,
  superfatPercent: 5,
  kohSharePercent: 0,
  hardFattyAcidsPercent: 45,
  oleicPercent: 38,
  polyunsaturatedPercent: 10,
  castorPercent: 5,
  buttersPercent: 0,
  olivePomacePercent: 0,
  lardPercent: 0,
  freeAcidsPercent: 0,
  waxPercent: 0,
  batterTemperatureC: 38,
  roomTemperatureC: 20,
  roomHumidityPercent: 50,
  air: 'usual',
  mould: 'silicone-cavity',
  fragrance: 'none',
  mixing: 'blender',
  process: 'cold',
  castMl: 80,
  pieceMl: 80,
  coatMm: 2,
  beadMm: 8,
  meltMl: 5,
  gelPercent: 0,
  hardGelPercent: 0,
  hotHours: 0,
};

/** The unit of a measure, and what is accepted at all. Both bounds are included. */
export interface MeasureFacts {
  readonly unit: '%' | '°C' | 'mL' | 'mm' | 'h';
  readonly low: number;
  readonly high: number;
}

const millilitres: MeasureFacts = { unit: 'mL', low: 0, high: 1_000_000 };

const share = (high = 100): MeasureFacts => ({ unit: '%', low: 0, high });

/**
 * The accepted range is where a batch can exist, not where the rules are good: lye of 50 % is near
 * saturation, below 20 % the batter does not stay an emulsion. Batter above 75 °C is only for a batch that is cooked.
 */
export const measures: Readonly<Record<Measure, MeasureFacts>> = {
  lyeConcentrationPercent: { unit: '%', low: 20, high: 50 },
  sodiumLactatePercent: share(5),
  saltPercent: share(),
  // With what milk, honey or purée brings: five per cent of sugar, and all liquid as banana; and half of a milk powder.
  sugarPercent: share(60),
  clayPercent: share(50),
  // Spirits for all water that a recipe can have.
  alcoholPercent: share(150),
  superfatPercent: { unit: '%', low: -100, high: 100 },
  kohSharePercent: share(),
  hardFattyAcidsPercent: share(),
  oleicPercent: share(),
  polyunsaturatedPercent: share(),
  castorPercent: share(),
  buttersPercent: share(),
  olivePomacePercent: share(),
  lardPercent: share(),
  freeAcidsPercent: share(),
  waxPercent: share(),
  batterTemperatureC: { unit: '°C', low: 15, high: 90 },
  roomTemperatureC: { unit: '°C', low: 5, high: 35 },
  roomHumidityPercent: { unit: '%', low: 10, high: 95 },
  castMl: millilitres,
  pieceMl: millilitres,
  coatMm: { unit: 'mm', low: 0, high: 50 },
  beadMm: { unit: 'mm', low: 0, high: 120 },
  meltMl: millilitres,
  gelPercent: share(),
  hardGelPercent: share(),
  hotHours: { unit: 'h', low: 0, high: 400 },
};

/** What can be chosen. */
export const choices: { readonly [K in Choice]: readonly ClockInputs[K][] } = {
  air: ['still', 'usual', 'moving'],
  mould: ['silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'],
  fragrance: ['none', 'slowing', 'mild', 'brisk', 'strong', 'seizing', 'ricing', 'unknown'],
  mixing: ['blender', 'to-emulsion', 'hand'],
  process: ['cold', 'cooked', 'rebatched'],
};
