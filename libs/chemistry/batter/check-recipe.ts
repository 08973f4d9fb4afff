import type { Issue } from '#units';
import type { WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { nearestFats } from '../fats/nearest-fats.js';
import { recipeLimits, type Limit } from './recipe-limits.js';
import { acids } from '../lye/acids.js';
import { lyeForFats } from '../lye/lye-amounts.js';
import { batterOf } from '../lye/water.js';

/** Shares typed with one decimal may miss 100 % by this much, in per cent. */
const SUM_TOLERANCE = 0.05;

/** Per cent of pure alkali in the lye. Upper end [S4]: the solution is saturated not far above it. */
const lyeLimits = { low: 20, high: 50 } as const;

/**
 * Whether amounts can be worked out from a recipe.
 * @returns issues, paths from the recipe; none when it is sound: `recipe.no-fats`, `recipe.unknown-fat`,
 * `recipe.fat-twice`, `recipe.fat-share-out-of-range`, `recipe.shares-not-100`, `recipe.water-twice`,
 * `lye.concentration-out-of-range`, `lye.koh-purity-missing`, `recipe.acid-strength-missing`,
 * `recipe.acid-for-water`, and the codes of `recipeLimits`
 */
export function checkRecipe(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const issues = [
    ...fatIssues(recipe, fats),
    ...sumIssues(recipe),
    ...purityIssues(recipe),
    ...acidIssues(recipe),
    ...recipeLimits(recipe).flatMap(limitIssues),
  ];
  // Water told by the lye or the fats has no concentration before these are sound.
  return issues.length > 0 ? issues : waterIssues(recipe, fats);
}

function fatIssues(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  return recipe.fats.flatMap(({ fat, percent }, index): Issue[] => {
    const issues: Issue[] = [];
    if (!fats.has(fat)) {
      issues.push({
        code: 'recipe.unknown-fat',
        path: ['fats', index, 'fat'],
        value: fat,
        nearest: nearestFats(fat, fats.values(), 3),
      });
    }
    if (recipe.fats.findIndex((other) => other.fat === fat) < index) {
      issues.push({
        code: 'recipe.fat-twice',
        path: ['fats', index, 'fat'],
        value: fat,
      });
    }
    if (!(percent > 0 && percent <= 100)) {
      issues.push({
        code: 'recipe.fat-share-out-of-range',
        path: ['fats', index, 'percent'],
        value: percent,
        accepted: { kind: 'range', low: 0, high: 100, isOpen: true, unit: '%' },
        fat,
      });
    }
    return issues;
  });
}

function sumIssues(recipe: WrittenRecipe): Issue[] {
  if (recipe.fats.length === 0) {
    return [
      {
        code: 'recipe.no-fats',
        path: ['fats'],
        value: recipe.fats,
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
      value: sum,
      accepted: { kind: 'range', low: 100 - SUM_TOLERANCE, high: 100 + SUM_TOLERANCE, unit: '%' },
      sum,
    },
  ];
}

function purityIssues({ kohSharePercent = 0, kohPurityPercent }: WrittenRecipe): Issue[] {
  if (kohSharePercent === 0 || kohPurityPercent !== undefined) return [];
  return [
    {
      code: 'lye.koh-purity-missing',
      path: ['kohPurityPercent'],
      value: kohPurityPercent,
      accepted: { kind: 'range', low: 80, high: 100, unit: '%' },
    },
  ];
}

/** A household vinegar taken for the pure acid would more than double the lye. */
function acidIssues({ acids: shares = [] }: WrittenRecipe): Issue[] {
  return shares.flatMap(({ acid, strengthPercent }, i): Issue[] => {
    if (strengthPercent !== undefined || acids[acid].sold === 'as crystals') return [];
    return [
      {
        code: 'recipe.acid-strength-missing',
        path: ['acids', i, 'strengthPercent'],
        value: strengthPercent,
        accepted: { kind: 'range', low: 1, high: 100, unit: '%' },
        acid,
      },
    ];
  });
}

const waterFields = ['lyeConcentrationPercent', 'waterPerLye', 'waterPercentOfFats'] as const;

function waterIssues(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const told = waterFields.filter((field) => recipe[field] !== undefined);
  const [field = 'lyeConcentrationPercent', second] = told;
  if (second !== undefined) {
    return [{ code: 'recipe.water-twice', path: [second], value: recipe[second], fields: told }];
  }
  const value = batterOf(recipe, fats).lyeConcentrationPercent;
  const { low, high } = lyeLimits;
  // The slack lets a ratio that means exactly 50 % through in spite of its binary rounding.
  if (value >= low - 1e-9 && value <= high + 1e-9) return jugIssues(recipe, fats, value);
  return [
    {
      code: 'lye.concentration-out-of-range',
      path: [field],
      value: recipe[field],
      accepted: { kind: 'range', low, high, unit: '%' },
      percent: value,
      field,
    },
  ];
}

/** Lye must be dissolved in at least its own weight of water before any vinegar goes in. */
function jugIssues(
  recipe: WrittenRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  lyeConcentrationPercent: number,
): Issue[] {
  const { waterG, naohG, kohG } = lyeForFats({ ...recipe, lyeConcentrationPercent }, fats, 100);
  const index = (recipe.acids ?? []).findIndex(({ replacesWater = false }) => replacesWater);
  if (index < 0 || waterG >= naohG + kohG) return [];
  return [
    {
      code: 'recipe.acid-for-water',
      path: ['acids', index, 'replacesWater'],
      value: true,
      waterG,
      lyeG: naohG + kohG,
    },
  ];
}

function limitIssues({ issue, path, value, low, high, unit }: Limit): Issue[] {
  if (value >= low && value <= high) return [];
  const accepted = { kind: 'range', low, high, unit } as const;
  return [{ ...issue, path, value, accepted, found: value, unit }];
}
