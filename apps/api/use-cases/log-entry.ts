import type { LogAnswer, LogEntry, LoggedView, PlanDocument } from '#contract';
import {
  checkEntry,
  describeEffect,
  describeEntry,
  planWithoutMoves,
  withOpened,
  type RunsInput,
} from '#runs';
import type { LoggedEntry, PlanRevision, Repositories, StoredRun } from '#storage';
import type { Issue } from '#units';
import type { Services } from '../services.js';
import { ApiProblem, invalidInput } from '../problems/api-problem.js';
import { findRun } from './find-run.js';
import { planRun, storePlan, tookTooMuch, type PlannedRun } from './make-plan.js';
import type { PlanningChange } from './plan-once.js';
import { runInput } from './run-input.js';
import { taughtBy, type RunTaught } from './taught-by.js';
import type { LearnedBut } from './taught.js';

/** How far a device's clock may be ahead of ours before what it reports counts as a slip. */
const CLOCK_TOLERANCE_MS = 5 * 60_000;

/** Work may begin before its plan says so, but not by more than this. */
const EARLIEST_BEFORE_START_MS = 60 * 24 * 60 * 60_000;

/** What there was before an entry. */
interface Seen {
  readonly run: StoredRun;
  readonly input: RunsInput;
  /** As it is kept: with what the plan of that time said. */
  readonly entry: LogEntry;
  /** What the entry will be called. */
  readonly id: string;
  readonly before: PlanRevision;
  /** Whether it tells nothing that a plan is made from. */
  readonly isNote: boolean;
  /** The plan to move as little as possible. */
  readonly holdTo: PlanDocument;
  readonly now: Date;
}

/** What follows from an entry. */
interface Made {
  /** Null: the plan stays, as the entry is a note or the run is not planned any more. */
  readonly replan: PlannedRun | null;
  /** Undefined where there was no time for it: whoever needs it next works it out then. */
  readonly teaches: RunTaught | undefined;
}

/** The answer without its plan. */
type Rest = Omit<LogAnswer, 'plan'>;

/**
 * Writes down what happened and plans the rest anew. The entry is kept even when no plan is possible from here; an entry
 * that cannot be true is refused, and nothing is written then.
 */
export function entryChange(
  { compute, clock }: Pick<Services, 'compute' | 'clock'>,
  workshopId: string,
  runId: string,
  asked: LogEntry,
): PlanningChange<Seen, Made, Rest, LogAnswer> {
  return {
    ...{ urgency: 0, runId },
    read: (tx, learned) => readBefore({ tx, learned }, workshopId, runId, asked, clock.now()),
    async plan({ run, input: { log, ...input }, id, isNote, entry, ...seen }) {
      const wish = {
        ...seen,
        input: { ...input, log: [...log, { run: run.key, id, entry }] },
        mustKeep: true,
      };
      // A run that was given up is not planned again, but what it teaches can still be put right.
      const [replan, teaches] = await Promise.all([
        run.state === 'abandoned' || isNote ? null : planRun(compute, workshopId, wish),
        taughtBy(compute, run, wish.input).catch(unlessTooMuch),
      ]);
      return { replan, teaches };
    },
    async store(tx, { run, id, entry, before, now, isNote }, { replan: made, teaches }, { key, held }) {
      if (made === null) {
        const logged = await tx.log.append(workshopId, run.id, entry, id);
        const through = logged.sequence;
        if (teaches !== undefined)
          await tx.teachings.put(workshopId, [{ runId: run.id, ...teaches, through }]);
        const effect = isNote ? 'effect.nothing-moves' : 'effect.only-lessons';
        const why: Rest['why'] = [describeEntry(entry, run.snapshot.design), { code: effect }];
        const rest = { entry: shownEntry(logged), why };
        if (key !== undefined) {
          const answer = { ...key, status: 201, response: rest, revisionId: before.id };
          await tx.idempotency.keep(workshopId, answer);
        }
        return { rest, revision: before, nudges: [] };
      }
      const effect = describeEffect(made.changes, made.document.value);
      const what = describeEntry(entry, run.snapshot.design);
      const why = [what, ...effect];
      const restOf = (logged: LoggedEntry | null): Rest => {
        if (logged === null) throw new Error('nothing was logged');
        return { entry: shownEntry(logged), why };
      };
      const saved = await storePlan(
        tx,
        { run, cause: { code: 'cause.logged', entry: id, what }, now, held },
        made,
        {
          ...{ entry: { id, entry }, ...(teaches !== undefined && { teaches }) },
          ...(key !== undefined && { answer: { ...key, status: 201, response: restOf } }),
        },
      );
      return { rest: restOf(saved.logged), revision: saved.revision, nudges: [saved] };
    },
    answer: (rest, plan) => ({ ...rest, plan }),
  };
}

/** What was logged must not be lost because there was no time to learn from it. */
function unlessTooMuch(error: unknown): undefined {
  if (!tookTooMuch(error)) throw error;
}

async function readBefore(
  { tx, learned }: { readonly tx: Repositories; readonly learned: LearnedBut },
  workshopId: string,
  runId: string,
  entry: LogEntry,
  now: Date,
): Promise<Seen> {
  const run = await findRun(tx, workshopId, runId);
  const corrects = entry.kind === 'forget' || entry.kind === 'take-back' || entry.kind === 'note';
  if (run.state === 'abandoned' && !corrects) {
    throw new ApiProblem(409, 'run-abandoned', { says: 'run-abandoned' });
  }
  refuseFuture(entry, now);
  refuseLongAgo(entry, run);
  const before = await tx.plans.latest(workshopId, runId);
  if (before === null) throw new Error(`run ${runId} has no plan`);
  const input = await runInput(tx, learned, run);
  const issues = [...checkEntry(input, run.key, entry), ...(await unknownPhotos(tx, run, entry))];
  if (issues.length > 0) throw invalidInput(issues);
  const holdTo = await planToHold(tx, run, entry, before.document);
  const isNote = noteOf(entry, input) !== undefined;
  return {
    ...{ run, input, id: tx.log.nextId(), before, isNote, holdTo, now },
    entry: withOpened(entry, run.key, before.document),
  };
}

/** Photos that a note shows and the run has not. */
async function unknownPhotos(tx: Repositories, run: StoredRun, entry: LogEntry): Promise<Issue[]> {
  if (entry.kind !== 'note' || entry.photos === undefined) return [];
  const known = new Set((await tx.photos.list(run.workshopId, run.id)).map(({ id }) => id));
  return entry.photos.flatMap(({ photo }, i): Issue[] =>
    known.has(photo) ? [] : [{ code: 'photo.unknown', path: ['photos', i, 'photo'], value: photo }],
  );
}

/** The note that an entry writes, or takes back. */
function noteOf(entry: LogEntry, { log }: RunsInput): LogEntry | undefined {
  const meant = entry.kind === 'take-back' ? log.find(({ id }) => id === entry.entry)?.entry : entry;
  return meant?.kind === 'note' ? meant : undefined;
}

/**
 * The plan that is to move as little as possible: the latest, without what an entry moved that is taken back now.
 */
async function planToHold(
  tx: Repositories,
  { workshopId, id }: StoredRun,
  entry: LogEntry,
  latest: PlanDocument,
): Promise<PlanDocument> {
  if (entry.kind !== 'take-back') return latest;
  const plans = await tx.plans.list(workshopId, id);
  const made = plans.find(({ cause }) => cause.code === 'cause.logged' && cause.entry === entry.entry);
  if (made === undefined) return latest;
  const before = await tx.plans.byNumber(workshopId, id, made.number - 1);
  const after = await tx.plans.byNumber(workshopId, id, made.number);
  if (before === null || after === null) return latest;
  return planWithoutMoves({ before: before.document, after: after.document, latest });
}

/** An entry as it is shown. */
export function shownEntry({ id, sequence, at, loggedAt, entry }: LoggedEntry): LoggedView {
  return { id, sequence, at: at.toISOString(), loggedAt: loggedAt.toISOString(), entry };
}

function refuseFuture(entry: LogEntry, now: Date): void {
  if (Date.parse(entry.at) <= now.getTime() + CLOCK_TOLERANCE_MS) return;
  const accepted = { kind: 'until', at: now.toISOString() } as const;
  throw invalidInput([{ code: 'log.in-the-future', path: ['at'], value: entry.at, accepted, at: entry.at }]);
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
    const accepted = { kind: 'since', at: new Date(earliest).toISOString() } as const;
    throw invalidInput([{ code: 'log.long-ago', path: [field], value, accepted, at: value }]);
  }
}
