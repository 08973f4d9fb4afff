import { Prisma } from '../generated/client.js';
import type { Session } from '../session.js';

/** What is known of a photo besides the picture. */
export interface PhotoFacts {
  readonly id: string;
  readonly runId: string;
  readonly keptAt: Date;
  /** Pixels. */
  readonly width: number;
  readonly height: number;
  /** Bytes. */
  readonly size: number;
}

export interface PhotoToKeep extends Pick<PhotoFacts, 'id' | 'width' | 'height'> {
  readonly bytes: Buffer;
}

/** How many bytes there may be; each photo counts at least so much. */
export interface PhotoRoom {
  readonly runBytes: number;
  readonly workshopBytes: number;
  readonly leastCounted: number;
}

export type KeptPhoto =
  | { readonly ok: true; readonly value: PhotoFacts }
  | { readonly ok: false; readonly reason: 'id-taken' | 'run-full' | 'workshop-full' };

/** Photos for the bench log. */
export interface Photos {
  /**
   * Keeps a photo, once for its id. Photos of one workshop are counted one after the other, so that the room holds.
   * Only within a transaction.
   */
  keep(workshopId: string, runId: string, photo: PhotoToKeep, room: PhotoRoom): Promise<KeptPhoto>;
  /** Of a run, oldest first. */
  list(workshopId: string, runId: string): Promise<PhotoFacts[]>;
  get(workshopId: string, id: string): Promise<PhotoFacts | null>;
  bytes(workshopId: string, id: string): Promise<Buffer | null>;
}

/** A photo is sent before the note that shows it; one that no note shows after so long belongs to none. */
const UNSHOWN_MS = 60 * 60_000;
/** In one go. */
const MOST_CLEARED = 100;

const facts = { id: true, runId: true, keptAt: true, width: true, height: true, size: true } as const;

export function photos({ db, now }: Session): Photos {
  const at = (workshopId: string, id: string) => ({ where: { workshopId_id: { workshopId, id } } });
  return {
    async keep(workshopId, runId, { id, width, height, bytes }, room) {
      await db.$executeRaw`SELECT pg_advisory_xact_lock(hashtextextended(${`photos ${workshopId}`}, 0))`;
      const before = await db.photo.findUnique(at(workshopId, id));
      if (before !== null) {
        const isSame = before.runId === runId && bytes.equals(before.bytes);
        return isSame ? { ok: true, value: before } : { ok: false, reason: 'id-taken' };
      }
      const counted = Math.max(bytes.length, room.leastCounted);
      let full = await lackOf(db, workshopId, runId, counted, room);
      if (full !== undefined) {
        await clearPhotos(db, workshopId, new Date(now().getTime() - UNSHOWN_MS), MOST_CLEARED);
        full = await lackOf(db, workshopId, runId, counted, room);
      }
      if (full !== undefined) return { ok: false, reason: full };
      const size = bytes.length;
      const data = {
        ...{ id, workshopId, runId, keptAt: now(), width, height, size },
        bytes: new Uint8Array(bytes),
      };
      return { ok: true, value: await db.photo.create({ data, select: facts }) };
    },
    async list(workshopId, runId) {
      const orderBy = [{ keptAt: 'asc' }, { id: 'asc' }] as const;
      return db.photo.findMany({ where: { workshopId, runId }, select: facts, orderBy: [...orderBy] });
    },
    async get(workshopId, id) {
      return db.photo.findUnique({ ...at(workshopId, id), select: facts });
    },
    async bytes(workshopId, id) {
      const found = await db.photo.findUnique({ ...at(workshopId, id), select: { bytes: true } });
      return found && Buffer.from(found.bytes);
    },
  };
}

/** What of the room a photo would not fit into. */
async function lackOf(
  db: Session['db'],
  workshopId: string,
  runId: string,
  counted: number,
  room: PhotoRoom,
): Promise<'run-full' | 'workshop-full' | undefined> {
  const [used] = await db.$queryRaw<{ run: number; workshop: number }[]>`
    SELECT coalesce(sum(counted), 0)::float8 AS workshop,
      coalesce(sum(counted) FILTER (WHERE run_id = ${runId}::uuid), 0)::float8 AS run
    FROM (SELECT run_id, greatest(size, ${room.leastCounted}::int) AS counted
          FROM photo WHERE workshop_id = ${workshopId}::uuid) photo`;
  const { run = 0, workshop = 0 } = used ?? {};
  if (run + counted > room.runBytes) return 'run-full';
  return workshop + counted > room.workshopBytes ? 'workshop-full' : undefined;
}

/**
 * Removes photos that were kept before an instant and that no note shows, or only notes that were taken back or corrected.
 * @returns how many went
 */
export async function clearPhotos(
  db: Session['db'],
  workshopId: string,
  before: Date,
  atMost: number,
): Promise<number> {
  const shown = Prisma.sql`jsonb_build_array(jsonb_build_object('photo', photo.id))`;
  return db.$executeRaw`
    DELETE FROM photo WHERE workshop_id = ${workshopId}::uuid AND id IN (
      SELECT id FROM photo
      WHERE workshop_id = ${workshopId}::uuid AND kept_at < ${before} AND NOT EXISTS (
        SELECT 1 FROM bench_log note
        WHERE note.workshop_id = photo.workshop_id AND note.run_id = photo.run_id
          AND note.entry->'photos' @> ${shown}
          AND NOT EXISTS (
            SELECT 1 FROM bench_log later
            WHERE later.workshop_id = note.workshop_id AND later.run_id = note.run_id
              AND (later.entry->>'corrects' = note.id::text
                OR (later.entry->>'kind' = 'take-back' AND later.entry->>'entry' = note.id::text))))
      LIMIT ${atMost} FOR UPDATE SKIP LOCKED)`;
}
