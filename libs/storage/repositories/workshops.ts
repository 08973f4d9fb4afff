import { readStored, workshopFacts, type WorkshopFacts } from '#contract';
import type { Workshop as Row } from '../generated/client.js';
import { changedOr, type Changed } from '../results.js';
import { newId, toJson, type Session } from '../session.js';

export interface StoredWorkshop {
  readonly id: string;
  readonly version: number;
  readonly facts: WorkshopFacts;
  readonly createdAt: Date;
  readonly updatedAt: Date;
}

export interface Workshops {
  create(facts: WorkshopFacts): Promise<StoredWorkshop>;
  get(workshopId: string): Promise<StoredWorkshop | null>;
  /** All of them, oldest first. For start-up and upkeep; never answers a maker's request. */
  list(): Promise<StoredWorkshop[]>;
  update(workshopId: string, version: number, facts: WorkshopFacts): Promise<Changed<StoredWorkshop> | null>;
}

export function workshops(session: Session): Workshops {
  const { db } = session;
  const get = async (id: string): Promise<StoredWorkshop | null> => {
    const row = await db.workshop.findUnique({ where: { id } });
    return row && read(row);
  };
  return {
    get,
    async create(facts) {
      const at = session.now();
      const data = { id: newId(session), facts: toJson(facts), createdAt: at, updatedAt: at };
      return read(await db.workshop.create({ data }));
    },
    async list() {
      return (await db.workshop.findMany({ orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] })).map(read);
    },
    async update(id, version, facts) {
      const [row] = await db.workshop.updateManyAndReturn({
        where: { id, version },
        data: { facts: toJson(facts), version: { increment: 1 }, updatedAt: session.now() },
      });
      return changedOr(row && read(row), row ? null : await get(id));
    },
  };
}

function read(row: Row): StoredWorkshop {
  return { ...row, facts: readStored(workshopFacts, row.facts) };
}
