import type { FatFacts } from '#chemistry';
import { batterOf, fatTable, fromSheet } from '#chemistry';
import type { Fat, Mould, Part, PieceDesign, Recipe, RunOrder, Stage } from '#contract';
import { stageKindFacts } from './stage-kinds.js';
import type { PartWeighing, RunsInput } from './input.js';

/** A recipe whose water is told as a lye concentration, however it was written. */
export type Batter = Recipe & { readonly lyeConcentrationPercent: number };

/** A run with everything it refers to looked up. */
export interface RunWorkings {
  readonly order: RunOrder;
  readonly design: PieceDesign;
  readonly parts: ReadonlyMap<string, Part>;
  readonly stages: ReadonlyMap<string, Stage>;
  readonly recipes: ReadonlyMap<string, Batter>;
  readonly moulds: ReadonlyMap<string, Mould>;
  readonly fats: ReadonlyMap<string, FatFacts>;
  /** What parts of this design took on the scales, in this run and others. */
  readonly weighings: readonly PartWeighing[];
}

/** Looks up what each run refers to. The input must have passed `checkInput`. */
export function workingsOf(input: RunsInput): RunWorkings[] {
  const moulds = byKey(input.moulds);
  const fats = fatTable(input.fats.map(fatFacts));
  const recipes = byKey(input.recipes.map((recipe) => batterOf(recipe, fats)));
  return input.runs.map((order) => {
    const design = input.designs.find((d) => d.key === order.design);
    if (design === undefined) throw new Error(`design ${order.design} was not checked`);
    const weighings = weighingsOf(input, design.key);
    const parts = byKey(design.parts);
    return { order, design, parts, stages: byKey(design.stages), recipes, moulds, fats, weighings };
  });
}

function weighingsOf(input: RunsInput, design: string): PartWeighing[] {
  const runs = new Set(input.runs.filter((run) => run.design === design).map((run) => run.key));
  const own = input.log.flatMap(({ run, entry }) =>
    entry.kind === 'weighed' && runs.has(run)
      ? [{ design, part: entry.part, pieces: entry.pieces, usedG: entry.usedG }]
      : [],
  );
  return [...(input.weighings ?? []).filter((w) => w.design === design), ...own];
}

/** The stage that makes a part. A checked design has just one for each part that a stage works on. */
export function makingStage(design: PieceDesign, part: string): Stage | undefined {
  return design.stages.find((stage) => stage.part === part && stageKindFacts[stage.kind].makes);
}

/** The stage after which the part is out of its mould, or finished if it never was in one. */
export function freeingStage(design: PieceDesign, part: Part): Stage | undefined {
  if (part.kind !== 'batch' || part.mould === undefined) return undefined;
  const sharing = new Set(sharersOf(design, part.mould).map((p) => p.key));
  return design.stages.find((stage) => stageKindFacts[stage.kind].frees && sharing.has(stage.part));
}

/** The parts cast into one kind of mould: they share its cavities. */
export function sharersOf(design: PieceDesign, mould: string): Part[] {
  return design.parts.filter((part) => part.kind === 'batch' && part.mould === mould);
}

/** What fills the cavities of a mould and what empties them, by stage. */
export interface MouldUse {
  readonly makes: ReadonlySet<string>;
  readonly frees: string | undefined;
  readonly piecesPerCavity: number;
}

/** @param leftOut parts that do not count; @returns undefined when nothing is cast in the mould */
export function mouldUse(
  design: PieceDesign,
  mould: string,
  leftOut: ReadonlySet<string> = new Set(),
): MouldUse | undefined {
  const sharing = sharersOf(design, mould).filter((part) => !leftOut.has(part.key));
  const [first] = sharing;
  if (first?.kind !== 'batch') return undefined;
  return {
    makes: new Set(sharing.flatMap((part) => makingStage(design, part.key)?.key ?? [])),
    frees: freeingStage(design, first)?.key,
    piecesPerCavity: first.piecesPerCavity,
  };
}

export function byKey<T extends { readonly key: string }>(items: readonly T[]): Map<string, T> {
  return new Map(items.map((item) => [item.key, item]));
}

/** A fat of the maker's own in the form that chemistry reads. */
export function fatFacts(fat: Fat): FatFacts {
  return fromSheet(fat);
}
