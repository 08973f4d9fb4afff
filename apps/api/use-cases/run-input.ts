import type { LogEntry, RunOrder, WorkshopFacts } from '#contract';
import { busyOf, type PartWeighing, type RunsInput } from '#runs';
import type { Repositories, RunSnapshot, RunState, StoredRun } from '#storage';

/** Runs that still need hands and moulds. */
const LIVE: readonly RunState[] = ['planned', 'making'];

/**
 * Everything that the plan of a run is made from: the run's own copy of design, recipes and moulds, the workshop as
 * it is now, the log, and what the other runs' latest plans occupy.
 */
export async function runInput(tx: Repositories, run: StoredRun): Promise<RunsInput> {
  const { workshopId } = run;
  const workshop = await tx.workshops.get(workshopId);
  if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
  const entries = await tx.log.list(workshopId, { runId: run.id });
  const busy = await busyElsewhere(tx, workshop.facts, run);
  const weighings = await weighingsOf(tx, workshopId, run.order.design, run.id);
  return {
    ...inputOf(
      workshop.facts,
      run.order,
      run.snapshot,
      entries.map((line) => line.entry),
    ),
    busy,
    weighings,
  };
}

/** Input for an order with its own copy of what it refers to, nothing around it. */
export function inputOf(
  workshop: WorkshopFacts,
  order: RunOrder,
  snapshot: RunSnapshot,
  entries: readonly LogEntry[],
): RunsInput {
  return {
    workshop,
    moulds: snapshot.moulds,
    fats: snapshot.fats,
    recipes: snapshot.recipes,
    designs: [snapshot.design],
    runs: [order],
    log: entries.map((entry) => ({ run: order.key, entry })),
  };
}

/** What parts of a design took in all runs of it but one, also in those that were given up. */
export async function weighingsOf(
  tx: Repositories,
  workshopId: string,
  design: string,
  butRun?: string,
): Promise<PartWeighing[]> {
  const runs = await tx.runs.list(workshopId);
  const same = new Set(runs.filter((r) => r.order.design === design && r.id !== butRun).map((r) => r.id));
  const entries = await tx.log.list(workshopId, { kind: 'weighed' });
  return entries.flatMap(({ runId, entry }) =>
    entry.kind === 'weighed' && same.has(runId)
      ? [{ design, part: entry.part, pieces: entry.pieces, usedG: entry.usedG }]
      : [],
  );
}

async function busyElsewhere(tx: Repositories, workshop: WorkshopFacts, run: StoredRun) {
  const others = await tx.runs.list(run.workshopId, { states: LIVE });
  const plans = new Map((await tx.plans.latestOfEach(run.workshopId)).map((plan) => [plan.runId, plan]));
  return others.flatMap((other) => {
    const plan = plans.get(other.id);
    if (other.id === run.id || plan === undefined) return [];
    return busyOf(plan.document, inputOf(workshop, other.order, other.snapshot, []));
  });
}
