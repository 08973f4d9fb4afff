import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it, onTestFinished } from 'vitest';
import { migrate, MigrationError } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { schemaEngine } from '../support/schema-engine.js';

const PROJECT = join(import.meta.dirname, '..', '..');
const MIGRATIONS = join(PROJECT, 'prisma', 'migrations');
const names = readdirSync(MIGRATIONS, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

let database: TestDatabase;
beforeEach(async () => {
  database = await testDatabase({ migrated: false });
});
afterEach(() => database.drop());

const quiet = (): void => undefined;
const copyOfMigrations = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-test-migrations-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  cpSync(MIGRATIONS, folder, { recursive: true });
  return folder;
};

describe('migrate', () => {
  it('applies each migration once, and says so', async () => {
    const lines: string[] = [];
    await migrate(database.url, (line) => lines.push(line));
    await migrate(database.url, (line) => lines.push(line));
    expect(lines).toEqual(names.map((name) => `Database: applied ${name}`));
  });

  it('may be called by several processes at once', async () => {
    await Promise.all([1, 2, 3, 4].map(() => migrate(database.url, quiet)));
    expect(await database.sql('SELECT migration_name FROM _prisma_migrations')).toHaveLength(names.length);
  });

  it('waits for another that works only so long, says for whom, and goes on once that one has ended', async () => {
    const other = new pg.Client({ connectionString: database.url });
    await other.connect();
    const { rows } = await other.query<{ pid: number }>(
      'SELECT pg_backend_pid() AS pid, pg_advisory_lock(72707369)',
    );
    const session = `database session ${String(rows[0]?.pid)}`;
    await expect(migrate(database.url, quiet, { patienceMs: 300 })).rejects.toThrow(session);
    const lines: string[] = [];
    const waiting = migrate(database.url, (line) => lines.push(line));
    await expect.poll(() => lines, { timeout: 10_000 }).toEqual([expect.stringContaining(session)]);
    await other.end();
    await waiting;
    expect(lines).toHaveLength(1 + names.length);
  });

  it('does not wait for long for a table that others use, and can be repeated', async () => {
    const folder = copyOfMigrations();
    await migrate(database.url, quiet, { folder });
    mkdirSync(join(folder, '29990101000000_column'));
    writeFileSync(join(folder, '29990101000000_column', 'migration.sql'), 'ALTER TABLE run ADD note text;');
    await database.sql('BEGIN');
    await database.sql('SELECT count(*) FROM run');
    const options = { folder, tableTimeoutMs: 200 };
    await expect(migrate(database.url, quiet, options)).rejects.toThrow(
      /29990101000000_column needs a table/,
    );
    await database.sql('COMMIT');
    await migrate(database.url, quiet, options);
    expect(await database.sql('SELECT note FROM run')).toEqual([]);
  });

  it('leaves nothing of a migration that fails half-way, and can be repeated', async () => {
    const folder = copyOfMigrations();
    mkdirSync(join(folder, '29990101000000_broken'));
    const broken = join(folder, '29990101000000_broken', 'migration.sql');
    writeFileSync(broken, 'CREATE TABLE half_way (id int); SELECT 1 / 0;');
    await expect(migrate(database.url, quiet, { folder })).rejects.toThrow('division by zero');
    expect(await database.sql("SELECT to_regclass('half_way') AS found")).toEqual([{ found: null }]);
    writeFileSync(broken, 'CREATE TABLE half_way (id int);');
    await migrate(database.url, quiet, { folder });
    expect(await database.sql("SELECT to_regclass('half_way')::text AS found")).toEqual([
      { found: 'half_way' },
    ]);
  });

  it('refuses a migration that was edited after it had been applied', async () => {
    await migrate(database.url, quiet);
    const folder = copyOfMigrations();
    appendFileSync(join(folder, names[0] ?? '', 'migration.sql'), '\n-- afterthought\n');
    await expect(migrate(database.url, quiet, { folder })).rejects.toThrow(MigrationError);
    await expect(migrate(database.url, quiet, { folder })).rejects.toThrow(`${names[0]} was edited`);
  });

  it('refuses a database that a newer version has migrated', async () => {
    const newer = copyOfMigrations();
    mkdirSync(join(newer, '29990101000000_from_the_future'));
    writeFileSync(join(newer, '29990101000000_from_the_future', 'migration.sql'), 'SELECT 1;');
    await migrate(database.url, quiet, { folder: newer });
    await expect(migrate(database.url, quiet)).rejects.toThrow('29990101000000_from_the_future');
  });
});

// The outside check is Prisma's own schema engine: it reads the database and compares.
describe('schema.prisma and the migrations', () => {
  it('describe the same database', async () => {
    await migrate(database.url, quiet);
    const engine = await schemaEngine(database.url);
    expect(await engine.drift()).toEqual('No difference detected.');
    await database.sql('ALTER TABLE run ADD COLUMN weather text');
    expect(await engine.drift()).toContain('weather');
    await engine.close();
  });

  it('leave a history that Prisma takes for its own', async () => {
    await migrate(database.url, quiet);
    const engine = await schemaEngine(database.url);
    expect(await engine.history(MIGRATIONS)).toMatchObject({
      hasMigrationsTable: true,
      editedMigrationNames: [],
      failedMigrationNames: [],
      history: null,
    });
    await engine.close();
  });
});
