import type { Session } from '../session.js';
import { clearPhotos } from './photos.js';

/** How many rows of each kind went. */
export interface Cleared {
  readonly idempotencyKeys: number;
  readonly nudges: number;
  readonly planRevisions: number;
  readonly signInCodes: number;
  readonly photos: number;
}

export interface Clearing {
  /**
   * Clears a workshop of what is no longer of use, at most so many rows of each kind in one go: answers kept for a
   * repeated request, nudges that were delivered or cancelled, plans that later ones have replaced and no nudge or
   * answer refers to, codes that ran out, photos that no note shows. Everything younger than the instant stays, and so does the latest plan of every run. Any
   * number of processes may do this at once: rows that one is at are passed over by the others.
   */
  clear(workshopId: string, before: Date, atMost: number): Promise<Cleared>;
}

/** Plans are large. */
const PLANS_SHARE = 5;

export function clearing(session: Session): Clearing {
  return {
    async clear(workshopId, before, atMost) {
      // One transaction each, so that none holds rows for longer than it must. Plans last: the others refer to them.
      const idempotencyKeys = await session.db.$executeRaw`
        DELETE FROM idempotency_key WHERE workshop_id = ${workshopId}::uuid AND key IN (
          SELECT key FROM idempotency_key
          WHERE workshop_id = ${workshopId}::uuid AND created_at < ${before} AND status IS NOT NULL
          LIMIT ${atMost} FOR UPDATE SKIP LOCKED)`;
      const nudges = await session.db.$executeRaw`
        DELETE FROM nudge WHERE workshop_id = ${workshopId}::uuid AND id IN (
          SELECT id FROM nudge
          WHERE workshop_id = ${workshopId}::uuid AND status IN ('delivered', 'cancelled') AND due_at < ${before}
            AND (delivered_at IS NULL OR delivered_at < ${before})
          LIMIT ${atMost} FOR UPDATE SKIP LOCKED)`;
      const signInCodes = await session.db.$executeRaw`
        DELETE FROM sign_in_code WHERE workshop_id = ${workshopId}::uuid AND id IN (
          SELECT id FROM sign_in_code WHERE workshop_id = ${workshopId}::uuid AND expires_at < ${before}
          LIMIT ${atMost} FOR UPDATE SKIP LOCKED)`;
      const planRevisions = await session.atomically((tx) =>
        clearPlans(tx, workshopId, before, Math.ceil(atMost / PLANS_SHARE)),
      );
      const photos = await clearPhotos(session.db, workshopId, before, atMost);
      return { idempotencyKeys, nudges, planRevisions, signInCodes, photos };
    },
  };
}

async function clearPlans(
  { db }: Session,
  workshopId: string,
  before: Date,
  atMost: number,
): Promise<number> {
  const superseded = await db.$queryRaw<{ id: string }[]>`
    SELECT id FROM plan_revision old
    WHERE workshop_id = ${workshopId}::uuid AND made_at < ${before}
      AND EXISTS (SELECT 1 FROM plan_revision newer WHERE newer.workshop_id = old.workshop_id
                  AND newer.run_id = old.run_id AND newer.number > old.number)
      AND NOT EXISTS (SELECT 1 FROM nudge WHERE nudge.workshop_id = old.workshop_id AND nudge.revision_id = old.id)
      AND NOT EXISTS (SELECT 1 FROM idempotency_key answer
                      WHERE answer.workshop_id = old.workshop_id AND answer.revision_id = old.id)
    LIMIT ${atMost} FOR UPDATE SKIP LOCKED`;
  const ids = superseded.map(({ id }) => id);
  if (ids.length === 0) return 0;
  // The database refuses to remove a plan unless this is set, and the latest of a run even then.
  await db.$executeRaw`SELECT set_config('benchtide.clearing', 'on', true)`;
  const { count } = await db.planRevision.deleteMany({ where: { workshopId, id: { in: ids } } });
  return count;
}
