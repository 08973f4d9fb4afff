import type { Issue } from '#units';
import type { FatFacts } from '../fats/fat-facts.js';
import { givenFatsG } from '../fats/fat-shares.js';
import { nearestFats } from '../fats/nearest-fats.js';
import type { FatAmount, WrittenRecipe } from '../recipe/batter-recipe.js';

/** Shares may miss 100 % by this much, in per cent: thirds written as 33.3, or a list of six rounded to whole ones. */
const SUM_TOLERANCE = 0.5;

/** Beyond any bench, to catch kilograms typed as grams, and the other way round; grams. */
const MOST_GRAMS = 1_000_000;

type Fats = ReadonlyMap<string, FatFacts>;

/**
 * Whether the fats of a recipe and the size of its batch can be worked with.
 * @returns issues, paths from the recipe; none when they are sound: `recipe.no-fats`, `recipe.unknown-fat`,
 * `recipe.fat-twice`, `recipe.fat-amount-unclear`, `recipe.fat-share-out-of-range`, `recipe.fat-mass-out-of-range`,
 * `recipe.shares-not-100`, `recipe.size-of-other-fat`, `recipe.size-out-of-range`
 */
export function checkFats(recipe: WrittenRecipe, fats: Fats): Issue[] {
  if (recipe.fats.length === 0) return [{ code: 'recipe.no-fats', path: ['fats'], value: recipe.fats }];
  const issues = recipe.fats.flatMap((each, index) => [
    ...nameIssues(recipe, each, index, fats),
    ...amountIssues(recipe, each, index),
  ]);
  return [...issues, ...sumIssues(recipe), ...sizeIssues(recipe)];
}

function nameIssues(recipe: WrittenRecipe, { fat }: FatAmount, index: number, fats: Fats): Issue[] {
  const path = ['fats', index, 'fat'];
  const issues: Issue[] = [];
  if (!fats.has(fat)) {
    issues.push({
      code: 'recipe.unknown-fat',
      path,
      value: fat,
      nearest: nearestFats(fat, fats.values(), 3),
    });
  }
  if (recipe.fats.findIndex((other) => other.fat === fat) < index) {
    issues.push({ code: 'recipe.fat-twice', path, value: fat });
  }
  return issues;
}

function amountIssues(recipe: WrittenRecipe, { fat, percent, grams }: FatAmount, index: number): Issue[] {
  const path = ['fats', index];
  if (percent === undefined && grams === undefined) {
    return [{ code: 'recipe.fat-amount-unclear', path, value: undefined, fat, problem: 'missing' }];
  }
  if (percent !== undefined && grams !== undefined) {
    return [{ code: 'recipe.fat-amount-unclear', path, value: grams, fat, problem: 'twice' }];
  }
  if (grams !== undefined && recipe.fats.some((other) => other.percent !== undefined)) {
    return [{ code: 'recipe.fat-amount-unclear', path, value: grams, fat, problem: 'mixed' }];
  }
  if (percent !== undefined && !(percent > 0 && percent <= 100)) {
    return [
      {
        code: 'recipe.fat-share-out-of-range',
        path: [...path, 'percent'],
        value: percent,
        accepted: { kind: 'range', low: 0, high: 100, isOpen: true, unit: '%' },
        fat,
      },
    ];
  }
  if (grams === undefined || (grams > 0 && grams <= MOST_GRAMS)) return [];
  return [
    {
      code: 'recipe.fat-mass-out-of-range',
      path: [...path, 'grams'],
      value: grams,
      accepted: { kind: 'range', low: 0, high: MOST_GRAMS, isOpen: true, unit: 'g' },
      fat,
    },
  ];
}

/** Shares a little off 100 are taken as they stand to each other; farther off, one is missing or wrong. */
function sumIssues({ fats }: WrittenRecipe): Issue[] {
  if (fats.some(({ percent }) => percent === undefined)) return [];
  const sum = fats.reduce((total, { percent = 0 }) => total + percent, 0);
  // The slack keeps 33.5 + 33.5 + 33.5, exactly on the limit, from failing by a rounding of its binary sum.
  if (Math.abs(sum - 100) <= SUM_TOLERANCE + 1e-9) return [];
  return [
    {
      code: 'recipe.shares-not-100',
      path: ['fats'],
      value: sum,
      accepted: { kind: 'range', low: 100 - SUM_TOLERANCE, high: 100 + SUM_TOLERANCE, unit: '%' },
      sum,
    },
  ];
}

function sizeIssues(recipe: WrittenRecipe): Issue[] {
  const { fats, size } = recipe;
  if (size === undefined || size.by === 'pieces') return [];
  if (size.by === 'fat' && !fats.some(({ fat }) => fat === size.fat)) {
    return [{ code: 'recipe.size-of-other-fat', path: ['size', 'fat'], value: size.fat, fat: size.fat }];
  }
  const fatsG = givenFatsG(recipe) ?? 0;
  if (fatsG > 0 && fatsG <= MOST_GRAMS) return [];
  return [
    {
      code: 'recipe.size-out-of-range',
      path: ['size', 'grams'],
      value: size.grams,
      accepted: { kind: 'range', low: 0, high: MOST_GRAMS, isOpen: true, unit: 'g' },
      fatsG,
    },
  ];
}
