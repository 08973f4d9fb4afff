import type { Issue } from '#units';
import type { BatterRecipe, WrittenRecipe } from '../recipe/batter-recipe.js';
import type { FatFacts } from '../fats/fat-facts.js';
import { checkFats } from './check-fats.js';
import { checkFragrances } from './check-fragrances.js';
import { checkJug, checkLiquids } from './check-liquids.js';
import { recipeLimits, type Limit } from './recipe-limits.js';
import { acids } from '../lye/acids.js';
import { liquidsPerFat, sumOf } from '../lye/liquids-per-fat.js';
import { lyeForFats } from '../lye/lye-amounts.js';
import { lyeStock } from '../lye/lye-stock.js';
import { batterOf } from '../lye/water.js';

/** Per cent of pure alkali in the lye. Upper end [S4]: the solution is saturated not far above it. */
const lyeLimits = { low: 20, high: 50 } as const;

/**
 * Whether amounts can be worked out from a recipe.
 * @returns issues, paths from the recipe; none when it is sound: those of `checkFats`, `checkFragrances`, `checkLiquids` and
 * `checkJug`, `recipe.water-twice`, `lye.concentration-out-of-range`, `lye.koh-purity-missing`, `recipe.acid-strength-missing`,
 * `recipe.acid-for-water`, `lye.stock-too-weak`, `lye.stock-without-naoh`, and the codes of `recipeLimits`
 */
export function checkRecipe(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const issues = [
    ...checkFats(recipe, fats),
    ...purityIssues(recipe),
    ...acidIssues(recipe),
    ...checkFragrances(recipe),
    ...checkLiquids(recipe),
    ...recipeLimits(recipe).flatMap(limitIssues),
  ];
  // Water told by the lye or the fats has no concentration before these are sound.
  return issues.length > 0 ? issues : waterIssues(recipe, fats);
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
  if (value >= low - 1e-9 && value <= high + 1e-9) {
    const batter = { ...recipe, lyeConcentrationPercent: value };
    const jug = [...jugIssues(batter, fats), ...checkJug(batter, fats)];
    return jug.length > 0 ? jug : stockIssues(batter, fats);
  }
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
function jugIssues(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const index = (recipe.acids ?? []).findIndex(({ replacesWater = false }) => replacesWater);
  if (index < 0) return [];
  const liquids = liquidsPerFat(recipe, fats);
  const lye = lyeForFats(recipe, fats, 100, liquids);
  const waterG = lye.waterG + 100 * sumOf(liquids, 'waterG', 'lye');
  const lyeG = lye.naohG + lye.kohG;
  if (waterG >= lyeG) return [];
  const path = ['acids', index, 'replacesWater'];
  return [{ code: 'recipe.acid-for-water', path, value: true, waterG, lyeG }];
}

function limitIssues({ issue, path, value, low, high, unit }: Limit): Issue[] {
  if (value >= low && value <= high) return [];
  const accepted = { kind: 'range', low, high, unit } as const;
  return [{ ...issue, path, value, accepted, found: value, unit }];
}

/** Lye cannot be made stronger than the solution that it is made from, nor with less water than that holds. */
function stockIssues(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const { lyeStockPercent, lyeConcentrationPercent: lyePercent } = recipe;
  if (lyeStockPercent === undefined) return [];
  const path = ['lyeStockPercent'];
  const lye = lyeForFats(recipe, fats, 100);
  if (lye.pureNaohG === 0) return [{ code: 'lye.stock-without-naoh', path, value: lyeStockPercent }];
  const { waterG } = lyeStock(recipe, lye) ?? { waterG: 0 };
  // The slack lets lye that is just as strong as its stock through in spite of its binary rounding.
  if (waterG >= -1e-9) return [];
  if ((recipe.liquids ?? []).length > 0) {
    return [{ code: 'lye.stock-leaves-no-liquids', path, value: lyeStockPercent, missingG: -waterG }];
  }
  const told = { lyePercent, stockPercent: lyeStockPercent };
  return [{ code: 'lye.stock-too-weak', path, value: lyeStockPercent, ...told }];
}
