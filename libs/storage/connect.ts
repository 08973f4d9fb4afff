import { PrismaPg } from '@prisma/adapter-pg';
import pg from 'pg';
import { PrismaClient, type Prisma } from './generated/client.js';
import { clearing, type Clearing } from './repositories/clearing.js';
import { idempotency, type Idempotency } from './repositories/idempotency.js';
import { judgements, type Judgements } from './repositories/judgements.js';
import { keys, type Keys } from './repositories/keys.js';
import { library, type Library } from './repositories/library.js';
import { log, type Log } from './repositories/log.js';
import { lots, type Lots } from './repositories/lots.js';
import { nudges, type Nudges } from './repositories/nudges.js';
import { photos, type Photos } from './repositories/photos.js';
import { planBasis, type PlanBasis } from './repositories/plan-basis.js';
import { plans, type Plans } from './repositories/plans.js';
import { runs, type Runs } from './repositories/runs.js';
import { signInCodes, type SignInCodes } from './repositories/sign-in-codes.js';
import { stock, type Stock } from './repositories/stock.js';
import { teachings, type Teachings } from './repositories/teachings.js';
import { workshops, type Workshops } from './repositories/workshops.js';
import type { Session } from './session.js';
import { LOCK_TIMEOUT_MS, lockWorkshop, TRANSACTION } from './workshop-lock.js';

/** Everything that is stored, on one connection: the pool or a transaction. */
export interface Repositories {
  readonly workshops: Workshops;
  readonly keys: Keys;
  readonly signInCodes: SignInCodes;
  readonly library: Library;
  readonly runs: Runs;
  readonly plans: Plans;
  readonly judgements: Judgements;
  readonly log: Log;
  readonly photos: Photos;
  readonly stock: Stock;
  readonly teachings: Teachings;
  readonly nudges: Nudges;
  readonly lots: Lots;
  readonly idempotency: Idempotency<Repositories>;
  readonly planBasis: PlanBasis;
  readonly clearing: Clearing;
}

export interface Storage extends Repositories {
  /**
   * Runs the work in one transaction: all of it is stored, or nothing. Inside, use only the repositories handed
   * in; the outer ones would take a second connection and wait for the first.
   */
  transaction<T>(work: (tx: Repositories) => Promise<T>): Promise<T>;
  /**
   * Reads in one transaction that sees everything as it was at its first query, whatever is stored meanwhile, and that
   * can store nothing itself.
   */
  snapshot<T>(read: (tx: Repositories) => Promise<T>): Promise<T>;
  /**
   * The same as `transaction`, with the workshop to itself: whoever else asks for it waits until this is over.
   * @throws WorkshopBusyError when it is not free in time
   * @throws RangeError when there is no such workshop
   */
  withWorkshopLock<T>(workshopId: string, work: (tx: Repositories) => Promise<T>): Promise<T>;
  /** The same, while no other process does this: for what only the first of several starts is to do. */
  startingAlone<T>(work: (tx: Repositories) => Promise<T>): Promise<T>;
  /** Answers when the database does. */
  ping(): Promise<void>;
  close(): Promise<void>;
}

export interface StorageOptions {
  /** Connections at most; 10 if not given. */
  readonly poolSize?: number;
  /** How long `withWorkshopLock` waits for its turn; 20 s if not given. */
  readonly lockTimeoutMs?: number;
  readonly now: () => Date;
  /** Is told, each time that a workshop was held, for how many milliseconds: from having the lock to the commit. */
  readonly onLockHeld?: (milliseconds: number) => void;
}

/** One more than the lock of the migrations; any number that nothing else here takes. */
const START_LOCK = 72707370n;

/** Connects to a database that `migrate` has brought up to date. */
export async function openStorage(databaseUrl: string, options: StorageOptions): Promise<Storage> {
  const pool = new pg.Pool({
    connectionString: databaseUrl,
    max: options.poolSize ?? 10,
    connectionTimeoutMillis: 20_000,
    // The adapter writes and reads instants without their offset, so they shift unless the session is in UTC.
    // oxlint-disable-next-line typescript/no-misused-promises -- the pool awaits it; its types do not say so
    onConnect: async (client) => {
      await client.query("SET timezone = 'UTC'");
    },
  });
  // A connection that breaks while idle is replaced at the next query, which reports any real trouble.
  pool.on('error', () => undefined);
  const prisma = new PrismaClient({ adapter: new PrismaPg(pool) });
  const { now } = options;

  const inTransaction = <T>(work: (session: Session) => Promise<T>): Promise<T> =>
    prisma.$transaction((db) => work(sessionInside(db, now)), TRANSACTION);
  const session: Session = { db: prisma, now, atomically: inTransaction };
  await ping(pool).catch(async (error: unknown) => {
    await pool.end();
    throw error;
  });
  return {
    ...repositories(session),
    transaction: (work) => inTransaction((inner) => work(repositories(inner))),
    snapshot: (read) =>
      prisma.$transaction(
        async (db) => {
          await db.$executeRaw`SET TRANSACTION READ ONLY`;
          return read(repositories(sessionInside(db, now)));
        },
        { ...TRANSACTION, isolationLevel: 'RepeatableRead' },
      ),
    async withWorkshopLock(workshopId, work) {
      let since: number | undefined;
      try {
        return await inTransaction(async (inner) => {
          await lockWorkshop(inner, workshopId, options.lockTimeoutMs ?? LOCK_TIMEOUT_MS);
          since = performance.now();
          return work(repositories(sessionInside(inner.db, now, workshopId)));
        });
      } finally {
        if (since !== undefined) options.onLockHeld?.(performance.now() - since);
      }
    },
    startingAlone: (work) =>
      inTransaction(async (inner) => {
        await inner.db.$executeRaw`SELECT pg_advisory_xact_lock(${START_LOCK})`;
        return work(repositories(inner));
      }),
    ping: () => ping(pool),
    async close() {
      await prisma.$disconnect();
      await pool.end();
    },
  };
}

function sessionInside(db: Prisma.TransactionClient, now: () => Date, holds?: string): Session {
  const held = holds === undefined ? {} : { holds };
  const session: Session = { db, now, ...held, atomically: (work) => work(session) };
  return session;
}

function repositories(session: Session): Repositories {
  return {
    workshops: workshops(session),
    keys: keys(session),
    signInCodes: signInCodes(session),
    library: library(session),
    runs: runs(session),
    plans: plans(session),
    judgements: judgements(session),
    log: log(session),
    photos: photos(session),
    stock: stock(session),
    teachings: teachings(session),
    nudges: nudges(session),
    lots: lots(session),
    idempotency: idempotency(session, repositories),
    planBasis: planBasis(session),
    clearing: clearing(session),
  };
}

async function ping(pool: pg.Pool): Promise<void> {
  await pool.query('SELECT 1');
}
