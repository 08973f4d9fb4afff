import {
  fat,
  mould,
  pieceDesign,
  readStored,
  recipe,
  runOrder,
  type Fat,
  type Mould,
  type PieceDesign,
  type Recipe,
  type RunOrder,
  type WorkshopFacts,
} from '#contract';
import type { Run as Row } from '../generated/client.js';
import { changedOr, type Changed, type Created } from '../results.js';
import { fromJson, newId, toJson, type Session } from '../session.js';

export type RunState = 'planned' | 'making' | 'curing' | 'abandoned';

/** What the run is made from, as it was when the run was made: later changes to the library do not touch it. */
export interface RunSnapshot {
  readonly design: PieceDesign;
  readonly recipes: readonly Recipe[];
  readonly fats: readonly Fat[];
  readonly moulds: readonly Mould[];
  /** As it was when the run was made; absent in runs of the first version. */
  readonly room?: WorkshopFacts['room'];
}

export interface StoredRun {
  readonly id: string;
  readonly workshopId: string;
  readonly key: string;
  readonly version: number;
  readonly order: RunOrder;
  readonly snapshot: RunSnapshot;
  readonly state: RunState;
  readonly createdAt: Date;
  readonly updatedAt: Date;
}

/** A run without what it is made from. */
export type RunHead = Omit<StoredRun, 'snapshot'>;

/** Runs that still need hands and moulds. */
export const LIVE: readonly RunState[] = ['planned', 'making'];

export interface RunChange {
  /** Must keep the key. */
  readonly order?: RunOrder;
  readonly snapshot?: RunSnapshot;
  readonly state?: RunState;
}

/** Which runs are listed at once. */
export interface RunPage {
  /** Those that are live, or those that are not; absent: all. */
  readonly live?: boolean | undefined;
  /** Id of a run; only runs that were made before it. */
  readonly before?: string | undefined;
  readonly most: number;
}

export interface Runs {
  /** Starts in the state `planned`. */
  create(workshopId: string, run: { order: RunOrder; snapshot: RunSnapshot }): Promise<Created<StoredRun>>;
  get(workshopId: string, id: string): Promise<StoredRun | null>;
  byKey(workshopId: string, key: string): Promise<StoredRun | null>;
  head(workshopId: string, id: string): Promise<RunHead | null>;
  /** The latest of them, oldest first. */
  heads(workshopId: string, page: RunPage): Promise<RunHead[]>;
  /** Oldest first; with `states`, only those in one of them. */
  list(workshopId: string, filter?: { states?: readonly RunState[] }): Promise<StoredRun[]>;
  update(
    workshopId: string,
    id: string,
    version: number,
    change: RunChange,
  ): Promise<Changed<StoredRun> | null>;
}

export function runs(session: Session): Runs {
  const { db } = session;
  const get = async (workshopId: string, id: string): Promise<StoredRun | null> => {
    const row = await db.run.findUnique({ where: { workshopId_id: { workshopId, id } } });
    return row && read(row);
  };
  return {
    get,
    async create(workshopId, { order, snapshot }) {
      const at = session.now();
      const [row] = await db.run.createManyAndReturn({
        data: {
          id: newId(session),
          workshopId,
          key: order.key,
          order: toJson(order),
          snapshot: toJson(snapshot),
          state: 'planned' satisfies RunState,
          createdAt: at,
          updatedAt: at,
        },
        skipDuplicates: true,
      });
      return row ? { ok: true, value: read(row) } : { ok: false, reason: 'key-taken' };
    },
    async head(workshopId, id) {
      const row = await db.run.findUnique({
        where: { workshopId_id: { workshopId, id } },
        omit: { snapshot: true },
      });
      return row && readHead(row);
    },
    async heads(workshopId, { live, before, most }) {
      const states = [...LIVE];
      const rows = await db.run.findMany({
        where: {
          workshopId,
          ...(live !== undefined && { state: live ? { in: states } : { notIn: states } }),
          ...(before !== undefined && { id: { lt: before } }),
        },
        // Ids are in the order in which they were made.
        orderBy: { id: 'desc' },
        take: most,
        omit: { snapshot: true },
      });
      return rows.map(readHead).toReversed();
    },
    async byKey(workshopId, key) {
      const row = await db.run.findUnique({ where: { workshopId_key: { workshopId, key } } });
      return row && read(row);
    },
    async list(workshopId, filter = {}) {
      const rows = await db.run.findMany({
        where: { workshopId, ...(filter.states && { state: { in: [...filter.states] } }) },
        orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      });
      return rows.map(read);
    },
    async update(workshopId, id, version, change) {
      const [row] = await db.run.updateManyAndReturn({
        where: { workshopId, id, version },
        data: {
          ...(change.order && { order: toJson(change.order) }),
          ...(change.snapshot && { snapshot: toJson(change.snapshot) }),
          ...(change.state && { state: change.state }),
          version: { increment: 1 },
          updatedAt: session.now(),
        },
      });
      return changedOr(row && read(row), row ? null : await get(workshopId, id));
    },
  };
}

function read({ snapshot, ...head }: Row): StoredRun {
  return { ...readHead(head), snapshot: revivedSnapshot(fromJson<RunSnapshot>(snapshot)) };
}

function readHead(row: Omit<Row, 'snapshot'>): RunHead {
  return { ...row, order: readStored(runOrder, row.order), state: row.state as RunState };
}

/** A run's copy of what it is made from, brought up to what is known of it today. */
export function revivedSnapshot({ design, recipes, fats, moulds, room }: RunSnapshot): RunSnapshot {
  return {
    ...(room !== undefined && { room }),
    design: readStored(pieceDesign, design),
    recipes: recipes.map((each) => readStored(recipe, each)),
    fats: fats.map((each) => readStored(fat, each)),
    moulds: moulds.map((each) => readStored(mould, each)),
  };
}
