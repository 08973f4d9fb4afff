import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';

/** The lock that Prisma's own tools take, so that the two never migrate at the same time. */
const LOCK = 72707369;

/** Prisma's table, so that its tools see what was applied here (column by column as its schema engine makes it). */
const HISTORY = `
  CREATE TABLE IF NOT EXISTS _prisma_migrations (
    id varchar(36) PRIMARY KEY NOT NULL,
    checksum varchar(64) NOT NULL,
    finished_at timestamptz,
    migration_name varchar(255) NOT NULL,
    logs text,
    rolled_back_at timestamptz,
    started_at timestamptz NOT NULL DEFAULT now(),
    applied_steps_count integer NOT NULL DEFAULT 0
  )`;

interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

/** The database and this program do not belong together; the message says how. */
export class MigrationError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'MigrationError';
  }
}

/**
 * Brings the database up to date: each missing migration in a transaction of its own. Any number of processes may
 * call it at once; one works, the others wait.
 * @param folder where the migrations are; the project's own if not given
 * @throws MigrationError when an applied migration was edited since, or is unknown to this program
 */
export async function migrate(
  databaseUrl: string,
  log: (line: string) => void,
  folder: string = ownFolder(),
): Promise<void> {
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await client.query('SELECT pg_advisory_lock($1)', [LOCK]);
    await client.query(HISTORY);
    const migrations = readMigrations(folder);
    const applied = await readApplied(client);
    checkHistory(migrations, applied);
    for (const migration of migrations) {
      if (applied.has(migration.name)) continue;
      await apply(client, migration);
      log(`Database: applied ${migration.name}`);
    }
  } finally {
    await client.end();
  }
}

async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('BEGIN');
  try {
    await client.query(sql);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

function checkHistory(migrations: readonly Migration[], applied: ReadonlyMap<string, string>): void {
  const known = new Map(migrations.map(({ name, checksum }) => [name, checksum]));
  for (const [name, checksum] of applied) {
    const ours = known.get(name);
    if (ours === undefined) {
      throw new MigrationError(
        `The database has the migration ${name}, which this program does not know. ` +
          'It was used with a newer version: run that one, or restore a backup from before.',
      );
    }
    if (ours !== checksum) {
      throw new MigrationError(
        `The migration ${name} was edited after it had been applied to this database. ` +
          'Put its text back as it was, and write the change as a new migration.',
      );
    }
  }
}

async function readApplied(client: pg.Client): Promise<Map<string, string>> {
  const { rows } = await client.query<{ migration_name: string; checksum: string }>(
    'SELECT migration_name, checksum FROM _prisma_migrations WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL',
  );
  return new Map(rows.map((row) => [row.migration_name, row.checksum]));
}

function readMigrations(folder: string): Migration[] {
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => {
      const sql = readFileSync(join(folder, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    })
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** Compiled code lies deeper than its source, so the folder is looked for upwards. */
function ownFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'prisma', 'migrations'))) {
    if (folder === dirname(folder)) throw new Error('The folder prisma/migrations is missing.');
    folder = dirname(folder);
  }
  return join(folder, 'prisma', 'migrations');
}
