import type { NudgeKind } from '#contract';
import type { Nudge as Row, Run } from '../generated/client.js';
import type { Session } from '../session.js';
import { undoEarly } from './undo-early.js';
import { workshops, type StoredWorkshop } from './workshops.js';

export type NudgeStatus = 'waiting' | 'delivered' | 'cancelled';

export interface StoredNudge {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  /** Key of the run. */
  readonly run: string;
  readonly runTitle: string;
  readonly revisionId: string;
  /** Key of the stage. */
  readonly stage: string;
  readonly attempt: number;
  readonly kind: NudgeKind;
  /** Title of the stage. */
  readonly title: string;
  /** When the stage begins by the plan; null: not known, of an older one. */
  readonly startAt: Date | null;
  /** null: nothing closes the window. */
  readonly lastCallAt: Date | null;
  readonly dueAt: Date;
  readonly status: NudgeStatus;
  /** Rises with every change of what it says or when. */
  readonly version: number;
  /** Place in the workshop's inbox; null until delivered. */
  readonly sequence: number | null;
  readonly deliveredAt: Date | null;
}

export type DeliveredNudge = StoredNudge & { readonly sequence: number; readonly deliveredAt: Date };

export type NudgeReader = Pick<StoredWorkshop['facts'], 'language' | 'units' | 'timeZone'>;

/** The channel that tells listeners of deliveries; see `listenInbox`. */
export const INBOX_CHANNEL = 'benchtide_inbox';

export interface Nudges {
  /**
   * Delivers a waiting nudge into the inbox, if it still has this version and is due. Of any number of calls for
   * the same nudge exactly one gets it.
   * @returns null when there is nothing to deliver (any more, or yet)
   */
  claim(id: string, version: number, now: Date): Promise<DeliveredNudge | null>;
  /** Waiting nudges of all workshops that are due before the instant, the longest due first. */
  due(limit: number, before: Date): Promise<StoredNudge[]>;
  /** Makes nudges wait again that a clock which was ahead delivered too early; see `undo-early`. @returns how many */
  undoEarly(now: Date): Promise<number>;
  get(workshopId: string, id: string): Promise<StoredNudge | null>;
  /**
   * For whom nudges of a workshop are written that leave the program.
   * @throws RangeError without such a workshop
   */
  readerOf(workshopId: string): Promise<NudgeReader>;
  /** By due time. */
  list(workshopId: string, filter?: { status?: NudgeStatus; runId?: string }): Promise<StoredNudge[]>;
  /** What was delivered after this place in the inbox, in order. Nothing can appear before a place once read. */
  inboxSince(workshopId: string, sequence: number): Promise<DeliveredNudge[]>;
  /** Cancels all that still wait for a run. @returns which, so that their alarms can be taken away */
  cancelForRun(workshopId: string, runId: string): Promise<{ id: string; version: number }[]>;
}

const withRun = { run: { select: { key: true, order: true } } } as const;

export function nudges(session: Session): Nudges {
  const { db } = session;
  return {
    claim: (id, version, now) => session.atomically((tx) => claim(tx, id, version, now)),
    async due(limit, before) {
      const rows = await db.nudge.findMany({
        where: { status: 'waiting', dueAt: { lt: before } },
        orderBy: [{ dueAt: 'asc' }, { id: 'asc' }],
        take: limit,
        include: withRun,
      });
      return rows.map(read);
    },
    undoEarly: (now) => undoEarly(session, now),
    async readerOf(workshopId) {
      const found = await workshops(session).get(workshopId);
      if (found === null) throw new RangeError(`There is no workshop ${workshopId}.`);
      const { language, units, timeZone } = found.facts;
      return { language, units, timeZone };
    },
    async get(workshopId, id) {
      const row = await db.nudge.findUnique({
        where: { workshopId_id: { workshopId, id } },
        include: withRun,
      });
      return row && read(row);
    },
    async list(workshopId, filter = {}) {
      const rows = await db.nudge.findMany({
        where: {
          workshopId,
          ...(filter.status !== undefined && { status: filter.status }),
          ...(filter.runId !== undefined && { runId: filter.runId }),
        },
        orderBy: [{ dueAt: 'asc' }, { id: 'asc' }],
        include: withRun,
      });
      return rows.map(read);
    },
    async inboxSince(workshopId, sequence) {
      const rows = await db.nudge.findMany({
        where: { workshopId, inboxSequence: { gt: sequence } },
        orderBy: { inboxSequence: 'asc' },
        include: withRun,
      });
      return rows.map((row) => read(row) as DeliveredNudge);
    },
    async cancelForRun(workshopId, runId) {
      return db.nudge.updateManyAndReturn({
        where: { workshopId, runId, status: 'waiting' },
        data: { status: 'cancelled' satisfies NudgeStatus },
        select: { id: true, version: true },
      });
    },
  };
}

async function claim(
  { db }: Session,
  id: string,
  version: number,
  now: Date,
): Promise<DeliveredNudge | null> {
  const owner = await db.nudge.findUnique({ where: { id }, select: { workshopId: true } });
  if (owner === null) return null;
  // Sequences are drawn before commit. Without this lock a reader could see 8 before 7 and pass 7 over for ever.
  await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${INBOX_CHANNEL + owner.workshopId}, 0))`;
  const delivered = await db.$executeRaw`
    UPDATE nudge
    SET status = 'delivered', delivered_at = ${now}, inbox_sequence = nextval('nudge_inbox_sequence')
    WHERE id = ${id}::uuid AND status = 'waiting' AND version = ${version} AND due_at <= ${now}`;
  if (delivered === 0) return null;
  const nudge = read(await db.nudge.findUniqueOrThrow({ where: { id }, include: withRun })) as DeliveredNudge;
  const notice = JSON.stringify({ workshopId: nudge.workshopId, nudgeId: id, sequence: nudge.sequence });
  await db.$executeRaw`SELECT pg_notify(${INBOX_CHANNEL}, ${notice})`;
  return nudge;
}

function read({
  run,
  stageKey,
  inboxSequence,
  earlyDeliveries: _,
  ...row
}: Row & { run: Pick<Run, 'key' | 'order'> }): StoredNudge {
  return {
    ...row,
    run: run.key,
    runTitle: (run.order as { title: string }).title,
    stage: stageKey,
    kind: row.kind as NudgeKind,
    status: row.status as NudgeStatus,
    sequence: inboxSequence === null ? null : Number(inboxSequence),
  };
}
