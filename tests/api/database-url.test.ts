import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { systemClock } from '#nudges';
import { readConfig } from '../../apps/api/config.js';
import { StartError } from '../../apps/api/program/start-error.js';
import { startProgram } from '../../apps/api/start/start-program.js';
import { QuietLog } from '../nudges/support/quiet-log.js';
import { testDatabase, type TestDatabase } from '../support/database.js';

let database: TestDatabase;
let home: string;
beforeAll(async () => {
  database = await testDatabase();
  home = mkdtempSync(join(tmpdir(), 'benchtide-url-'));
});
afterAll(async () => {
  await database.drop();
  rmSync(home, { recursive: true, force: true });
});

/** How a start over this database fails. */
async function failure(databaseUrl: string): Promise<unknown> {
  const config = readConfig({ PORT: '0', BENCHTIDE_HOME: home, DATABASE_URL: databaseUrl });
  const start = startProgram({ config, clock: systemClock, log: new QuietLog(), progress: () => undefined });
  return start.then(
    () => undefined,
    (error: unknown) => error,
  );
}

it.each([
  ['nothing listens there', (url: URL) => (url.port = '1')],
  ['it refuses the user or the password', (url: URL) => (url.password = 'not-the-one')],
  ['it has no such database', (url: URL) => (url.pathname = '/benchtide_gone')],
])('says that %s, names the setting and a way out, and no password', async (reason, change) => {
  const url = new URL(database.url);
  const { password } = url;
  change(url);
  const error = await failure(url.href);
  expect(error).toBeInstanceOf(StartError);
  const { message, status } = error as StartError;
  expect(message).toContain(
    `that DATABASE_URL names cannot be used: ${reason}. Start it, or correct DATABASE_URL;`,
  );
  expect(message).toContain(`${url.hostname}:${url.port}${url.pathname}`);
  expect(status).toBe(69);
  for (const secret of [password, url.password]) expect(message).not.toContain(secret);
});
