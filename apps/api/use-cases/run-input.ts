import type { Mould, RunOrder, RunTeachings, WorkshopFacts } from '#contract';
import { busyOf, learnedFrom, teachingsOf, type LogLine, type RunsInput } from '#runs';
import type { Repositories, RunSnapshot, RunState, StoredRun } from '#storage';

/** Runs that still need hands and moulds. */
const LIVE: readonly RunState[] = ['planned', 'making'];

/** What a workshop has, read once, from which the input for any of its runs is made. */
export interface WorkshopBook {
  readonly facts: WorkshopFacts;
  readonly moulds: readonly Mould[];
  readonly runs: readonly StoredRun[];
  /** By run. */
  readonly logs: ReadonlyMap<string, readonly LogLine[]>;
}

export async function readBook(tx: Repositories, workshopId: string): Promise<WorkshopBook> {
  const workshop = await tx.workshops.get(workshopId);
  if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
  const moulds = await tx.library.moulds.list(workshopId);
  const runs = await tx.runs.list(workshopId);
  const logs = new Map<string, LogLine[]>();
  for (const { runId, id, entry } of await tx.log.list(workshopId)) {
    const log = logs.get(runId) ?? [];
    logs.set(runId, log);
    log.push({ id, entry });
  }
  return { facts: workshop.facts, moulds: moulds.map(({ content }) => content), runs, logs };
}

/**
 * Everything that the plan of a run is made from: its sheet's input, and what the other runs' latest plans occupy.
 */
export async function runInput(tx: Repositories, run: StoredRun): Promise<RunsInput> {
  const book = await readBook(tx, run.workshopId);
  return { ...sheetInput(book, run), busy: await busyElsewhere(tx, book, run) };
}

/** The same for an order of which no run is made, all runs keeping what their plans occupy. */
export async function orderInput(
  tx: Repositories,
  workshopId: string,
  order: RunOrder,
  snapshot: RunSnapshot,
): Promise<RunsInput> {
  const book = await readBook(tx, workshopId);
  const busy = await busyElsewhere(tx, book, { workshopId });
  return { ...inputOf(book, order, snapshot, []), ...learnedIn(book), busy };
}

/** What the plan of any order can be made from: the whole library, and what all runs take and teach. */
export async function libraryInput(tx: Repositories, workshopId: string): Promise<RunsInput> {
  const book = await readBook(tx, workshopId);
  const [fats, recipes, designs] = await Promise.all([
    tx.library.fats.list(workshopId),
    tx.library.recipes.list(workshopId),
    tx.library.designs.list(workshopId),
  ]);
  return {
    workshop: book.facts,
    moulds: book.moulds,
    fats: fats.map(({ content }) => content),
    recipes: recipes.map(({ content }) => content),
    designs: designs.map(({ content }) => content),
    ...{ runs: [], log: [] },
    ...learnedIn(book),
    busy: await busyElsewhere(tx, book, { workshopId }),
  };
}

/**
 * What amounts and clocks of a run are made from: its own copy of design, recipes and moulds, the workshop as it is now,
 * its log and those of the other runs.
 */
export function sheetInput(book: WorkshopBook, { id, order, snapshot }: StoredRun): RunsInput {
  return { ...inputOf(book, order, snapshot, book.logs.get(id) ?? []), ...learnedIn(book, id) };
}

/** Input for an order with its own copy of what it refers to, nothing around it but the workshop. */
export function inputOf(
  { facts, moulds }: Pick<WorkshopBook, 'facts' | 'moulds'>,
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

/** What all runs but one have logged teaches, also those that were given up: what they saw teaches all the same. */
export function teachingsIn({ runs, logs, facts }: WorkshopBook, butRun?: string): RunTeachings[] {
  return runs.flatMap(({ id, order, snapshot }) => {
    const log = logs.get(id);
    return id === butRun || log === undefined
      ? []
      : [teachingsOf({ order, ...snapshot, log }, facts).teachings];
  });
}

/** The same as input has it. */
export function learnedIn(book: WorkshopBook, butRun?: string): Pick<RunsInput, 'learned' | 'teachings'> {
  const teachings = teachingsIn(book, butRun);
  return { learned: learnedFrom(teachings), teachings };
}

async function busyElsewhere(
  tx: Repositories,
  book: WorkshopBook,
  run: { readonly workshopId: string; readonly id?: string },
) {
  const plans = new Map((await tx.plans.latestOfEach(run.workshopId)).map((plan) => [plan.runId, plan]));
  return book.runs.flatMap((other) => {
    const plan = plans.get(other.id);
    if (other.id === run.id || plan === undefined || !LIVE.includes(other.state)) return [];
    return busyOf(plan.document, inputOf(book, other.order, other.snapshot, []));
  });
}
