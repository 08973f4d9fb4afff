import type { Lot as Row } from '../generated/client.js';
import { changedOr, type Changed } from '../results.js';
import { newId, type Session } from '../session.js';

export interface StoredLot {
  readonly id: string;
  readonly workshopId: string;
  readonly runId: string;
  readonly title: string;
  readonly count: number;
  readonly madeAt: Date;
  readonly readyLow: Date;
  readonly readyLikely: Date;
  readonly readyHigh: Date;
  readonly version: number;
  readonly createdAt: Date;
  readonly updatedAt: Date;
}

export type LotFacts = Pick<
  StoredLot,
  'title' | 'count' | 'madeAt' | 'readyLow' | 'readyLikely' | 'readyHigh'
>;

export interface Lots {
  /** The lot of a run: made the first time, brought up to date after that. */
  put(workshopId: string, runId: string, facts: LotFacts): Promise<StoredLot>;
  /** Takes the lot of a run away again, if there is one. */
  remove(workshopId: string, runId: string): Promise<void>;
  get(workshopId: string, id: string): Promise<StoredLot | null>;
  /** By the day they are likely to be ready. */
  list(workshopId: string): Promise<StoredLot[]>;
  update(
    workshopId: string,
    id: string,
    version: number,
    change: Partial<LotFacts>,
  ): Promise<Changed<StoredLot> | null>;
}

export function lots(session: Session): Lots {
  const { db } = session;
  const get = (workshopId: string, id: string): Promise<Row | null> =>
    db.lot.findUnique({ where: { workshopId_id: { workshopId, id } } });
  return {
    get,
    async put(workshopId, runId, facts) {
      const at = session.now();
      return db.lot.upsert({
        where: { workshopId_runId: { workshopId, runId } },
        create: { id: newId(session), workshopId, runId, ...facts, createdAt: at, updatedAt: at },
        update: { ...facts, version: { increment: 1 }, updatedAt: at },
      });
    },
    async remove(workshopId, runId) {
      await db.lot.deleteMany({ where: { workshopId, runId } });
    },
    async list(workshopId) {
      return db.lot.findMany({ where: { workshopId }, orderBy: [{ readyLikely: 'asc' }, { id: 'asc' }] });
    },
    async update(workshopId, id, version, change) {
      const [row] = await db.lot.updateManyAndReturn({
        where: { workshopId, id, version },
        data: { ...change, version: { increment: 1 }, updatedAt: session.now() },
      });
      return changedOr<StoredLot>(row, row ? null : await get(workshopId, id));
    },
  };
}
