import { NestFactory } from '@nestjs/core';
import { afterAll, describe, expect, it } from 'vitest';
import { systemClock, type Nudges } from '#nudges';
import { openStorage } from '#storage';
import { nudge, planToSave, seedRun } from '../../tests/support/database-samples.js';
import { testDatabase } from '../../tests/support/database.js';
import { NUDGES, WorkerModule } from './worker.module.js';

const database = await testDatabase();
afterAll(() => database.drop());

describe('the worker', () => {
  it('delivers what is due in the database, clears what is old, and lets go of it when closed', async () => {
    const storage = await openStorage(database.url, { now: () => systemClock.now() });
    const { workshopId, runId } = await seedRun(storage);
    const due = nudge({ dueAt: new Date('2026-01-02T03:04:00Z') });
    await storage.plans.save(workshopId, planToSave(runId, [due]));

    await database.sql(
      `INSERT INTO idempotency_key (workshop_id, key, request_hash, status, response, created_at)
       VALUES ($1, 'old', 'hash', 201, '{}', now() - interval '31 days')`,
      [workshopId],
    );

    const silent = () => undefined;
    const worker = await NestFactory.createApplicationContext(
      WorkerModule.with({
        config: { databaseUrl: database.url, redisUrl: undefined, log: 'info' },
        clock: systemClock,
        log: { error: silent, warn: silent, info: silent, debug: silent },
      }),
      { logger: false, abortOnError: false },
    );
    try {
      const inbox = () => storage.nudges.inboxSince(workshopId, 0);
      await expect.poll(inbox, { timeout: 20_000 }).toMatchObject([{ title: due.title, dueAt: due.dueAt }]);
      await expect
        .poll(() => database.sql('SELECT key FROM idempotency_key'), { timeout: 5_000 })
        .toEqual([]);
      expect(await worker.get<Nudges>(NUDGES).health()).toEqual({ queue: 'up', backend: 'postgres' });
    } finally {
      await worker.close();
    }
    await storage.close();
    // The test's own connection is the only one left.
    const sessions = 'SELECT count(*)::int AS n FROM pg_stat_activity WHERE datname = current_database()';
    await expect.poll(async () => (await database.sql<{ n: number }>(sessions))[0]?.n).toBe(1);
  });
});
