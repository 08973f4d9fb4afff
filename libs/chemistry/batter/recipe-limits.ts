import type { WrittenRecipe } from '../recipe/batter-recipe.js';

/** What a number of a recipe may be, both ends included. */
export interface Limit {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: '%' | '°C';
  /** Why not beyond, where that is worth saying. */
  readonly because?: string;
}

/** Limits of the trade [common practice, no source], but for the upper lye limit [S4] and the table's heat. */
export function recipeLimits(recipe: WrittenRecipe): Limit[] {
  const { fragrance, acids = [], colourants = [], additions = [] } = recipe;
  return [
    superfatLimit(recipe),
    purity('naohPurityPercent', 'NaOH', recipe.naohPurityPercent),
    {
      ...share('recipe.koh-share-out-of-range', ['kohSharePercent'], 'KOH', recipe.kohSharePercent ?? 0, 100),
      name: 'The share of KOH in the alkali',
    },
    ...(recipe.kohPurityPercent === undefined
      ? []
      : [purity('kohPurityPercent', 'KOH', recipe.kohPurityPercent)]),
    share(
      'recipe.sodium-lactate-out-of-range',
      ['sodiumLactatePercent'],
      'Sodium lactate',
      recipe.sodiumLactatePercent,
      5,
    ),
    share('recipe.salt-out-of-range', ['saltPercent'], 'Salt', recipe.saltPercent, 100),
    share('recipe.sugar-out-of-range', ['sugarPercent'], 'Sugar', recipe.sugarPercent, 5),
    {
      code: 'batter.temperature-out-of-range',
      path: ['batterTemperatureC'],
      name: 'The batter temperature',
      value: recipe.batterTemperatureC,
      low: 20,
      high: 75,
      unit: '°C',
    },
    ...(fragrance === undefined
      ? []
      : [
          {
            ...share(
              'recipe.fragrance-out-of-range',
              ['fragrance', 'percent'],
              'The fragrance',
              fragrance.percent,
              10,
            ),
            because: 'Keep within the supplier’s own limit, too.',
          },
        ]),
    ...acids.flatMap(({ percent, strengthPercent = 100 }, i) => [
      share('recipe.acid-out-of-range', ['acids', i, 'percent'], 'An acid', percent, 50),
      {
        ...share(
          'recipe.acid-strength-out-of-range',
          ['acids', i, 'strengthPercent'],
          'The strength of an acid',
          strengthPercent,
          100,
        ),
        low: 1,
      },
    ]),
    ...colourants.map(({ percent, title }, i) =>
      share('recipe.colourant-out-of-range', ['colourants', i, 'percent'], `“${title}”`, percent, 10),
    ),
    ...additions.map(({ percent, title }, i) =>
      share('recipe.addition-out-of-range', ['additions', i, 'percent'], `“${title}”`, percent, 50),
    ),
  ];
}

/** Lye that would stay in the soap is refused unless the maker says that she means it. */
function superfatLimit({ superfatPercent, lyeExcessIntended = false }: WrittenRecipe): Limit {
  return {
    code: 'lye.superfat-out-of-range',
    path: ['superfatPercent'],
    name: 'The superfat',
    value: superfatPercent,
    low: lyeExcessIntended ? -5 : 0,
    high: 25,
    unit: '%',
    because: lyeExcessIntended
      ? 'More lye than that is not made into soap that anyone should touch.'
      : 'Below 0 % lye is left over in the soap, and it burns. For soap that is salted out or neutralised ' +
        'before use, say so with lyeExcessIntended: true.',
  };
}

function purity(field: string, alkali: string, value: number): Limit {
  return {
    code: 'lye.purity-out-of-range',
    path: [field],
    name: `The purity of the ${alkali}`,
    value,
    low: 80,
    high: 100,
    unit: '%',
  };
}

function share(code: string, path: Limit['path'], name: string, value: number, high: number): Limit {
  return { code, path, name, value, low: 0, high, unit: '%' };
}
