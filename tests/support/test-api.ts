import type { AddressInfo } from 'node:net';
import { listenInbox, type Storage } from '#storage';
import { startNudges } from '#nudges';
import { openCompute, type Compute, type ComputeOptions } from '../../apps/api/compute/compute.js';
import { createApp } from '../../apps/api/create-app.js';
import { openInboxHub } from '../../apps/api/inbox/inbox-hub.js';
import { OddsRenewal } from '../../apps/api/use-cases/renew-odds.js';
import { StockUse } from '../../apps/api/use-cases/stock-use.js';
import { Taught } from '../../apps/api/use-cases/taught.js';
import { WorkshopTurns } from '../../apps/api/use-cases/workshop-turns.js';
import { HandClock } from '../nudges/support/hand-clock.js';
import { QuietLog } from '../nudges/support/quiet-log.js';
import { computeWorker } from './compute-worker.js';
import { testDatabase } from './database.js';
import { loadRunFile } from './run-files.js';
import type { RunFile, RunOrder } from '#contract';

/** An answer with its body read as JSON. */
export interface Answer {
  readonly status: number;
  readonly headers: Headers;
  // Tests look into answers of many shapes, and fail where one is not what they expect.
  // oxlint-disable-next-line typescript/no-explicit-any
  readonly body: any;
}

type Call = (
  method: string,
  path: string,
  body?: unknown,
  headers?: Record<string, string>,
) => Promise<Answer>;

/** The API over a database of its own, with a clock moved by hand and the real queue. */
export interface TestApi {
  readonly url: string;
  readonly key: string;
  readonly workshopId: string;
  readonly clock: HandClock;
  readonly storage: Storage;
  readonly log: QuietLog;
  readonly call: Call;
  /** The same API once more, as a second process over the same database would be. */
  another(): Promise<{
    readonly url: string;
    readonly call: Call;
    renewed(): Promise<void>;
    close(): Promise<void>;
  }>;
  /** Once the odds of all plans are what they come to now. */
  renewed(): Promise<void>;
  /** Puts the contents of a run file into the library. @returns its orders */
  stock(file: RunFile): Promise<RunOrder[]>;
  /** Moves the clock on to an instant, in steps, and lets everything due be delivered. */
  walkTo(instant: string, stepMinutes?: number): Promise<void>;
  count(table: string): Promise<number>;
  /** Runs one statement as the owner of the database, past everything. */
  sql(statement: string): Promise<unknown>;
  close(): Promise<void>;
}

export interface TestApiOptions {
  readonly limits?: ComputeOptions;
  readonly around?: (compute: Compute) => Compute;
  /** Answers under any name, as it does when bound to the network; it listens on this machine alone all the same. */
  readonly anyHost?: boolean;
  /** False: its maker is still asked how to begin. */
  readonly begun?: boolean;
}

/**
 * @param pages folder of a web build to serve; none if not given
 * @param options.limits of computing, where they are not the usual ones
 * @param options.around is put around the pool of threads, to see or to change what it does
 */
export async function openTestApi(
  now: string,
  file = loadRunFile('ok', 'two-layer'),
  pages?: string,
  { limits = {}, around = (compute) => compute, anyHost = false, begun = true }: TestApiOptions = {},
): Promise<TestApi> {
  const database = await testDatabase();
  const clock = new HandClock(now);
  const log = new QuietLog();
  const storage = await database.open({ now: () => clock.now() });
  const workshop = await storage.workshops.create(file.workshop, { begun });
  const { raw: key } = await storage.keys.create(workshop.id, 'test');
  const nudges = await startNudges({
    store: storage.nudges,
    databaseUrl: database.url,
    clock,
    log,
    channels: [],
    concurrency: 3,
    sweepEveryMs: 60 * 60_000,
  });
  const inbox = openInboxHub(storage, (error) => log.error('inbox', { error }));
  const listener = await listenInbox(
    database.url,
    (notice) => inbox.notice(notice),
    () => inbox.gap(),
    (notice) => inbox.judged(notice),
    (notice) => inbox.changed(notice),
  );
  const worker = await computeWorker();
  /** One process: it shares nothing with another but the database. */
  const serve = async (
    storage: Storage,
  ): Promise<{ url: string; renewed(): Promise<void>; close(): Promise<void> }> => {
    const pool = openCompute({ threads: 2, worker, ...limits });
    const compute = around(pool);
    const taught = new Taught(storage, compute);
    const stockUse = new StockUse(taught, compute);
    const renewal = new OddsRenewal({ storage, compute, taught, log, lookEveryMs: 60 * 60_000 });
    const own = { storage, compute, turns: new WorkshopTurns(), taught, stockUse, renewal };
    const parts = { ...own, nudges, inbox, clock, log, version: 'test' };
    const app = await createApp(parts, {
      bind: anyHost ? '0.0.0.0' : '127.0.0.1',
      ...(pages === undefined ? {} : { pages }),
    });
    await app.listen(0, '127.0.0.1');
    const { port } = app.getHttpServer().address() as AddressInfo;
    return {
      url: `http://127.0.0.1:${String(port)}`,
      renewed: () => renewal.idle(),
      async close() {
        await pool.close();
        await renewal.close();
        await app.close();
      },
    };
  };
  const first = await serve(storage);
  const { url } = first;
  const call = caller(url, key);
  const made = async (path: string, body: unknown): Promise<void> => {
    const answer = await call('POST', path, body);
    if (answer.status !== 201) throw new Error(JSON.stringify(answer.body));
  };
  return {
    url,
    key,
    workshopId: workshop.id,
    clock,
    storage,
    log,
    call,
    renewed: () => first.renewed(),
    async another() {
      const second = await serve(await database.open({ now: () => clock.now() }));
      return { ...second, call: caller(second.url, key) };
    },
    async stock({ moulds, fats, recipes, designs, runs }) {
      for (const mould of moulds) await made('/api/moulds', mould);
      for (const fat of fats) await made('/api/fats', fat);
      for (const recipe of recipes) await made('/api/recipes', recipe);
      for (const design of designs) await made('/api/designs', design);
      return runs;
    },
    async walkTo(instant, stepMinutes = 60) {
      const target = Date.parse(instant);
      while (clock.now().getTime() < target) {
        clock.advance(Math.min(stepMinutes, (target - clock.now().getTime()) / 60_000));
        await nudges.sweep();
        await nudges.idle();
      }
    },
    sql: (statement) => database.sql(statement),
    async count(table) {
      const [row] = await database.sql<{ n: string }>(`SELECT count(*) AS n FROM ${table}`);
      return Number(row?.n);
    },
    async close() {
      await first.close();
      await listener.close();
      await nudges.stop();
      await database.drop();
    },
  };
}

function caller(url: string, key: string): Call {
  return async (method, path, body, headers = {}) => {
    const response = await fetch(`${url}${path}`, {
      method,
      headers: {
        authorization: `Bearer ${key}`,
        ...(body === undefined ? {} : { 'content-type': 'application/json' }),
        ...headers,
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
    });
    const text = await response.text();
    return {
      status: response.status,
      headers: response.headers,
      body: text === '' ? undefined : JSON.parse(text),
    };
  };
}
