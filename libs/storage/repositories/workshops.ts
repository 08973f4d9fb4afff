import { readStored, workshopFacts, type WorkshopFacts } from '#contract';
import type { Workshop as Row } from '../generated/client.js';
import { changedOr, type Changed } from '../results.js';
import { newId, toJson, type Session } from '../session.js';
import { lockWorkshop, LOCK_TIMEOUT_MS } from '../workshop-lock.js';
import { removeDemo } from './remove-demo.js';

export interface StoredWorkshop {
  readonly id: string;
  readonly version: number;
  readonly facts: WorkshopFacts;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  /** Id of the maker's own workshop that this is the demo of; null: it is the maker's own. */
  readonly demoOf: string | null;
  /** Its maker has chosen to begin with it, or changed it. */
  readonly begun: boolean;
}

export interface NewWorkshop {
  /** Id of the workshop that this one is the demo of; one has one demo at most. */
  readonly demoOf?: string;
  /** False: its maker has not chosen to begin yet; true if not given. */
  readonly begun?: boolean;
}

export interface Workshops {
  create(facts: WorkshopFacts, about?: NewWorkshop): Promise<StoredWorkshop>;
  get(workshopId: string): Promise<StoredWorkshop | null>;
  /** All of them, oldest first. For start-up and upkeep; never answers a maker's request. */
  list(): Promise<StoredWorkshop[]>;
  /** Replaces the facts; the workshop counts as begun from then on. */
  update(workshopId: string, version: number, facts: WorkshopFacts): Promise<Changed<StoredWorkshop> | null>;
  /** The demo of a maker's own workshop; null: it has none. */
  demoOf(ownId: string): Promise<StoredWorkshop | null>;
  /**
   * Removes the demo of a maker's own workshop with everything in it, its log included. The database refuses that for any
   * other workshop.
   * @returns false when there is none
   */
  removeDemoOf(ownId: string): Promise<boolean>;
}

export function workshops(session: Session): Workshops {
  const { db } = session;
  const get = async (id: string): Promise<StoredWorkshop | null> => {
    const row = await db.workshop.findUnique({ where: { id } });
    return row && read(row);
  };
  return {
    get,
    async create(facts, { demoOf = null, begun = true } = {}) {
      const at = session.now();
      const data = { id: newId(session), facts: toJson(facts), createdAt: at, updatedAt: at, demoOf, begun };
      return read(await db.workshop.create({ data }));
    },
    async list() {
      return (await db.workshop.findMany({ orderBy: [{ createdAt: 'asc' }, { id: 'asc' }] })).map(read);
    },
    async update(id, version, facts) {
      const [row] = await db.workshop.updateManyAndReturn({
        where: { id, version },
        data: { facts: toJson(facts), version: { increment: 1 }, updatedAt: session.now(), begun: true },
      });
      return changedOr(row && read(row), row ? null : await get(id));
    },
    async demoOf(ownId) {
      const row = await db.workshop.findUnique({ where: { demoOf: ownId } });
      return row && read(row);
    },
    removeDemoOf: (ownId) =>
      session.atomically(async (tx) => {
        const demo = await tx.db.workshop.findUnique({ where: { demoOf: ownId }, select: { id: true } });
        if (demo === null) return false;
        await lockWorkshop(tx, demo.id, LOCK_TIMEOUT_MS);
        await removeDemo(tx, demo.id);
        return true;
      }),
  };
}

function read(row: Row): StoredWorkshop {
  return { ...row, facts: readStored(workshopFacts, row.facts) };
}
