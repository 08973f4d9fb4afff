import type { LogEntry, PlanDocument } from '#contract';
import { checkEntry, planWithoutMoves, tellChanges } from '#runs';
import type { LoggedEntry, Repositories, SavedPlan, StoredRun } from '#storage';
import { ApiProblem, invalidInput } from '../problems/api-problem.js';
import { makePlan } from './make-plan.js';
import { runInput } from './run-input.js';

/** How far a device's clock may be ahead of ours before what it reports counts as a slip. */
const CLOCK_TOLERANCE_MS = 5 * 60_000;

/** Work may begin before its plan says so, but not by more than this. */
const EARLIEST_BEFORE_START_MS = 60 * 24 * 60 * 60_000;

/**
 * Writes down what happened and plans the rest anew. The entry is kept even when no plan is possible from here.
 * Must run inside the transaction that holds the workshop.
 * @throws ApiProblem when the entry cannot be true; nothing is written then
 */
export async function logEntry(
  tx: Repositories,
  run: StoredRun,
  entry: LogEntry,
  now: Date,
): Promise<{ logged: LoggedEntry; saved: SavedPlan; why: string }> {
  const corrects = entry.kind === 'forget' || entry.kind === 'take-back';
  if (run.state === 'abandoned' && !corrects) {
    throw new ApiProblem(409, 'run-abandoned', 'The run was given up', 'Nothing more can be logged for it.');
  }
  refuseFuture(entry, now);
  refuseLongAgo(entry, run);
  const before = await runInput(tx, run);
  const issues = checkEntry(before, run.key, entry);
  if (issues.length > 0) throw invalidInput(issues);
  const logged = await tx.log.append(run.workshopId, run.id, entry);
  if (run.state === 'abandoned') return correctedOnly(tx, run, logged);
  const input = { ...before, log: [...before.log, { run: run.key, entry }] };
  const holdTo = (latest: PlanDocument): Promise<PlanDocument> => planToHold(tx, run, entry, latest);
  const saved = await makePlan(tx, { run, input, cause: causeOf(entry), now, mustKeep: true, holdTo });
  const { document, changes } = saved.revision;
  const { parts, stages } = run.snapshot.design;
  const titles = new Map([...parts, ...stages].map((each) => [each.key, each.title]));
  return { logged, saved, why: tellChanges(entry, titles, changes, document) };
}

/**
 * The plan that is to move as little as possible: the latest, without what an entry moved that is taken back now.
 * The plan which that entry made is the last of its cause by the time it was written down.
 */
async function planToHold(
  tx: Repositories,
  { workshopId, id }: StoredRun,
  entry: LogEntry,
  latest: PlanDocument,
): Promise<PlanDocument> {
  if (entry.kind !== 'take-back') return latest;
  const slip = (await tx.log.list(workshopId, { runId: id })).find((line) => line.id === entry.entry);
  const made = (await tx.plans.list(workshopId, id)).find(
    ({ cause, madeAt }) => slip !== undefined && cause === causeOf(slip.entry) && madeAt <= slip.loggedAt,
  );
  if (made === undefined) return latest;
  const [before, after] = await Promise.all(
    [made.number - 1, made.number].map((number) => tx.plans.byNumber(workshopId, id, number)),
  );
  if (!before || !after) return latest;
  return planWithoutMoves({ before: before.document, after: after.document, latest });
}

/** A run that was given up is not planned again, but what it teaches can still be put right. */
async function correctedOnly(
  tx: Repositories,
  run: StoredRun,
  logged: LoggedEntry,
): Promise<{ logged: LoggedEntry; saved: SavedPlan; why: string }> {
  const revision = await tx.plans.latest(run.workshopId, run.id);
  if (revision === null) throw new Error(`run ${run.id} has no plan`);
  const saved: SavedPlan = { revision, moved: [], cancelled: [] };
  return { logged, saved, why: 'It is put right for what this run teaches; the run stays given up.' };
}

function refuseFuture(entry: LogEntry, now: Date): void {
  if (Date.parse(entry.at) <= now.getTime() + CLOCK_TOLERANCE_MS) return;
  const accepted = `up to ${now.toISOString()}`;
  throw invalidInput([
    {
      code: 'log.in-the-future',
      path: ['at'],
      message: `${entry.at} has not come yet; accepted: ${accepted}.`,
      value: entry.at,
      accepted,
    },
  ]);
}

function refuseLongAgo(entry: LogEntry, run: StoredRun): void {
  const earliest = Date.parse(`${run.order.startAfter}:00Z`) - EARLIEST_BEFORE_START_MS;
  const told = {
    at: entry.at,
    startedAt: entry.kind === 'done' ? entry.startedAt : undefined,
    since: entry.kind === 'seen' ? entry.since : undefined,
  };
  for (const [field, value] of Object.entries(told)) {
    if (value === undefined || Date.parse(value) >= earliest) continue;
    const accepted = `from ${new Date(earliest).toISOString()} on`;
    const message = `${value} is long before the run; accepted: ${accepted}.`;
    throw invalidInput([{ code: 'log.long-ago', path: [field], message, value, accepted }]);
  }
}

function causeOf(entry: LogEntry): string {
  switch (entry.kind) {
    case 'done':
      return `log: ${entry.stage} done`;
    case 'not-yet':
      return `log: not ready for ${entry.stage} yet`;
    case 'mishap':
      return `log: ${entry.part} ${entry.mishap}`;
    case 'seen':
      return `log: ${entry.part} looked at`;
    case 'weighed':
      return `log: ${entry.part} weighed`;
    case 'weigh-in':
      return 'log: weighed while curing';
    case 'forget':
      return 'log: an entry teaches nothing';
    case 'take-back':
      return 'log: an entry taken back';
  }
}
