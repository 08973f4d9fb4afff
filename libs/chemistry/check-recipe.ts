import type { Issue } from '#units';
import type { BatterRecipe } from './batter-recipe.js';
import type { FatFacts } from './fat-facts.js';
import { nearestFats } from './nearest-fats.js';
import { fragranceLimit, recipeLimits, type Limit } from './recipe-limits.js';

/** Shares typed with one decimal may miss 100 % by this much, in per cent. */
const SUM_TOLERANCE = 0.05;

/**
 * Whether amounts can be worked out from a recipe.
 * @returns issues, paths from the recipe; none when it is sound: `recipe.no-fats`, `recipe.unknown-fat`,
 * `recipe.fat-twice`, `recipe.fat-share-out-of-range`, `recipe.shares-not-100`,
 * `recipe.fragrance-out-of-range`, and the codes of `recipeLimits`
 */
export function checkRecipe(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  return [
    ...fatIssues(recipe, fats),
    ...sumIssues(recipe),
    ...recipeLimits.flatMap((limit) => limitIssues(recipe, limit)),
    ...fragranceIssues(recipe),
  ];
}

function fatIssues(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  return recipe.fats.flatMap(({ fat, percent }, index): Issue[] => {
    const issues: Issue[] = [];
    if (!fats.has(fat)) {
      const nearest = nearestFats(fat, fats.values(), 3).join(', ');
      issues.push({
        code: 'recipe.unknown-fat',
        path: ['fats', index, 'fat'],
        message: `There is no fat “${fat}”. Nearest known: ${nearest}.`,
        value: fat,
        accepted: 'the key of a shipped fat or of one of your own',
      });
    }
    if (recipe.fats.findIndex((other) => other.fat === fat) < index) {
      issues.push({
        code: 'recipe.fat-twice',
        path: ['fats', index, 'fat'],
        message: `“${fat}” is listed twice; give it one share.`,
        value: fat,
        accepted: 'each fat once',
      });
    }
    if (!(percent > 0 && percent <= 100)) {
      issues.push({
        code: 'recipe.fat-share-out-of-range',
        path: ['fats', index, 'percent'],
        message: `“${fat}” has a share of ${String(percent)} %; more than 0 and at most 100 % are accepted.`,
        value: percent,
        accepted: 'more than 0, at most 100 %',
      });
    }
    return issues;
  });
}

function sumIssues(recipe: BatterRecipe): Issue[] {
  if (recipe.fats.length === 0) {
    return [
      {
        code: 'recipe.no-fats',
        path: ['fats'],
        message: 'The recipe has no fats; at least one is needed.',
        value: recipe.fats,
        accepted: 'one fat or more',
      },
    ];
  }
  const sum = recipe.fats.reduce((total, { percent }) => total + percent, 0);
  // The slack keeps 33.35 + 33.35 + 33.35, exactly on the limit, from failing by a rounding of its binary sum.
  if (Math.abs(sum - 100) <= SUM_TOLERANCE + 1e-9) return [];
  return [
    {
      code: 'recipe.shares-not-100',
      path: ['fats'],
      message: `The shares of the fats add up to ${String(Number(sum.toFixed(2)))} %; they must make 100 %, give or take ${String(SUM_TOLERANCE)}.`,
      value: sum,
      accepted: '99.95 to 100.05 %',
    },
  ];
}

function limitIssues(recipe: BatterRecipe, limit: Limit): Issue[] {
  const value = recipe[limit.field];
  if (value >= limit.low && value <= limit.high) return [];
  const accepted = `${String(limit.low)} to ${String(limit.high)} ${limit.unit}`;
  const because = limit.because === undefined ? '' : ` ${limit.because}`;
  return [
    {
      code: limit.code,
      path: [limit.field],
      message: `${limit.name} is ${String(value)} ${limit.unit}; accepted: ${accepted}.${because}`,
      value,
      accepted,
    },
  ];
}

function fragranceIssues(recipe: BatterRecipe): Issue[] {
  const value = recipe.fragrance?.percent;
  if (value === undefined || (value >= fragranceLimit.low && value <= fragranceLimit.high)) return [];
  const accepted = `${String(fragranceLimit.low)} to ${String(fragranceLimit.high)} %`;
  return [
    {
      code: 'recipe.fragrance-out-of-range',
      path: ['fragrance', 'percent'],
      message: `The fragrance is ${String(value)} % of the fats; accepted: ${accepted}, within the supplier’s own limit.`,
      value,
      accepted,
    },
  ];
}
