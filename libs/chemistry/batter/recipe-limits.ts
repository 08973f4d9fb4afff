import type { IssueOf, RecipeLimitCode } from '#units';
import type { WrittenRecipe } from '../recipe/batter-recipe.js';

/** What a number of a recipe may be, both ends included. */
export interface Limit {
  /** The issue of a number beyond, but for the number itself. */
  readonly issue: LimitIssue;
  readonly path: readonly (string | number)[];
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly unit: '%' | '°C';
}

type LimitIssue = {
  readonly [C in RecipeLimitCode]: Omit<IssueOf<C>, 'path' | 'value' | 'accepted' | 'found' | 'unit'>;
}[RecipeLimitCode];

/** Of one fragrance, and of all together, per cent of the fats. */
export const MOST_FRAGRANCE_PERCENT = 10;

/** Limits of the trade [common practice, no source], but for the upper lye limit [S4] and the table's heat. */
export function recipeLimits(recipe: WrittenRecipe): Limit[] {
  const { fragrances = [], acids = [], colourants = [], additions = [] } = recipe;
  return [
    superfatLimit(recipe),
    purity('naoh', recipe.naohPurityPercent),
    ...(recipe.lyeStockPercent === undefined
      ? []
      : [
          {
            ...share({ code: 'lye.stock-out-of-range' }, ['lyeStockPercent'], recipe.lyeStockPercent, 52),
            low: 20,
          },
        ]),
    share({ code: 'recipe.koh-share-out-of-range' }, ['kohSharePercent'], recipe.kohSharePercent ?? 0, 100),
    ...(recipe.kohPurityPercent === undefined ? [] : [purity('koh', recipe.kohPurityPercent)]),
    share(
      { code: 'recipe.sodium-lactate-out-of-range' },
      ['sodiumLactatePercent'],
      recipe.sodiumLactatePercent,
      5,
    ),
    share({ code: 'recipe.salt-out-of-range' }, ['saltPercent'], recipe.saltPercent, 100),
    share({ code: 'recipe.sugar-out-of-range' }, ['sugarPercent'], recipe.sugarPercent, 5),
    {
      issue: { code: 'batter.temperature-out-of-range' },
      path: ['batterTemperatureC'],
      value: recipe.batterTemperatureC,
      low: 15,
      // What is not cooked is refused above 75 °C by the clocks, which know what becomes of it.
      high: 90,
      unit: '°C',
    },
    ...fragrances.map(({ percent, title }, i) =>
      share(
        { code: 'recipe.fragrance-out-of-range', title },
        ['fragrances', i, 'percent'],
        percent,
        MOST_FRAGRANCE_PERCENT,
      ),
    ),
    ...acids.flatMap(({ percent, strengthPercent = 100 }, i) => [
      share({ code: 'recipe.acid-out-of-range' }, ['acids', i, 'percent'], percent, 50),
      {
        ...share(
          { code: 'recipe.acid-strength-out-of-range' },
          ['acids', i, 'strengthPercent'],
          strengthPercent,
          100,
        ),
        low: 1,
      },
    ]),
    ...colourants.map(({ percent, title }, i) =>
      share({ code: 'recipe.colourant-out-of-range', title }, ['colourants', i, 'percent'], percent, 10),
    ),
    ...additions.map(({ percent, title }, i) =>
      share({ code: 'recipe.addition-out-of-range', title }, ['additions', i, 'percent'], percent, 50),
    ),
  ];
}

/** Above 25 are salt bars of coconut oil and soaps for very dry skin: common practice, no source. */
const MOST_SUPERFAT_PERCENT = { usually: 25, withReason: 40 } as const;

/** Lye that would stay in the soap is refused unless the maker says that it is meant, and so is much fat unless they say why. */
function superfatLimit({ superfatPercent, superfatReason, lyeExcessIntended = false }: WrittenRecipe): Limit {
  return {
    issue: { code: 'lye.superfat-out-of-range', isExcessIntended: lyeExcessIntended },
    path: ['superfatPercent'],
    value: superfatPercent,
    low: lyeExcessIntended ? -5 : 0,
    high: MOST_SUPERFAT_PERCENT[superfatReason === undefined ? 'usually' : 'withReason'],
    unit: '%',
  };
}

function purity(alkali: 'naoh' | 'koh', value: number): Limit {
  return {
    issue: { code: 'lye.purity-out-of-range', alkali },
    path: [`${alkali}PurityPercent`],
    value,
    low: 80,
    high: 100,
    unit: '%',
  };
}

function share(issue: LimitIssue, path: Limit['path'], value: number, high: number): Limit {
  return { issue, path, value, low: 0, high, unit: '%' };
}
