import type { FatFacts } from '#chemistry';
import {
  mouldOf,
  type LearnedWeighing,
  type Mould,
  type Part,
  type PieceDesign,
  type RunOrder,
  type Stage,
} from '#contract';
import { byKey } from './by-key.js';
import { impliedOrder, withImplied, type ImpliedOrder } from './implied-order.js';
import { countsInside, piecesAlike, type RunDesign } from './pieces.js';
import { forGroups, isDoneFor } from './stage-pieces.js';
import { stageKindFacts } from './stage-kinds.js';
import { makingStage } from './stage-order.js';
import type { PastRun, RunsInput } from './input.js';
import { lookupTables } from './piece-surroundings.js';
import type { Batter } from './batter.js';

export type { Batter } from './batter.js';
export { makingStage } from './stage-order.js';

/** A run with everything it refers to looked up. */
export interface ResolvedRun {
  readonly order: RunOrder;
  /** As its groups have it, with what it leaves unsaid, which `implied` holds and which stands last among its waits and links. */
  readonly design: RunDesign;
  readonly implied: ImpliedOrder;
  /** Parts of the design that no group has: they are not made. */
  readonly leftOut: readonly Part[];
  readonly parts: ReadonlyMap<string, Part>;
  readonly stages: ReadonlyMap<string, Stage>;
  readonly recipes: ReadonlyMap<string, Batter>;
  readonly moulds: ReadonlyMap<string, Mould>;
  readonly fats: ReadonlyMap<string, FatFacts>;
  /** What parts of this design took on the scales, in this run and others; empty until the logs are read. */
  readonly weighings: readonly PartWeighing[];
}

/** Looks up what each run refers to. The input must have passed `checkInput`. */
export function resolveRuns(input: RunsInput): ResolvedRun[] {
  const { recipes, fats, moulds } = lookupTables(input.recipes, input.fats, input.moulds);
  return input.runs.map((order) => {
    const found = input.designs.find((d) => d.key === order.design);
    if (found === undefined) throw new Error(`design ${order.design} was not checked`);
    const own = forGroups(found, order.groups);
    const implied = impliedOrder(own);
    const design = withImplied(own, implied);
    const [parts, stages] = [byKey(own.parts), byKey(own.stages)];
    const leftOut = found.parts.filter(({ key }) => !parts.has(key));
    return { order, design, implied, leftOut, parts, stages, recipes, moulds, fats, weighings: [] };
  });
}

/** The same run once parts of it are left out: what waited for one of them may now wait for nothing. */
export function withoutParts(run: ResolvedRun, dropped: ReadonlySet<string>): ResolvedRun {
  if (dropped.size === 0) return run;
  const own = ownDesign(run);
  const implied = impliedOrder(own, dropped);
  return { ...run, implied, design: withImplied(own, implied) };
}

/**
 * The same run without the implied links that its log has overtaken: they lead to a stage that is done, from one that is
 * not. The maker did without what the design never asked for.
 */
export function withoutOvertaken(run: ResolvedRun, isDone: (stage: string) => boolean): ResolvedRun {
  const links = run.implied.links.filter(({ from, to }) => !isDone(to) || isDone(from));
  if (links.length === run.implied.links.length) return run;
  const implied = { ...run.implied, links };
  return { ...run, implied, design: withImplied(ownDesign(run), implied) };
}

/** The design of a run as the maker wrote it, as its groups have it. */
export function ownDesign({ design, implied }: ResolvedRun): RunDesign {
  return {
    ...design,
    waits: design.waits.filter((wait) => !implied.waits.includes(wait)),
    links: design.links.filter((link) => !implied.links.includes(link)),
  };
}

/** What pieces of a design's part took on the scales. */
export type PartWeighing = LearnedWeighing & { readonly part: string };

/** What a part is made of: batches of the same share a lesson. */
export function recipeKeyOf(run: ResolvedRun, part: string): string {
  const found = run.parts.get(part);
  if (found?.kind === 'batch') return found.recipe;
  return found?.kind === 'melt-and-pour' ? found.material : part;
}

/** A run of the past with everything it refers to looked up, in the workshop as it is now. */
export function workingsOfPast(past: PastRun, workshop: RunsInput['workshop']): ResolvedRun {
  const { order, design, recipes, fats, moulds } = past;
  const [resolved] = resolveRuns({
    ...{ workshop, recipes, fats, moulds },
    designs: [design],
    runs: [order],
    log: [],
  });
  if (resolved === undefined) throw new Error('one run has one resolution');
  return resolved;
}

/** The stage after which the part is out of its mould, or finished if it never was in one. */
export function freeingStage(design: RunDesign, part: Part): Stage | undefined {
  const mould = mouldOf(part);
  if (mould === undefined) return undefined;
  const sharing = new Set(sharersOf(design, mould).map((p) => p.key));
  const pieces = piecesAlike(design).filter((has) => has.has(part.key));
  return design.stages.find(
    (stage) =>
      stageKindFacts[stage.kind].frees &&
      sharing.has(stage.part) &&
      pieces.some((has) => isDoneFor(design, stage, has)),
  );
}

/** What can be cast. */
type CastPart = Exclude<Part, { kind: 'decor' }>;

/** The parts cast into one kind of mould: they share its cavities. */
export function sharersOf(design: PieceDesign, mould: string): CastPart[] {
  return design.parts.filter((part): part is CastPart => mouldOf(part) === mould);
}

/** What fills the cavities of a mould and what empties them, by stage. */
export interface MouldUse {
  /** Parts that are cast in it. */
  readonly parts: ReadonlySet<string>;
  readonly makes: ReadonlySet<string>;
  readonly frees: string | undefined;
  readonly piecesPerCavity: number;
  readonly cavitiesPerPiece: number;
}

/** How many cavities so many pieces take. */
export function cavitiesFor(
  { piecesPerCavity, cavitiesPerPiece }: Pick<MouldUse, 'piecesPerCavity' | 'cavitiesPerPiece'>,
  pieces: number,
): number {
  return Math.ceil(pieces / piecesPerCavity) * cavitiesPerPiece;
}

/** @param leftOut parts that do not count; @returns undefined when nothing is cast in the mould */
export function mouldUse(
  design: RunDesign,
  mould: string,
  leftOut: ReadonlySet<string> = new Set(),
): MouldUse | undefined {
  const sharing = sharersOf(design, mould).filter((part) => !leftOut.has(part.key));
  const [first] = sharing;
  if (first === undefined) return undefined;
  return {
    parts: new Set(sharing.map(({ key }) => key)),
    makes: new Set(sharing.flatMap((part) => makingStage(design, part.key)?.key ?? [])),
    frees: freeingStage(design, first)?.key,
    piecesPerCavity: first.piecesPerCavity,
    cavitiesPerPiece: first.cavitiesPerPiece,
  };
}

/** Cavities that all pieces of a run take of a mould. */
export function cavitiesOf(
  { order, design }: { readonly order: Pick<RunOrder, 'count' | 'groups'>; readonly design: RunDesign },
  use: MouldUse,
): number {
  return countsInside(order, design, use.parts).reduce((sum, count) => sum + cavitiesFor(use, count), 0);
}
