import type { NewRun, PlanInput, Recipe, RunOrder } from '#contract';
import type { RecipeChange } from '#runs';
import { newKey } from '../library/new-key.js';
import type { Wish } from '../whatif/messages.js';
import { groupsOf, type DraftGroup } from './draft-groups.js';
import { later, type LocalTime } from './local-times.js';

/** A run as far as it is thought out. */
export interface PlanDraft {
  readonly design: string | null;
  readonly count: number;
  /** null: all pieces are alike. */
  readonly groups: readonly DraftGroup[] | null;
  /** null: as the design is called. */
  readonly title: string | null;
  /** Begin after a moment, or be ready by a day. */
  readonly aim: 'after' | 'by';
  readonly startAfter: LocalTime;
  /** `2027-01-16` */
  readonly readyBy: string;
  /** Odds that a start counted back must keep. */
  readonly oddsPercent: number;
  /** By recipe; what is absent is as in the recipe. */
  readonly recipes: Readonly<Record<string, Omit<RecipeChange, 'recipe'>>>;
}

/**
 * Where the sliders stay: what draws no risk of its own in the chemistry (lye of 25 to 40 % is common, sodium lactate
 * up to 3 % usual). Common practice, no source.
 */
export const SAFE = {
  lye: { low: 25, high: 40, step: 0.5 },
  lactate: { low: 0, high: 3, step: 0.25 },
} as const;

/** A range of a slider that holds the recipe's own figure too. */
export function rangeWith(
  { low, high, step }: { readonly low: number; readonly high: number; readonly step: number },
  own: number,
): { readonly low: number; readonly high: number; readonly step: number } {
  return { low: Math.min(low, Math.floor(own)), high: Math.max(high, Math.ceil(own)), step };
}

/** Six weeks on: what most soap needs to cure. Common practice, no source. */
const USUAL_CURE_DAYS = 56;

/** Nothing chosen yet. @param now the coming hour on the wall of the workshop */
export function emptyDraft(now: LocalTime): PlanDraft {
  return {
    ...{
      design: null,
      count: 12,
      groups: null,
      title: null,
      aim: 'after',
      startAfter: now,
      oddsPercent: 80,
      recipes: {},
    },
    readyBy: later(now, USUAL_CURE_DAYS * 1440).slice(0, 10),
  };
}

/** A draft as it was kept; one whose time has passed begins now. @returns the empty draft where there is none */
export function revivedDraft(text: string | null, now: LocalTime): PlanDraft {
  const empty = emptyDraft(now);
  if (text === null) return empty;
  try {
    const kept = { ...empty, ...(JSON.parse(text) as Partial<PlanDraft>) };
    return {
      ...kept,
      startAfter: kept.startAfter < now ? now : kept.startAfter,
      readyBy: kept.readyBy <= now.slice(0, 10) ? empty.readyBy : kept.readyBy,
    };
  } catch {
    return empty;
  }
}

/** Lye of a recipe as a share of lye and water, nearly where its water is told by the fats. */
export function lyeOf(recipe: Recipe): number {
  if (recipe.lyeConcentrationPercent !== undefined) return recipe.lyeConcentrationPercent;
  if (recipe.waterPerLye !== undefined) return 100 / (1 + recipe.waterPerLye);
  // An ordinary mix of fats takes 13 to 14 g of alkali for each 100 g. Common practice, no source.
  if (recipe.waterPercentOfFats !== undefined) return (100 * 13.5) / (13.5 + recipe.waterPercentOfFats);
  return 33;
}

/** The changes of a draft that concern the recipes of its design and change anything. */
export function changesOf(draft: PlanDraft, recipes: readonly Recipe[]): RecipeChange[] {
  return recipes.flatMap((recipe) => {
    const { lyeConcentrationPercent: lye, sodiumLactatePercent: lactate } = draft.recipes[recipe.key] ?? {};
    const change: RecipeChange = {
      recipe: recipe.key,
      ...(lye !== undefined && lye !== lyeOf(recipe) && { lyeConcentrationPercent: lye }),
      ...(lactate !== undefined &&
        lactate !== recipe.sodiumLactatePercent && { sodiumLactatePercent: lactate }),
    };
    return Object.keys(change).length > 1 ? [change] : [];
  });
}

/** Recipes of the batches of a design. */
export function recipesOf(design: string | null, input: PlanInput): Recipe[] {
  const parts = input.designs.find(({ key }) => key === design)?.parts ?? [];
  const used = new Set(parts.flatMap((part) => (part.kind === 'batch' ? [part.recipe] : [])));
  return input.recipes.filter(({ key }) => used.has(key));
}

/** The order that a draft comes to; null while no design is chosen, or its groups are not complete. @param taken keys of the runs there are */
function orderOf(draft: PlanDraft, input: PlanInput, taken: readonly string[]): RunOrder | null {
  const design = input.designs.find(({ key }) => key === draft.design);
  if (design === undefined) return null;
  const groups = draft.groups === null ? null : groupsOf(draft.groups, draft.count);
  if (groups === undefined) return null;
  const title = draft.title?.trim() ?? '';
  const named = title === '' ? design.title : title;
  return {
    ...{ key: newKey(named, taken), title: named, design: design.key, count: draft.count },
    ...(groups !== null && { groups }),
    ...{ startAfter: draft.startAfter, certaintyPercent: 95 },
    ...(draft.aim === 'by' && { readyBy: draft.readyBy }),
  };
}

/** What to ask the planner about a draft. */
export function wishOf(draft: PlanDraft, input: PlanInput, now: LocalTime): Wish | null {
  const order = orderOf(draft, input, []);
  if (order === null) return null;
  const recipes = changesOf(draft, recipesOf(draft.design, input));
  if (draft.aim === 'after') return { kind: 'order', order, recipes };
  // Counting back may come out at any time from now on.
  return {
    kind: 'order',
    order: { ...order, startAfter: now },
    recipes,
    latestWithOdds: draft.oddsPercent / 100,
  };
}

/** What to send to the API. @param begin counted back, on the wall of the workshop */
export function newRunOf(
  draft: PlanDraft,
  input: PlanInput,
  taken: readonly string[],
  begin: LocalTime | null,
): NewRun | null {
  const order = orderOf(draft, input, taken);
  if (order === null || (draft.aim === 'by' && begin === null)) return null;
  const recipes = changesOf(draft, recipesOf(draft.design, input));
  return {
    ...order,
    ...(begin !== null && draft.aim === 'by' && { startAfter: begin }),
    ...(recipes.length > 0 && { recipes }),
  };
}
