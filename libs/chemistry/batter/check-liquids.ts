import type { Issue } from '#units';
import type { FatFacts } from '../fats/fat-facts.js';
import { nearestFats } from '../fats/nearest-fats.js';
import { knownLiquid } from '../liquids/figures-of.js';
import { restG } from '../liquids/liquid-facts.js';
import { shippedLiquids } from '../liquids/liquid-table.js';
import { liquidsPerFat, sumOf } from '../lye/liquids-per-fat.js';
import { lyeForFats } from '../lye/lye-amounts.js';
import type { BatterRecipe, LiquidShare, WrittenRecipe } from '../recipe/batter-recipe.js';

/** The slack of shares that are written in thirds, and of binary sums; per cent. */
const ROUNDING = 1e-6;
/** Beyond any bench, to catch kilograms typed as grams; grams. */
const MOST_GRAMS = 1_000_000;

/**
 * Whether the liquids of a recipe can be worked with, each by itself and their shares together.
 * @returns issues, paths from the recipe; none when they are sound: `recipe.unknown-liquid`, `recipe.liquid-twice`,
 * `recipe.liquid-amount-unclear`, `recipe.liquid-share-out-of-range`, `recipe.liquid-mass-out-of-range`,
 * `recipe.liquid-figures-over-100`, `recipe.liquids-over-100`
 */
export function checkLiquids(recipe: WrittenRecipe): Issue[] {
  const { liquids = [] } = recipe;
  const each = liquids.flatMap((share, index) => [
    ...nameIssues(liquids, share, index),
    ...amountIssues(recipe, share, index),
    ...figureIssues(share, index),
  ]);
  const sum = liquids.reduce((total, { percentOfLiquid = 0 }) => total + percentOfLiquid, 0);
  if (!(sum > 100 + ROUNDING)) return each;
  const accepted = { kind: 'range', low: 0, high: 100, unit: '%' } as const;
  return [...each, { code: 'recipe.liquids-over-100', path: ['liquids'], value: sum, accepted, sum }];
}

function nameIssues(liquids: readonly LiquidShare[], share: LiquidShare, index: number): Issue[] {
  const { liquid, addedTo = 'lye' } = share;
  const path = ['liquids', index, 'liquid'];
  if (knownLiquid(share) === undefined) {
    const nearest = nearestFats(liquid, shippedLiquids, 3);
    return [{ code: 'recipe.unknown-liquid', path, value: liquid, nearest }];
  }
  const first = liquids.findIndex((other) => other.liquid === liquid && (other.addedTo ?? 'lye') === addedTo);
  return first < index ? [{ code: 'recipe.liquid-twice', path, value: liquid, addedTo }] : [];
}

function amountIssues({ fats }: WrittenRecipe, share: LiquidShare, index: number): Issue[] {
  const { liquid, percentOfLiquid, grams } = share;
  const path = ['liquids', index];
  const unclear = (problem: 'missing' | 'twice' | 'fats-in-shares'): Issue[] => {
    const field = problem === 'missing' ? 'percentOfLiquid' : 'grams';
    return [{ code: 'recipe.liquid-amount-unclear', path: [...path, field], value: grams, liquid, problem }];
  };
  if (percentOfLiquid === undefined && grams === undefined) return unclear('missing');
  if (percentOfLiquid !== undefined && grams !== undefined) return unclear('twice');
  if (grams !== undefined) {
    if (fats.some((fat) => fat.grams === undefined)) return unclear('fats-in-shares');
    if (grams > 0 && grams <= MOST_GRAMS) return [];
    return [
      {
        code: 'recipe.liquid-mass-out-of-range',
        path: [...path, 'grams'],
        value: grams,
        accepted: { kind: 'range', low: 0, high: MOST_GRAMS, isOpen: true, unit: 'g' },
        liquid,
      },
    ];
  }
  if (percentOfLiquid !== undefined && percentOfLiquid > 0 && percentOfLiquid <= 100) return [];
  return [
    {
      code: 'recipe.liquid-share-out-of-range',
      path: [...path, 'percentOfLiquid'],
      value: percentOfLiquid,
      accepted: { kind: 'range', low: 0, high: 100, isOpen: true, unit: '%' },
      liquid,
    },
  ];
}

function figureIssues(share: LiquidShare, index: number): Issue[] {
  const known = share.own === undefined ? undefined : knownLiquid(share);
  if (known === undefined) return [];
  const { title, figures } = known;
  if (restG(figures) >= -ROUNDING && figures.waterG > 0) return [];
  const sum = 100 - restG({ ...figures, waterG: Math.max(0, figures.waterG) });
  return [
    {
      code: 'recipe.liquid-figures-over-100',
      path: ['liquids', index, 'own'],
      value: sum,
      accepted: { kind: 'range', low: 0, high: 100, unit: '%' },
      ...{ title, sum },
    },
  ];
}

/**
 * Whether the liquids leave water to dissolve the lye in: at least as much as lye is weighed, in plain water and the liquids
 * that go into the jug. From a stock solution it is dissolved already. Figures are those of 100 g of fats.
 * @param recipe otherwise sound
 * @returns `recipe.liquids-too-sour`, or `recipe.liquids-over-water` where the liquids by themselves hold more water than the
 * recipe asks for, else `recipe.lye-not-dissolved`, or nothing
 */
export function checkJug(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const { liquids = [] } = recipe;
  if (liquids.length === 0) return [];
  const path = ['liquids'];
  const perFat = liquidsPerFat(recipe, fats);
  const { waterG, naohG, kohG, lyeG } = lyeForFats(recipe, fats, 100, perFat);
  const broughtG = 100 * sumOf(perFat, 'waterG');
  // Strong acids ask for so much lye, and that for so much water, that no amount of them would bring it.
  if (perFat.some(({ massG }) => !(massG > 0)))
    return [{ code: 'recipe.liquids-too-sour', path, value: liquids }];
  if (waterG < -1e-9) {
    const askedG = waterG + broughtG;
    return [{ code: 'recipe.liquids-over-water', path, value: liquids, broughtG, askedG }];
  }
  const inJugG = waterG + 100 * sumOf(perFat, 'waterG', 'lye');
  if (recipe.lyeStockPercent !== undefined || inJugG >= naohG + kohG - 1e-9) return [];
  return [
    {
      code: 'recipe.lye-not-dissolved',
      path,
      value: liquids,
      ...{ waterG: inJugG, lyeG: lyeG - waterG },
    },
  ];
}
