import type { PlanCause, PlanView, RemedyChange } from '#contract';
import { occupancyOf, changedInput, checkEntry, type RunsInput } from '#runs';
import type { Changed, PlanRevision, Repositories, SavedPlan, StoredRun } from '#storage';
import { under } from '#units';
import type { Services } from '../services.js';
import { ApiProblem, invalidInput, notFound, staleVersion, valueOf } from '../problems/api-problem.js';
import { findRunToPlan } from './find-run.js';
import { storeRun } from './create-run.js';
import { planRun, storePlan, type PlannedRun } from './make-plan.js';
import type { PlanningChange } from './plan-once.js';
import { runInput } from './run-input.js';
import { taughtBy, type RunTaught } from './taught-by.js';

/** What a remedy's change is about. */
interface Seen {
  readonly run: StoredRun;
  readonly input: RunsInput;
  /** The same with the change. */
  readonly after: RunsInput;
  readonly before: PlanRevision | null;
  readonly now: Date;
}

/** What follows from a change: the plan of the run, and of those that a split makes. */
interface Made {
  readonly plans: readonly [PlannedRun, ...PlannedRun[]];
  readonly teaches: RunTaught;
}

/**
 * Carries a remedy's change out: whatever it makes different is stored where it belongs, and the run is planned afresh,
 * as the remedy was; so is a second run that a split makes. Refused where the change is not about this run, or comes
 * too late for it.
 */
export function remedyApplied(
  { compute, clock }: Pick<Services, 'compute' | 'clock'>,
  workshopId: string,
  runId: string,
  change: RemedyChange,
): PlanningChange<Seen, Made, null, PlanView> {
  const cause: PlanCause = { code: 'cause.change', change: change.kind };
  return {
    ...{ urgency: 1, runId },
    async read(tx, learned) {
      const run = await findRunToPlan(tx, workshopId, runId);
      const input = await runInput(tx, learned, run);
      const after = named(tx, valueOf(changedInput(input, change)), input.log.length);
      refuseLate(run, change);
      refuseFalseEntries(run, input, after);
      const before = await tx.plans.latest(workshopId, runId);
      return { run, input, after, before, now: clock.now() };
    },
    async plan({ run, after, before, now }) {
      const [first, ...rest] = after.runs.map((order) => ({ ...after, runs: [order] }));
      if (first === undefined) throw new Error('a change left no run');
      const plans: [PlannedRun, ...PlannedRun[]] = [
        await planRun(compute, workshopId, { input: first, before, now, afresh: true }),
      ];
      const busy = [...(first.busy ?? []), ...occupancyOf(plans[0].document.value, first)];
      for (const each of rest) {
        const input = { ...each, log: [], busy };
        plans.push(await planRun(compute, workshopId, { input, before: null, now, afresh: true }));
      }
      return { plans, teaches: await taughtBy(compute, runAfter(run, after), first) };
    },
    async store(tx, { run, input, after, now }, { plans: [made, ...splits], teaches }, { key }) {
      await storeAround(tx, run, input, after);
      await storeLog(tx, run, input, after, teaches);
      const changed = await storeChanged(tx, run, input, after);
      const answer = key && { ...key, status: 201, response: () => null };
      const first = await storePlan(tx, { run: changed, cause, now }, made, { ...(answer && { answer }) });
      const saved: SavedPlan[] = [first];
      for (const [i, split] of splits.entries()) {
        const order = after.runs[i + 1]!;
        const { snapshot } = changed;
        saved.push((await storeRun(tx, workshopId, { order, snapshot, now }, split, { cause })).saved);
      }
      return { rest: null, revision: first.revision, nudges: saved };
    },
    answer: (_rest, plan) => plan,
  };
}

/** @throws ApiProblem 409 where the change comes too late */
function refuseLate(run: StoredRun, { kind }: RemedyChange): void {
  // Soap in the mould is what it is: when it was to begin, how much of it there is and what it is made of are settled.
  const settled = ['recipe', 'start', 'count', 'split'].includes(kind);
  if (settled && run.state !== 'planned') {
    throw new ApiProblem(409, 'run-begun', { says: 'run-begun' });
  }
}

/** @throws ApiProblem where an entry that the change logs cannot be true */
function refuseFalseEntries(run: StoredRun, before: RunsInput, after: RunsInput): void {
  let known = before;
  for (const { entry } of after.log.slice(before.log.length)) {
    const issues = checkEntry(known, run.key, entry);
    if (issues.length > 0) throw invalidInput(under(['change', 'entries'], issues));
    known = { ...known, log: [...known.log, { run: run.key, entry }] };
  }
}

/** Hours and moulds belong to the workshop. */
async function storeAround(
  tx: Repositories,
  { workshopId }: StoredRun,
  before: RunsInput,
  after: RunsInput,
): Promise<void> {
  if (after.workshop !== before.workshop) {
    const workshop = await tx.workshops.get(workshopId);
    if (workshop === null) throw notFound('workshop');
    requireDone(await tx.workshops.update(workshopId, workshop.version, after.workshop));
  }
  for (const [i, mould] of after.moulds.entries()) {
    if (mould === before.moulds[i]) continue;
    const stored = await tx.library.moulds.byKey(workshopId, mould.key);
    if (stored === null) continue;
    const content = { ...stored.content, cavities: mould.cavities };
    requireDone(await tx.library.moulds.update(workshopId, stored.id, stored.version, content));
  }
}

/** Also what the run teaches, which may rest on what the change makes different. */
async function storeLog(
  tx: Repositories,
  run: StoredRun,
  before: RunsInput,
  after: RunsInput,
  teaches: RunTaught,
): Promise<void> {
  let through: number | undefined;
  for (const { id, entry } of after.log.slice(before.log.length)) {
    through = (await tx.log.append(run.workshopId, run.id, entry, id)).sequence;
  }
  through ??= (await tx.log.list(run.workshopId, { runId: run.id })).at(-1)?.sequence;
  if (through !== undefined) await tx.teachings.put(run.workshopId, [{ runId: run.id, ...teaches, through }]);
}

/** Entries that the change logs, called as they will be. */
function named(tx: Repositories, after: RunsInput, known: number): RunsInput {
  const log = after.log.map((line, i) => (i < known ? line : { ...line, id: tx.log.nextId() }));
  return { ...after, log };
}

/** The run's order, and its own copy of recipes and moulds. */
async function storeChanged(
  tx: Repositories,
  run: StoredRun,
  before: RunsInput,
  after: RunsInput,
): Promise<StoredRun> {
  const { order, snapshot } = runAfter(run, after);
  const same = order === before.runs[0] && after.recipes === before.recipes && after.moulds === before.moulds;
  if (same) return run;
  return requireDone(await tx.runs.update(run.workshopId, run.id, run.version, { order, snapshot }));
}

/** The run as the change makes it. */
function runAfter(run: StoredRun, after: RunsInput): StoredRun {
  const moulds = run.snapshot.moulds.map(
    (mould) => after.moulds.find(({ key }) => key === mould.key) ?? mould,
  );
  const snapshot = { ...run.snapshot, recipes: after.recipes, moulds };
  return { ...run, order: after.runs[0] ?? run.order, snapshot };
}

/** The workshop is held, so only what changes without holding it can come in between: the answer says so. */
function requireDone<T>(changed: Changed<T> | null): T {
  if (changed === null) throw notFound('run');
  if (!changed.ok) throw staleVersion(null);
  return changed.value;
}
