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
  readonly sugarPercent: number;
  /** Saturated fatty acids of 12 to 18 carbons. */
  readonly hardFattyAcidsPercent: number;
  readonly oleicPercent: number;
  readonly castorPercent: number;
  readonly buttersPercent: number;
  readonly olivePomacePercent: number;
  readonly batterTemperatureC: number;
  readonly roomTemperatureC: number;
  /** Relative humidity. */
  readonly roomHumidityPercent: number;
  /** Read only for soap that sets in a mould; coats, piping and glaze do not care. */
  readonly mould: 'silicone-cavity' | 'lined-wood' | 'lined-carton' | 'rigid-plastic';
  readonly fragrance: 'none' | 'slowing' | 'mild' | 'brisk' | 'strong' | 'seizing' | 'ricing' | 'unknown';
  readonly gel: 'none' | 'full';
  readonly mixing: 'blender' | 'to-emulsion' | 'hand';
  /** What the batch has been through when it goes into the mould. Batter that is mixed hot and poured as batter is `cold`. */
  readonly process: 'cold' | 'cooked' | 'rebatched';
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
  hardFattyAcidsPercent: 45,
  oleicPercent: 38,
  castorPercent: 5,
  buttersPercent: 0,
  olivePomacePercent: 0,
  batterTemperatureC: 38,
  roomTemperatureC: 20,
  roomHumidityPercent: 50,
  mould: 'silicone-cavity',
  fragrance: 'none',
  gel: 'none',
  mixing: 'blender',
  process: 'cold',
};

/** The unit of a measure, and what is accepted at all. Both bounds are included. */
export interface MeasureFacts {
  readonly unit: '%' | '°C';
  readonly low: number;
  readonly high: number;
}

const share = (high = 100): MeasureFacts => ({ unit: '%', low: 0, high });

/**
 * The accepted range is where a batch can exist, not where the rules are good: lye of 50 % is near
 * saturation, below 20 % the batter does not stay an emulsion. Batter above 75 °C is only for a batch that is cooked.
 */
export const measures: Readonly<Record<Measure, MeasureFacts>> = {
  lyeConcentrationPercent: { unit: '%', low: 20, high: 50 },
  sodiumLactatePercent: share(5),
  saltPercent: share(),
  // With what milk or purée brings: five per cent of sugar, and all liquid as banana.
  sugarPercent: share(20),
  hardFattyAcidsPercent: share(),
  oleicPercent: share(),
  castorPercent: share(),
  buttersPercent: share(),
  olivePomacePercent: share(),
  batterTemperatureC: { unit: '°C', low: 20, high: 90 },
  roomTemperatureC: { unit: '°C', low: 5, high: 35 },
  roomHumidityPercent: { unit: '%', low: 10, high: 95 },
};

/** What can be chosen. */
export const choices: { readonly [K in Choice]: readonly ClockInputs[K][] } = {
  mould: ['silicone-cavity', 'lined-wood', 'lined-carton', 'rigid-plastic'],
  fragrance: ['none', 'slowing', 'mild', 'brisk', 'strong', 'seizing', 'ricing', 'unknown'],
  gel: ['none', 'full'],
  mixing: ['blender', 'to-emulsion', 'hand'],
  process: ['cold', 'cooked', 'rebatched'],
};
