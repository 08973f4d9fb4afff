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

function sumIssues(recipe: WrittenRecipe): Issue[] {
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

function purityIssues({ kohSharePercent = 0, kohPurityPercent }: WrittenRecipe): Issue[] {
  if (kohSharePercent === 0 || kohPurityPercent !== undefined) return [];
  return [
    {
      code: 'lye.koh-purity-missing',
      path: ['kohPurityPercent'],
      message:
        'KOH is sold at anything from 85 to 100 %, so its purity is not guessed; accepted: the figure on the ' +
        'supplier’s sheet, 80 to 100 %.',
      value: kohPurityPercent,
      accepted: '80 to 100 %, from the supplier’s sheet',
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
        message:
          `${acids[acid].title} is sold in water, at a strength that is not guessed; accepted: the figure on its ` +
          'label, such as 5 for a household vinegar.',
        value: strengthPercent,
        accepted: 'the share of acid on its label, per cent',
      },
    ];
  });
}

const waterFields = ['lyeConcentrationPercent', 'waterPerLye', 'waterPercentOfFats'] as const;

function waterIssues(recipe: WrittenRecipe, fats: ReadonlyMap<string, FatFacts>): Issue[] {
  const told = waterFields.filter((field) => recipe[field] !== undefined);
  const [field = 'lyeConcentrationPercent', second] = told;
  if (second !== undefined) {
    const message = `The water is told twice, as ${told.join(' and ')}; accepted: one of them.`;
    return [
      {
        code: 'recipe.water-twice',
        path: [second],
        message,
        value: recipe[second],
        accepted: 'one of the three',
      },
    ];
  }
  const value = batterOf(recipe, fats).lyeConcentrationPercent;
  const { low, high } = lyeLimits;
  // The slack lets a ratio that means exactly 50 % through in spite of its binary rounding.
  if (value >= low - 1e-9 && value <= high + 1e-9) return jugIssues(recipe, fats, value);
  const given = field === 'lyeConcentrationPercent' ? '' : ` (from ${field} ${String(recipe[field])})`;
  const accepted = `${String(low)} to ${String(high)} %`;
  return [
    {
      code: 'lye.concentration-out-of-range',
      path: [field],
      message:
        `The lye concentration is ${String(Number(value.toFixed(2)))} %${given}; accepted: ${accepted}. Stronger lye is ` +
        'close to saturation and crystallises; weaker lye leaves soap that does not set.',
      value: recipe[field],
      accepted: field === 'lyeConcentrationPercent' ? accepted : `what makes a lye of ${accepted}`,
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
  const accepted = 'as much water as lye left in the jug';
  return [
    {
      code: 'recipe.acid-for-water',
      path: ['acids', index, 'replacesWater'],
      message:
        `For 100 g of fats only ${waterG.toFixed(1)} g of water would be left to dissolve ${(naohG + kohG).toFixed(1)} g ` +
        `of lye; accepted: ${accepted}.`,
      value: true,
      accepted,
    },
  ];
}

function limitIssues({ code, path, name, value, low, high, unit, because }: Limit): Issue[] {
  if (value >= low && value <= high) return [];
  const accepted = `${String(low)} to ${String(high)} ${unit}`;
  const why = because === undefined ? '' : ` ${because}`;
  return [
    {
      code,
      path: [...path],
      message: `${name} is ${String(value)} ${unit}; accepted: ${accepted}.${why}`,
      value,
      accepted,
    },
  ];
}
