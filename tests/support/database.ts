import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { openStorage, type Storage, type StorageOptions } from '#storage';
import { databaseNamed, requireTestName } from './database-name.js';

export interface TestDatabase {
  readonly url: string;
  /** Opens storage on it, which `drop` closes. */
  open(options?: Partial<StorageOptions>): Promise<Storage>;
  /** Runs one statement as the owner, past all repositories. */
  sql<Row extends pg.QueryResultRow>(statement: string, values?: unknown[]): Promise<Row[]>;
  drop(): Promise<void>;
}

/** A database of one's own, migrated and empty (or quite empty). Make it in `beforeAll`, drop it in `afterAll`. */
export async function testDatabase(
  options: { migrated: boolean } = { migrated: true },
): Promise<TestDatabase> {
  const template = inject('templateDatabaseUrl');
  if (template === null) throw new Error('The run was set up without a database: see database-setup.ts.');
  const url = databaseNamed(template, `benchtide_test_${randomBytes(6).toString('hex')}`);
  const name = requireTestName(url);
  const admin = new pg.Client({ connectionString: databaseNamed(template, 'postgres') });
  await admin.connect();
  const source = options.migrated ? requireTestName(template) : 'template0';
  await admin.query(`CREATE DATABASE ${name} TEMPLATE ${source}`);

  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const opened: Storage[] = [];
  return {
    url,
    async open(options = {}) {
      const storage = await openStorage(url, { now: () => new Date(), ...options });
      opened.push(storage);
      return storage;
    },
    async sql<Row extends pg.QueryResultRow>(statement: string, values: unknown[] = []) {
      return (await client.query<Row>(statement, values)).rows;
    },
    async drop() {
      await Promise.all(opened.map((storage) => storage.close()));
      await client.end();
      await admin.query(`DROP DATABASE ${name} WITH (FORCE)`);
      await admin.end();
    },
  };
}
