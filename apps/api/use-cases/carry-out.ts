import type { RemedyChange } from '#contract';
import { checkEntry, type RunsInput } from '#runs';
import type { Repositories, SavedPlan, StoredRun } from '#storage';
import { under } from '#units';
import { ApiProblem, invalidInput, keyTaken } from '../problems/api-problem.js';
import { findRun } from '../runs/find-run.js';
import { changedInput } from './changed-input.js';
import { makePlan } from './make-plan.js';
import { runInput } from './run-input.js';

/**
 * Carries a remedy's change out: whatever it makes different is stored where it belongs, and the run is planned afresh,
 * as the remedy was. Must run inside the transaction that holds the workshop.
 * @returns the plan of the run, and that of a second run that a split makes
 * @throws ApiProblem where the change is not about this run, or comes too late for it
 */
export async function carryOut(
  tx: Repositories,
  run: StoredRun,
  change: RemedyChange,
  now: Date,
): Promise<readonly [SavedPlan, ...SavedPlan[]]> {
  const before = await runInput(tx, run);
  const after = changedInput(before, change);
  refuseOthers(run, change, before, after);
  await storeAround(tx, run, before, after);
  await storeLog(tx, run, before, after);
  const changed = await storeRun(tx, run, before, after);
  const cause = `change: ${change.kind}`;
  const plan = async (each: StoredRun): Promise<SavedPlan> =>
    makePlan(tx, { run: each, input: await runInput(tx, each), cause, now, afresh: true });
  const saved = await plan(changed);
  const [, ...rest] = after.runs;
  const split: SavedPlan[] = [];
  for (const order of rest) {
    const made = await tx.runs.create(run.workshopId, { order, snapshot: changed.snapshot });
    if (!made.ok) throw keyTaken('run', order.key);
    split.push(await plan(made.value));
  }
  return [saved, ...split];
}

function refuseOthers(run: StoredRun, change: RemedyChange, before: RunsInput, after: RunsInput): void {
  const isOther = 'run' in change && change.run !== run.key;
  const recipes = after.recipes.some((recipe, i) => recipe !== before.recipes[i]);
  if (isOther || (change.kind === 'recipe' && !recipes)) {
    const value = 'run' in change ? change.run : change.kind;
    const message = `The change is not about “${run.order.title}”; accepted: a change of this run.`;
    throw invalidInput([
      { code: 'change.another-run', path: ['change'], message, value, accepted: 'a change of this run' },
    ]);
  }
  // Soap in the mould is what it is: when it was to begin, how much of it there is and what it is made of are settled.
  const settled = ['recipe', 'start', 'count', 'split'].includes(change.kind);
  if (settled && run.state !== 'planned') {
    throw new ApiProblem(409, 'run-begun', 'The run has begun', 'What is poured cannot be changed any more.');
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
    if (workshop !== null) await tx.workshops.update(workshopId, workshop.version, after.workshop);
  }
  for (const [i, mould] of after.moulds.entries()) {
    if (mould === before.moulds[i]) continue;
    const stored = await tx.library.moulds.byKey(workshopId, mould.key);
    if (stored === null) continue;
    const content = { ...stored.content, cavities: mould.cavities };
    await tx.library.moulds.update(workshopId, stored.id, stored.version, content);
  }
}

async function storeLog(
  tx: Repositories,
  run: StoredRun,
  before: RunsInput,
  after: RunsInput,
): Promise<void> {
  let known = before;
  for (const { entry } of after.log.slice(before.log.length)) {
    const issues = checkEntry(known, run.key, entry);
    if (issues.length > 0) throw invalidInput(under(['change', 'entries'], issues));
    await tx.log.append(run.workshopId, run.id, entry);
    known = { ...known, log: [...known.log, { run: run.key, entry }] };
  }
}

/** The run's order, and its own copy of recipes and moulds. */
async function storeRun(
  tx: Repositories,
  run: StoredRun,
  before: RunsInput,
  after: RunsInput,
): Promise<StoredRun> {
  const [order] = after.runs;
  const moulds = run.snapshot.moulds.map(
    (mould) => after.moulds.find(({ key }) => key === mould.key) ?? mould,
  );
  const same = order === before.runs[0] && after.recipes === before.recipes && after.moulds === before.moulds;
  if (order === undefined || same) return run;
  const snapshot = { ...run.snapshot, recipes: after.recipes, moulds };
  await tx.runs.update(run.workshopId, run.id, run.version, { order, snapshot });
  return findRun(tx, run.workshopId, run.id);
}
