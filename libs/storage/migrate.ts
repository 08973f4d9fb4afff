import { createHash, randomUUID } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
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

const ASK_AGAIN_MS = 200;
/** A wait this short is not worth a line. */
const QUIET_WAIT_MS = 2_000;
/** PostgreSQL, appendix A "Error Codes". */
const LOCK_NOT_AVAILABLE = '55P03';

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

export interface MigrateOptions {
  /** Where the migrations are; the project's own if not given. */
  readonly folder?: string;
  /** How long to wait for another process that migrates, in milliseconds; two minutes if not given. */
  readonly patienceMs?: number;
  /** How long a migration waits for a table that is in use, in milliseconds; 15 s if not given. */
  readonly tableTimeoutMs?: number;
}

/**
 * Brings the database up to date: each missing migration in a transaction of its own. Any number of processes may
 * call it at once; one works, the others wait.
 * @throws MigrationError when an applied migration was edited since, or is unknown to this program, or when others
 *   hold what it needs for too long
 */
export async function migrate(
  databaseUrl: string,
  log: (line: string) => void,
  options: MigrateOptions = {},
): Promise<void> {
  const { folder = ownFolder(), patienceMs = 120_000, tableTimeoutMs = 15_000 } = options;
  const client = new pg.Client({ connectionString: databaseUrl });
  await client.connect();
  try {
    await takeTurn(client, log, patienceMs);
    await client.query(HISTORY);
    const migrations = readMigrations(folder);
    const applied = await readApplied(client);
    checkHistory(migrations, applied);
    for (const migration of migrations) {
      if (applied.has(migration.name)) continue;
      await apply(client, migration, tableTimeoutMs);
      log(`Database: applied ${migration.name}`);
    }
  } finally {
    await client.end();
  }
}

/** Waits for the lock by asking again, as only so the wait can end and tell what it is for. */
async function takeTurn(client: pg.Client, log: (line: string) => void, patienceMs: number): Promise<void> {
  const started = performance.now();
  for (let said = false; ; await pause(ASK_AGAIN_MS)) {
    const { rows } = await client.query<{ got: boolean }>('SELECT pg_try_advisory_lock($1) AS got', [LOCK]);
    if (rows[0]?.got === true) return;
    const waitedMs = performance.now() - started;
    if (waitedMs > patienceMs) {
      throw new MigrationError(
        `The tables were not brought up to date: ${await holder(client)} has been at it for more than ` +
          `${String(Math.round(patienceMs / 1000))} s. See whether it still works; end it if not, and start again.`,
      );
    }
    if (!said && waitedMs > QUIET_WAIT_MS) {
      log(`Database: waiting for ${await holder(client)}, which changes the tables`);
      said = true;
    }
  }
}

/** Who holds the lock (PostgreSQL, "pg_locks": a bigint key lies in classid and objid, with objsubid 1). */
async function holder(client: pg.Client): Promise<string> {
  const { rows } = await client.query<{ pid: number; place: string | null }>(
    `SELECT pid, host(client_addr) AS place FROM pg_locks JOIN pg_stat_activity USING (pid)
     WHERE locktype = 'advisory' AND classid = 0 AND objid = $1 AND objsubid = 1 AND granted
       AND pg_locks.database = (SELECT oid FROM pg_database WHERE datname = current_database())`,
    [LOCK],
  );
  const [found] = rows;
  if (found === undefined) return 'another program';
  return `another program (database session ${String(found.pid)}${found.place === null ? '' : ` from ${found.place}`})`;
}

async function apply(
  client: pg.Client,
  { name, sql, checksum }: Migration,
  tableTimeoutMs: number,
): Promise<void> {
  await client.query('BEGIN');
  try {
    // While a change of a table waits for its turn, whoever comes after it waits too, so it must not wait long.
    await client.query("SELECT set_config('lock_timeout', $1, true)", [String(tableTimeoutMs)]);
    await client.query(sql);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, clock_timestamp(), 1)`,
      [randomUUID(), checksum, name],
    );
    await client.query('COMMIT');
  } catch (error) {
    await client.query('ROLLBACK').catch(() => undefined);
    if (error instanceof pg.DatabaseError && error.code === LOCK_NOT_AVAILABLE) {
      throw new MigrationError(
        `The change ${name} needs a table that another program has been using for more than ` +
          `${String(tableTimeoutMs / 1000)} s. Stop the other copies of Benchtide on this database, and start again.`,
      );
    }
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
