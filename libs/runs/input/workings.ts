import type { FatFacts } from '#chemistry';
import type { Mould, Part, PieceDesign, RunOrder, Stage } from '#contract';
import { minuteOfIso, type Minute } from '#units';
import { byKey } from './by-key.js';
import { stageKindFacts } from './stage-kinds.js';
import type { PastRun, RunsInput } from './input.js';
import { expectedUse } from '../amounts/expected-use.js';
import {
  surroundingsOf,
  useSurroundings,
  type Batter,
  type PieceSurroundings,
} from './piece-surroundings.js';
import { standingLog, type LogLine } from '../log/standing-log.js';

export type { Batter } from './piece-surroundings.js';

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
  const around = surroundingsOf(input.recipes, input.fats, input.moulds);
  const { recipes, fats, moulds } = around;
  return input.runs.map((order) => {
    const design = input.designs.find((d) => d.key === order.design);
    if (design === undefined) throw new Error(`design ${order.design} was not checked`);
    const weighings = weighingsOf(input, design, around);
    const parts = byKey(design.parts);
    return { order, design, parts, stages: byKey(design.stages), recipes, moulds, fats, weighings };
  });
}

/** What pieces of a design's part took on the scales. */
export interface PartWeighing {
  readonly part: string;
  readonly pieces: number;
  /** All these pieces together. */
  readonly usedG: number;
  readonly at: Minute;
  /** What a piece was expected to take by the design of that time. */
  readonly expectedMl: number;
}

function weighingsOf(input: RunsInput, design: PieceDesign, around: PieceSurroundings): PartWeighing[] {
  const here = input.runs
    .filter((run) => run.design === design.key)
    .flatMap((run) =>
      weighingsIn(
        input.log.filter((line) => line.run === run.key),
        design,
        around,
      ),
    );
  const before = (input.past ?? [])
    .filter((past) => past.design.key === design.key)
    .flatMap((past) => {
      const then = surroundingsOf(past.recipes, past.fats, past.moulds);
      return weighingsIn(past.log, past.design, then);
    });
  return [...before, ...here];
}

function weighingsIn(
  log: readonly LogLine[],
  design: PieceDesign,
  around: PieceSurroundings,
): PartWeighing[] {
  return standingLog(log).standing.flatMap(({ entry }) => {
    if (entry.kind !== 'weighed') return [];
    const part = design.parts.find((p) => p.key === entry.part);
    if (part === undefined || part.kind === 'decor') return [];
    const { meanMl } = expectedUse(part, useSurroundings(part, around));
    const { pieces, usedG } = entry;
    return [{ part: part.key, pieces, usedG, at: minuteOfIso(entry.at), expectedMl: meanMl }];
  });
}

/** A run of the past with everything it refers to looked up, in the workshop as it is now. */
export function workingsOfPast(past: PastRun, workshop: RunsInput['workshop']): RunWorkings {
  const { order, design, log: _later, ...rest } = past;
  const [workings] = workingsOf({ ...rest, workshop, designs: [design], runs: [order], log: [] });
  if (workings === undefined) throw new Error('one run has one set of workings');
  return workings;
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
