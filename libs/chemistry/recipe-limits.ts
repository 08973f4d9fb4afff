import type { BatterRecipe } from './batter-recipe.js';

/** What a number of a recipe may be, both ends included. */
export interface Limit {
  readonly field: Exclude<keyof BatterRecipe, 'fats' | 'fragrance'>;
  readonly code: string;
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly unit: '%' | '°C';
  /** Why not beyond, where that is worth saying. */
  readonly because?: string;
}

/** Limits of the trade [common practice, no source], but for the upper lye limit [S4] and the table's heat. */
export const recipeLimits: readonly Limit[] = [
  {
    field: 'lyeConcentrationPercent',
    code: 'lye.concentration-out-of-range',
    name: 'The lye concentration',
    low: 20,
    high: 50,
    unit: '%',
    because:
      'Stronger lye is close to saturation and crystallises; weaker lye leaves soap that does not set.',
  },
  {
    field: 'superfatPercent',
    code: 'lye.superfat-out-of-range',
    name: 'The superfat',
    low: 0,
    high: 25,
    unit: '%',
    because: 'Below 0 % lye is left over in the soap, and it burns.',
  },
  {
    field: 'naohPurityPercent',
    code: 'lye.purity-out-of-range',
    name: 'The purity of the NaOH',
    low: 80,
    high: 100,
    unit: '%',
  },
  share('sodiumLactatePercent', 'recipe.sodium-lactate-out-of-range', 'Sodium lactate', 5),
  share('saltPercent', 'recipe.salt-out-of-range', 'Salt', 100),
  share('sugarPercent', 'recipe.sugar-out-of-range', 'Sugar', 5),
  {
    field: 'batterTemperatureC',
    code: 'batter.temperature-out-of-range',
    name: 'The batter temperature',
    low: 20,
    high: 75,
    unit: '°C',
  },
];

/** Fragrance stands in a record of its own, so its limit does too; per cent of the fats. */
export const fragranceLimit = { low: 0, high: 10 } as const;

function share(field: Limit['field'], code: string, name: string, high: number): Limit {
  return { field, code, name, low: 0, high, unit: '%' };
}
