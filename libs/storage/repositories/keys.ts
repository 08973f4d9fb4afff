import { randomBytes } from 'node:crypto';
import { hashOf } from '../secret-hash.js';
import { newId, type Session } from '../session.js';

export interface AccessKey {
  readonly id: string;
  readonly workshopId: string;
  readonly label: string;
  readonly createdAt: Date;
  readonly revokedAt: Date | null;
  /** To some minutes; null: never used since this is kept. */
  readonly lastSeenAt: Date | null;
}

export interface Keys {
  /** Makes a key. `raw` is given out this once; only its hash is kept. */
  create(workshopId: string, label: string): Promise<AccessKey & { readonly raw: string }>;
  /** @returns whom a raw key belongs to; null when it is unknown or revoked */
  verify(raw: string): Promise<{ workshopId: string; keyId: string; lastSeenAt: Date | null } | null>;
  /** Notes that a key was used, where that was last noted some minutes ago. @param lastSeenAt as it was verified */
  noteSeen(workshopId: string, id: string, lastSeenAt: Date | null): Promise<void>;
  /** @returns the key with its new label; null when there is none, or it was revoked */
  rename(workshopId: string, id: string, label: string): Promise<AccessKey | null>;
  get(workshopId: string, id: string): Promise<AccessKey | null>;
  /** Those that were not revoked, oldest first. */
  list(workshopId: string): Promise<AccessKey[]>;
  /** @returns the revoked key, also when it was revoked before; null when there is none */
  revoke(workshopId: string, id: string): Promise<AccessKey | null>;
}

const shown = {
  id: true,
  workshopId: true,
  label: true,
  createdAt: true,
  revokedAt: true,
  lastSeenAt: true,
} as const;

/** No write for each request. */
const SEEN_EVERY_MS = 10 * 60_000;

export function keys(session: Session): Keys {
  const { db } = session;
  const get = async (workshopId: string, id: string): Promise<AccessKey | null> =>
    db.accessKey.findUnique({ where: { workshopId_id: { workshopId, id } }, select: shown });
  return {
    get,
    async create(workshopId, label) {
      // 256 random bits cannot be guessed, so a plain fast hash protects them as well as a slow one.
      const raw = randomBytes(32).toString('base64url');
      const data = { id: newId(session), workshopId, label, hash: hashOf(raw), createdAt: session.now() };
      return { ...(await db.accessKey.create({ data, select: shown })), raw };
    },
    async verify(raw) {
      const row = await db.accessKey.findUnique({ where: { hash: hashOf(raw) }, select: shown });
      if (row === null || row.revokedAt !== null) return null;
      return { workshopId: row.workshopId, keyId: row.id, lastSeenAt: row.lastSeenAt };
    },
    async noteSeen(workshopId, id, lastSeenAt) {
      const now = session.now();
      if (lastSeenAt !== null && now.getTime() - lastSeenAt.getTime() < SEEN_EVERY_MS) return;
      await db.accessKey.updateMany({ where: { workshopId, id }, data: { lastSeenAt: now } });
    },
    async rename(workshopId, id, label) {
      const where = { workshopId, id, revokedAt: null };
      const { count } = await db.accessKey.updateMany({ where, data: { label } });
      return count === 0 ? null : get(workshopId, id);
    },
    async list(workshopId) {
      return db.accessKey.findMany({
        where: { workshopId, revokedAt: null },
        select: shown,
        orderBy: { id: 'asc' },
      });
    },
    async revoke(workshopId, id) {
      await db.accessKey.updateMany({
        where: { workshopId, id, revokedAt: null },
        data: { revokedAt: session.now() },
      });
      return get(workshopId, id);
    },
  };
}
