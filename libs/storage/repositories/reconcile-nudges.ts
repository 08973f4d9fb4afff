import type { NudgeKind } from '#contract';
import type { Nudge } from '../generated/client.js';
import { surelyAhead } from './undo-early.js';

/** A nudge as a plan wants it. */
export interface DesiredNudge {
  readonly stage: string;
  readonly attempt: number;
  readonly kind: NudgeKind;
  /** Title of the stage. */
  readonly title: string;
  readonly startAt: Date;
  /** null: nothing closes the window. */
  readonly lastCallAt: Date | null;
  readonly dueAt: Date;
}

/** A nudge of the run that waits or was delivered. */
export type KnownNudge = Pick<
  Nudge,
  | 'id'
  | 'stageKey'
  | 'attempt'
  | 'kind'
  | 'title'
  | 'startAt'
  | 'lastCallAt'
  | 'dueAt'
  | 'status'
  | 'version'
  | 'deliveredAt'
>;

/** What a plan does to the nudges of its run. */
export interface NudgeChanges {
  readonly made: readonly (DesiredNudge & { readonly id: string })[];
  readonly changed: readonly { readonly row: KnownNudge; readonly want: DesiredNudge }[];
  /** Ids of those that stay as they are, under the new revision. */
  readonly kept: readonly string[];
  readonly cancelled: readonly { readonly id: string; readonly version: number }[];
}

export interface ReconciledNudges {
  /** New, or with something else to say, or at another time: to be queued (again) under this version. */
  readonly moved: readonly { readonly id: string; readonly version: number; readonly dueAt: Date }[];
  /** Not wanted any more; their alarms can be taken away. */
  readonly cancelled: readonly { readonly id: string; readonly version: number }[];
}

/** A plan made anew within this time does not repeat what was said. */
const ONCE_WITHIN_MS = 60 * 60_000;

/**
 * How the waiting nudges of a run become those that its new plan wants, with no more of them touched than must be:
 * - waiting and not wanted: cancelled;
 * - waiting and wanted just so: kept, under the new revision;
 * - waiting and wanted at another time or with something else to say: changed, its version raised;
 * - overdue while its stage is still open: left to be delivered late, as a replan must not silence it;
 * - wanted and not waiting: made, unless one for the same stage, attempt and kind was delivered within the hour
 *   before: a plan made anew while the maker is at it must not tell them again. What a clock that was ahead delivered
 *   too early does not count as said.
 *
 * @param rows the run's nudges that wait or were delivered
 * @param openStages as `stageOf` names them
 */
export function reconcileNudges(
  rows: readonly KnownNudge[],
  desired: readonly DesiredNudge[],
  openStages: ReadonlySet<string>,
  { now, newId }: { readonly now: Date; readonly newId: () => string },
): NudgeChanges {
  const waiting = new Map(rows.filter((row) => row.status === 'waiting').map((row) => [subject(row), row]));
  const delivered = lastDelivered(rows, surelyAhead(now));
  const made: (DesiredNudge & { readonly id: string })[] = [];
  const changed: { readonly row: KnownNudge; readonly want: DesiredNudge }[] = [];
  const kept: string[] = [];
  for (const want of desired) {
    const wanted = subject({ ...want, stageKey: want.stage });
    const row = waiting.get(wanted);
    waiting.delete(wanted);
    if (row === undefined) {
      const last = delivered.get(wanted) ?? -Infinity;
      if (want.dueAt.getTime() >= last + ONCE_WITHIN_MS) made.push({ ...want, id: newId() });
    } else if (isSame(row, want)) {
      kept.push(row.id);
    } else {
      changed.push({ row, want });
    }
  }
  const unwanted = [...waiting.values()].filter((row) => row.dueAt > now || !openStages.has(stageOf(row)));
  return { made, changed, kept, cancelled: unwanted.map(({ id, version }) => ({ id, version })) };
}

/** What the queue is to be told of it. */
export function toldToQueue({ made, changed, cancelled }: NudgeChanges): ReconciledNudges {
  const moved = [
    ...made.map(({ id, dueAt }) => ({ id, version: 1, dueAt })),
    ...changed.map(({ row, want }) => ({ id: row.id, version: row.version + 1, dueAt: want.dueAt })),
  ];
  return { moved, cancelled };
}

/** By subject: for when the latest was due that was delivered, and not by a clock that was ahead. */
function lastDelivered(rows: readonly KnownNudge[], ahead: Date): ReadonlyMap<string, number> {
  const last = new Map<string, number>();
  for (const row of rows) {
    if (row.deliveredAt === null || row.deliveredAt > ahead) continue;
    last.set(subject(row), Math.max(last.get(subject(row)) ?? -Infinity, row.dueAt.getTime()));
  }
  return last;
}

function isSame(row: KnownNudge, want: DesiredNudge): boolean {
  const same = (a: Date | null, b: Date | null): boolean => a?.getTime() === b?.getTime();
  return (
    row.title === want.title &&
    same(row.dueAt, want.dueAt) &&
    same(row.startAt, want.startAt) &&
    same(row.lastCallAt, want.lastCallAt)
  );
}

function subject(nudge: { stageKey: string; attempt: number; kind: string }): string {
  return `${nudge.stageKey} ${nudge.attempt} ${nudge.kind}`;
}

/** A stage with its attempt, as `openStages` names them. */
export function stageOf(nudge: { stageKey: string; attempt: number }): string {
  return `${nudge.stageKey} ${nudge.attempt}`;
}
