import type { LogEntry, PlannedStage, RunPlan } from '#contract';
import { makesPart } from '#runs';

/**
 * When the first of its soap was poured, in milliseconds since 1970; undefined while none is. Pieces of melted base and pressed
 * decor cure with nothing.
 */
export function firstPour({
  stages,
  amounts,
}: Pick<RunPlan, 'stages'> & {
  readonly amounts: readonly Pick<RunPlan['amounts'][number], 'part' | 'kind'>[];
}): number | undefined {
  const soap = new Set(amounts.filter(({ kind }) => kind === 'batch').map(({ part }) => part));
  const ends = stages
    .filter(({ status, kind, part }) => status === 'done' && makesPart(kind) && soap.has(part))
    .map(({ endAt }) => Date.parse(endAt));
  return ends.length === 0 ? undefined : Math.min(...ends);
}

/** What is to be done next; undefined where all is done. */
export function nextStage(stages: readonly PlannedStage[]): PlannedStage | undefined {
  return stages
    .filter(({ status }) => status === 'planned')
    .toSorted((a, b) => Date.parse(a.startAt) - Date.parse(b.startAt))[0];
}

const WEEK_MS = 7 * 86_400_000;

/** Whether a lot is to be weighed again, and since when or when next, in milliseconds since 1970. */
export interface NextWeighIn {
  readonly isDue: boolean;
  /** The last weigh-in; undefined: none yet. */
  readonly last: number | undefined;
  readonly at: number;
}

/**
 * A lot is weighed about once a week, for the first time once it is made. Common practice, no source.
 * @param log of its run, in the order in which it was logged
 */
export function nextWeighIn(
  log: readonly { readonly id: string; readonly entry: LogEntry }[],
  madeAt: number,
  now: number,
): NextWeighIn {
  const takenBack = new Set<string>();
  // A taking-back may itself be taken back, by a later entry: so from the end.
  const ats = log.toReversed().flatMap(({ id, entry }) => {
    if (takenBack.has(id)) return [];
    if (entry.kind === 'take-back') takenBack.add(entry.entry);
    return entry.kind === 'weigh-in' ? [Date.parse(entry.at)] : [];
  });
  const last = ats.length === 0 ? undefined : Math.max(...ats);
  const at = last === undefined ? madeAt : last + WEEK_MS;
  return { isDue: now >= at, last, at };
}
