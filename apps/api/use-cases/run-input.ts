import type { Mould, PlanDocument, RunOrder, WorkshopFacts } from '#contract';
import { occupancyOf, type Busy, type LogLine, type RunsInput } from '#runs';
import type { Repositories, RunSnapshot, StoredRun } from '#storage';
import type { LearnedBut } from './taught.js';

/** What all runs of a workshop have around them. */
export interface LookupTables {
  readonly facts: WorkshopFacts;
  readonly moulds: readonly Mould[];
}

export async function readSurroundings(tx: Repositories, workshopId: string): Promise<LookupTables> {
  const workshop = await tx.workshops.get(workshopId);
  if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
  const moulds = await tx.library.moulds.list(workshopId);
  return { facts: workshop.facts, moulds: moulds.map(({ content }) => content) };
}

/**
 * Everything that the plan of a run is made from: its sheet's input, and what the other runs' latest plans occupy.
 */
export async function runInput(tx: Repositories, learned: LearnedBut, run: StoredRun): Promise<RunsInput> {
  const around = await readSurroundings(tx, run.workshopId);
  return {
    ...(await sheetInput(tx, learned, run, around)),
    busy: await busyElsewhere(tx, run.workshopId, around, run.id),
  };
}

/**
 * What amounts and clocks of a run are made from: its own copy of design, recipes and moulds, the workshop as it is now,
 * its log and what the other runs teach.
 */
export async function sheetInput(
  tx: Repositories,
  learned: LearnedBut,
  run: StoredRun,
  around?: LookupTables,
): Promise<RunsInput> {
  const { workshopId, id, order, snapshot } = run;
  const log = (await tx.log.list(workshopId, { runId: id })).map((line) => ({
    id: line.id,
    entry: line.entry,
  }));
  const surroundings = around ?? (await readSurroundings(tx, workshopId));
  return { ...inputOf(surroundings, order, snapshot, log), learned: await learned(id) };
}

/** The same as `sheetInput`, for an order of which no run is made yet. */
export async function orderSheetInput(
  tx: Repositories,
  learned: LearnedBut,
  workshopId: string,
  order: RunOrder,
  snapshot: RunSnapshot,
  around?: LookupTables,
): Promise<RunsInput> {
  const surroundings = around ?? (await readSurroundings(tx, workshopId));
  return { ...inputOf(surroundings, order, snapshot, []), learned: await learned(null) };
}

/** The same as `runInput`, for an order of which no run is made yet: all runs keep what their plans occupy. */
export async function orderInput(
  tx: Repositories,
  learned: LearnedBut,
  workshopId: string,
  order: RunOrder,
  snapshot: RunSnapshot,
): Promise<RunsInput> {
  const around = await readSurroundings(tx, workshopId);
  const busy = await busyElsewhere(tx, workshopId, around, null);
  return { ...(await orderSheetInput(tx, learned, workshopId, order, snapshot, around)), busy };
}

/** What the plan of any order can be made from: the whole library, and what all runs take and teach. */
export async function libraryInput(
  tx: Repositories,
  learned: LearnedBut,
  workshopId: string,
): Promise<RunsInput> {
  const around = await readSurroundings(tx, workshopId);
  const fats = await tx.library.fats.list(workshopId);
  const recipes = await tx.library.recipes.list(workshopId);
  const designs = await tx.library.designs.list(workshopId);
  return {
    workshop: around.facts,
    moulds: around.moulds,
    fats: fats.map(({ content }) => content),
    recipes: recipes.map(({ content }) => content),
    designs: designs.map(({ content }) => content),
    ...{ runs: [], log: [] },
    learned: await learned(null),
    busy: await busyElsewhere(tx, workshopId, around, null),
  };
}

/** Input for an order with its own copy of what it refers to, nothing around it but the workshop. */
function inputOf(
  { facts, moulds }: LookupTables,
  order: RunOrder,
  snapshot: RunSnapshot,
  log: readonly LogLine[],
): RunsInput {
  const copied = new Set(snapshot.moulds.map(({ key }) => key));
  return {
    workshop: facts,
    // Moulds besides the run's own copy are for what is left over.
    moulds: [...snapshot.moulds, ...moulds.filter(({ key }) => !copied.has(key))],
    fats: snapshot.fats,
    recipes: snapshot.recipes,
    designs: [snapshot.design],
    runs: [order],
    log: log.map(({ id, entry }) => ({ run: order.key, id, entry })),
  };
}

/** A live run with its latest plan, and what it would be planned from now. */
export interface StandingRun {
  readonly runId: string;
  readonly revisionId: string;
  readonly document: PlanDocument;
  readonly input: RunsInput;
}

/** All live runs of a workshop, each as `runInput` has it; the plans of the others are read once for all. */
export async function standingRuns(
  tx: Repositories,
  learned: LearnedBut,
  workshopId: string,
): Promise<StandingRun[]> {
  const around = await readSurroundings(tx, workshopId);
  const plans = await tx.plans.ofLiveRuns(workshopId, null);
  const taken = plans.map(({ document, order, snapshot }) =>
    occupancyOf(document, inputOf(around, order, snapshot, [])),
  );
  const standing: StandingRun[] = [];
  for (const [i, { runId, revisionId, document }] of plans.entries()) {
    const run = await tx.runs.get(workshopId, runId);
    if (run === null) continue;
    const busy = taken.flatMap((each, k) => (k === i ? [] : each));
    standing.push({
      runId,
      revisionId,
      document,
      input: { ...(await sheetInput(tx, learned, run, around)), busy },
    });
  }
  return standing;
}

async function busyElsewhere(
  tx: Repositories,
  workshopId: string,
  around: LookupTables,
  butRun: string | null,
): Promise<Busy[]> {
  const live = await tx.plans.ofLiveRuns(workshopId, butRun);
  return live.flatMap(({ document, order, snapshot }) =>
    occupancyOf(document, inputOf(around, order, snapshot, [])),
  );
}
