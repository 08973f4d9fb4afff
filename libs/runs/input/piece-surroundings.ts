import { batchForFats, batterOf, fatTable, fromSheet, type FatFacts } from '#chemistry';
import { mouldOf, type BatchPart, type Fat, type MeltPart, type Mould, type Recipe } from '#contract';
import type { Batter } from './batter.js';
import { byKey } from './by-key.js';
import { cavityMl } from './cavity-of-mould.js';
import { partBatter } from './part-batter.js';
import type { UseSurroundings } from './expected-use.js';

/** What the parts of a design refer to, looked up. */
export interface PieceSurroundings {
  readonly recipes: ReadonlyMap<string, Batter>;
  readonly fats: ReadonlyMap<string, FatFacts>;
  readonly moulds: ReadonlyMap<string, Mould>;
}

/** Density of melted melt-and-pour base, g/mL: common practice, no source; a soap and glycerol gel. */
export const MELT_DENSITY = 1.05;

/** Looks up recipes, fats and moulds that were checked before. */
export function lookupTables(
  recipes: readonly Recipe[],
  own: readonly Fat[],
  moulds: readonly Mould[],
): PieceSurroundings {
  const fats = fatTable(own.map(fromSheet));
  return { fats, recipes: byKey(recipes.map((recipe) => batterOf(recipe, fats))), moulds: byKey(moulds) };
}

/** What is needed to say how much of a part a piece takes: its cavity, and how dense it is. */
export function useSurroundings(part: BatchPart | MeltPart, around: PieceSurroundings): UseSurroundings {
  const mould = around.moulds.get(mouldOf(part) ?? '');
  return {
    densityGPerMl: part.kind === 'melt-and-pour' ? MELT_DENSITY : batterDensity(part, around),
    ...(mould !== undefined && { cavityMl: cavityMl(mould) }),
  };
}

/** Everything in a batch grows with its fats, so any batch tells the density. */
function batterDensity(part: BatchPart, { recipes, fats }: PieceSurroundings): number {
  const recipe = recipes.get(part.recipe);
  if (recipe === undefined) throw new Error(`recipe ${part.recipe} was not checked`);
  const sample = batchForFats(partBatter(part, recipe, fats).batter, fats, 1000);
  if (!sample.ok) throw new Error(sample.issues.map(({ code }) => code).join(', '));
  return sample.value.densityGPerMl;
}
