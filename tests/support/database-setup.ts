import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import type { TestProject } from 'vitest/node';
// By path: a name such as #storage means the build here, not the sources, and a build may be older than they are. The
// two need no generated database client, so runs without a database work before there is one.
import { startEmbeddedPostgres } from '../../libs/storage/embedded/start-embedded-postgres.js';
import { migrate } from '../../libs/storage/migrate.js';
import { databaseNamed, requireTestName } from './database-name.js';

declare module 'vitest' {
  export interface ProvidedContext {
    /** A migrated database to copy; null when no test file of this run asks for one. */
    templateDatabaseUrl: string | null;
  }
}

/**
 * Starts one database server for the whole run and migrates a template in it, but only if a test file to be run
 * needs it. With TEST_DATABASE_URL it uses that server instead.
 */
export default async function setup(project: TestProject): Promise<(() => Promise<void>) | undefined> {
  if (!(await isNeeded(project))) {
    project.provide('templateDatabaseUrl', null);
    return undefined;
  }
  const server = await startServer();
  const template = databaseNamed(server.url, `benchtide_test_template_${process.pid}`);
  await onServer(server.url, `CREATE DATABASE ${requireTestName(template)}`);
  await migrate(template, () => undefined);
  project.provide('templateDatabaseUrl', template);
  return async () => {
    await onServer(server.url, `DROP DATABASE ${requireTestName(template)} WITH (FORCE)`);
    await server.stop();
  };
}

async function isNeeded(project: TestProject): Promise<boolean> {
  // The file names given on the command line. Not public: should it go, every run starts the server.
  const { filenamePattern } = project.vitest as unknown as { filenamePattern?: string[] };
  const { testFiles } = await project.globTestFiles(filenamePattern);
  // A test asks for the database itself, or through a helper beside this file that does.
  const helpers = readdirSync(import.meta.dirname).filter(
    (name) => name === 'database.ts' || source(join(import.meta.dirname, name)).includes("'./database.js'"),
  );
  const imports = helpers.map((name) => `support/${name.replace(/ts$/, 'js')}'`);
  return testFiles.some((file) => imports.some((path) => source(file).includes(path)));
}

function source(path: string): string {
  return readFileSync(path, 'utf8');
}

async function startServer(): Promise<{ url: string; stop(): Promise<void> }> {
  const given = process.env['TEST_DATABASE_URL'];
  if (given !== undefined) {
    requireTestName(given);
    return { url: given, stop: async () => undefined };
  }
  const home = mkdtempSync(join(tmpdir(), 'benchtide-test-'));
  // Started by root, the server runs as another user, who must be able to pass through.
  chmodSync(home, 0o711);
  const postgres = await startEmbeddedPostgres({
    home,
    log: () => undefined,
    settings: { fsync: false },
  });
  return {
    url: postgres.databaseUrl,
    async stop() {
      await postgres.stop();
      rmSync(home, { recursive: true, force: true });
    },
  };
}

async function onServer(url: string, statement: string): Promise<void> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    await client.query(statement);
  } finally {
    await client.end();
  }
}
