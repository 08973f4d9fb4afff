import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { RunOrder } from '#contract';
import { startNudges, type Nudges } from '#nudges';
import type { Storage } from '#storage';
import { startProgram, type Program } from '../../apps/api/start/start-program.js';
import { computeWorker } from '../support/compute-worker.js';
import { testDatabase } from '../support/database.js';
import { loadRunFile } from '../support/run-files.js';
import { HandClock } from './support/hand-clock.js';
import { openQueueHomes } from './support/queue-homes.js';
import { QuietLog } from './support/quiet-log.js';

/** 18:00 in Dublin, when the hours of that Friday begin: a run made now is to be begun now. */
const NOW = '2026-10-23T17:00:00Z';

const database = await testDatabase();
const homes = await openQueueHomes(database, 3);
const folder = mkdtempSync(join(tmpdir(), 'benchtide-separate-'));
afterAll(async () => {
  await Promise.all(homes.map((home) => home.stop()));
  await database.drop();
  rmSync(folder, { recursive: true });
});

describe.each(homes)('an API without a worker of its own, over $name', (home) => {
  let clock: HandClock;
  let log: QuietLog;
  let storage: Storage;
  let workshopId: string;
  let program: Program;
  let worker: Nudges | undefined;

  beforeEach(async () => {
    await home.wipe();
    clock = new HandClock(NOW);
    log = new QuietLog();
    storage = await database.open({ now: () => clock.now() });
    const [first] = await storage.workshops.list();
    workshopId = (first ?? (await stock(storage))).id;
    // What was begun before would keep hands and mould from being free now.
    for (const { id, version } of await storage.runs.list(workshopId))
      await storage.runs.update(workshopId, id, version, { state: 'abandoned' });
    program = await startProgram({
      config: {
        ...{ port: 0, bind: '127.0.0.1', home: folder, log: 'info', worker: false, compute: {} },
        ...{ databaseUrl: home.target.databaseUrl, redisUrl: home.target.redisUrl },
      },
      clock,
      log,
      progress: () => undefined,
      computeWorker: await computeWorker(),
    });
  });
  afterEach(async () => {
    await program.stop();
    await worker?.stop();
    worker = undefined;
  });

  const call = async (method: string, path: string, body?: unknown) => {
    const answer = await fetch(`${program.address}${path}`, {
      method,
      headers: { authorization: `Bearer ${program.accessKey.key}`, 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    return { status: answer.status, body: (await answer.json()) as unknown };
  };
  const begin = (key: string) => call('POST', '/api/runs', { ...order(), key });
  /** Sweeps once, at its start, and then not again within the test. */
  const startWorker = async (): Promise<void> => {
    worker = await startNudges({
      ...{ store: storage.nudges, ...home.target, clock, log, channels: [], concurrency: 3 },
      sweepEveryMs: 60 * 60_000,
    });
    await worker.sweep();
    await worker.idle();
  };
  const delivered = async (): Promise<string[]> =>
    (await storage.nudges.inboxSince(workshopId, 0)).map(({ run, stage }) => `${run} ${stage}`);

  it('tells the queue, so that the worker need not wait for its sweep', async () => {
    await startWorker();
    const key = `at-once-${home.name}`;
    expect((await begin(key)).status).toBe(201);
    await expect.poll(delivered, { timeout: 10_000 }).toContain(`${key} pour-under`);
  });

  it('delivers nothing itself, and says so of a queue that is away, without holding anyone up', async () => {
    const health = async () => (await call('GET', '/api/health')).body;
    expect(await health()).toMatchObject({ status: 'ok', queue: { state: 'up', backend: home.name } });
    const key = `later-${home.name}`;
    if (home.name === 'redis') {
      await home.gate.close();
      try {
        expect(await health()).toMatchObject({ status: 'degraded', queue: { state: 'down' } });
        expect((await begin(key)).status).toBe(201);
      } finally {
        await home.gate.open();
      }
      expect(log.lines.map(({ message }) => message)).toContain(
        'Nudges could not be queued; the sweep will do it',
      );
    } else {
      expect((await begin(key)).status).toBe(201);
    }
    expect(await delivered()).not.toContain(`${key} pour-under`);
    await startWorker();
    await expect.poll(delivered, { timeout: 10_000 }).toContain(`${key} pour-under`);
  });
});

function order(): RunOrder {
  const [run] = loadRunFile('ok', 'two-layer').runs;
  if (run === undefined) throw new Error('The file has no run.');
  return { ...run, startAfter: '2026-10-23T18:00' };
}

async function stock(storage: Storage): Promise<{ id: string }> {
  const file = loadRunFile('ok', 'two-layer');
  const workshop = await storage.workshops.create(file.workshop);
  for (const mould of file.moulds) await storage.library.moulds.create(workshop.id, mould);
  for (const recipe of file.recipes) await storage.library.recipes.create(workshop.id, recipe);
  for (const design of file.designs) await storage.library.designs.create(workshop.id, design);
  return workshop;
}
