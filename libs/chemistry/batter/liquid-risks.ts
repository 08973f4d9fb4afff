import type { FatFacts } from '../fats/fat-facts.js';
import { liquidsPerFat, sumOf, type LiquidPerFat } from '../lye/liquids-per-fat.js';
import { superfatRange } from '../lye/lye-amounts.js';
import type { AdditionKind, BatterRecipe } from '../recipe/batter-recipe.js';
import type { Risk } from './risk.js';

/** Fat of the liquids from which on it is told, per cent of the fats: common practice, no source. */
const FAT_TOLD_PERCENT = 0.5;
/** Sugar and protein, and acid, of a liquid that is not in the table, from which on it scorches or spits, per cent of it. */
const SCORCHES_PERCENT = 2;
const SPITS_PERCENT = 2;
/** Alcohol of such a liquid from which on it foams over. Common practice, no source. */
const FOAMS_PERCENT = 0.5;

/** What makers look at twice in liquids other than water; common practice, no source. */
export function liquidRisks(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): Risk[] {
  const liquids = liquidsPerFat(recipe, fats);
  const told = (
    code: 'liquid.scorches' | 'liquid.boils-over' | 'liquid.spits' | 'liquid.spoils',
    level: Risk['level'],
    holds: (liquid: LiquidPerFat) => boolean,
  ): Risk[] => {
    const named = liquids.filter(holds).map(({ key, title }) => ({ liquid: key, title }));
    // What goes both into the lye and into the batter is told once.
    const once = named.filter((each, i) => named.findIndex(({ liquid }) => liquid === each.liquid) === i);
    return once.length === 0 ? [] : [{ code, level, liquids: once }];
  };
  return [
    ...told('liquid.boils-over', 'high', ({ shipped, figures }) =>
      shipped === undefined ? (figures.alcoholG ?? 0) >= FOAMS_PERCENT : shipped.kind === 'alcohol',
    ),
    ...told('liquid.spits', 'high', spits),
    ...told('liquid.scorches', 'medium', (liquid) => liquid.addedTo === 'lye' && scorches(liquid)),
    ...fatRisk(recipe, fats, liquids),
    ...told('liquid.spoils', 'low', ({ shipped }) => shipped?.kind === 'puree'),
  ];
}

function scorches({ shipped, figures }: LiquidPerFat): boolean {
  if (shipped === undefined) return figures.sugarG + figures.proteinG >= SCORCHES_PERCENT;
  return shipped.kind === 'milk' || shipped.kind === 'plant-drink' || shipped.kind === 'puree';
}

function spits({ shipped, figures }: LiquidPerFat): boolean {
  return shipped?.kind === 'acid' || (figures.acid?.grams ?? 0) >= SPITS_PERCENT;
}

function fatRisk(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
  liquids: readonly LiquidPerFat[],
): Risk[] {
  const fatPercent = 100 * sumOf(liquids, 'fatG');
  if (fatPercent < FAT_TOLD_PERCENT) return [];
  // Oil that carries colours is told by itself.
  const superfatPercent = superfatRange({ ...recipe, colourants: [] }, fats, liquids).used;
  return [{ code: 'liquid.adds-fat', level: 'low', fatPercent, superfatPercent }];
}

/** Sugar in what goes in, as a share of it: honey 82 % (USDA 19296), half of skimmed milk is lactose, a tenth of a fruit sugar. From memory. */
const additionSugar: Readonly<Partial<Record<AdditionKind, number>>> = {
  honey: 0.82,
  'powdered-milk': 0.45,
  'fresh-food': 0.1,
};

/** Sugar that honey, milk powder and fresh food bring, per cent of the fats. */
export function sugarInAdditions({ additions = [] }: Pick<BatterRecipe, 'additions'>): number {
  return additions.reduce((sum, { kind, percent }) => sum + (additionSugar[kind] ?? 0) * percent, 0);
}

/** Sugar or salt of a recipe with what its liquids bring, per cent of the fats: what clocks and thresholds go by. */
export function sugarAndSaltOf(
  recipe: BatterRecipe,
  fats: ReadonlyMap<string, FatFacts>,
): { readonly sugarPercent: number; readonly saltPercent: number } {
  const liquids = liquidsPerFat(recipe, fats);
  return {
    sugarPercent: recipe.sugarPercent + 100 * sumOf(liquids, 'sugarG'),
    saltPercent: recipe.saltPercent + 100 * sumOf(liquids, 'saltG'),
  };
}

/** Alcohol that liquids still hold when they go in, per cent of the fats. */
export function alcoholPercent(recipe: BatterRecipe, fats: ReadonlyMap<string, FatFacts>): number {
  const liquids = liquidsPerFat(recipe, fats);
  return liquids.reduce((sum, { massG, figures }) => sum + massG * (figures.alcoholG ?? 0), 0);
}
