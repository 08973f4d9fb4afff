import { Redis } from 'ioredis';
import type { TestDatabase } from '../../support/database.js';
import { startRedis, type RunningRedis } from '../../support/redis.js';
import { openGate, type Gate } from './gate.js';

/** A store the queue can live in, behind a gate. */
export interface QueueHome {
  readonly name: 'postgres' | 'redis';
  readonly target: { readonly databaseUrl: string; readonly redisUrl?: string };
  readonly gate: Gate;
  /** Loses everything that is queued, as a restored backup or a Redis without disk would. */
  wipe(): Promise<void>;
  stop(): Promise<void>;
}

/**
 * Both kinds, or only PostgreSQL where there is no redis-server.
 * @param redisDb number of the Redis database, so that test files which share a given server stay apart
 */
export async function openQueueHomes(database: TestDatabase, redisDb: number): Promise<QueueHome[]> {
  const redis = await startRedis();
  const homes = [await postgresHome(database)];
  return redis === null ? homes : [...homes, await redisHome(database, redis, redisDb)];
}

async function postgresHome(database: TestDatabase): Promise<QueueHome> {
  const gate = await openGate(database.url);
  return {
    name: 'postgres',
    target: { databaseUrl: gate.url },
    gate,
    wipe: async () => {
      const tables = await database.sql<{ name: string }>(
        `SELECT quote_ident(tablename) AS name FROM pg_tables WHERE schemaname = 'bullmq' AND tablename <> 'migration'`,
      );
      // Table by table: truncating all at once deadlocks with a worker that is about to look for jobs.
      for (const { name } of tables) await database.sql(`DELETE FROM bullmq.${name}`);
    },
    stop: () => gate.close(),
  };
}

async function redisHome(database: TestDatabase, redis: RunningRedis, redisDb: number): Promise<QueueHome> {
  const url = `${redis.url}/${redisDb}`;
  const gate = await openGate(url);
  const client = new Redis(url);
  return {
    name: 'redis',
    target: { databaseUrl: database.url, redisUrl: gate.url },
    gate,
    wipe: async () => void (await client.flushdb()),
    stop: async () => {
      await gate.close();
      client.disconnect();
      await redis.stop();
    },
  };
}
