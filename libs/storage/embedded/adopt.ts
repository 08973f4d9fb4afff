import { rmSync } from 'node:fs';
import { join } from 'node:path';
import pg from 'pg';
import { DatabaseStartError } from './errors.js';
import { readPostmaster, type Postmaster } from './postmaster-file.js';
import { worksIn } from './process-identity.js';
import { becomesFalse, stopServer } from './stop.js';
import { urlOf } from './url.js';

const SETTLE_MS = 60_000;

/**
 * Takes over the database that a killed owner left running, if there is one and it answers. One that is on its
 * way down is waited for; one that neither answers nor ends is stopped.
 * @returns null when the way is free for a new server
 */
export async function adoptServer(dataFolder: string, passwordFile: string): Promise<Postmaster | null> {
  const found = readPostmaster(dataFolder);
  if (found === null) return null;
  if (!worksIn(found.pid, dataFolder)) {
    // Its process is gone, or the id went to a stranger. PostgreSQL looks only whether the id exists (and that of a
    // zombie does), and would refuse to start. Against children that outlive a server it has a check of its own.
    rmSync(join(dataFolder, 'postmaster.pid'), { force: true });
    return null;
  }
  const settled = await becomesFalse(
    () => worksIn(found.pid, dataFolder) && readPostmaster(dataFolder)?.ready !== true,
    SETTLE_MS,
  );
  if (!settled) throw new DatabaseStartError(`The database process ${found.pid} neither starts nor stops.`);
  const now = readPostmaster(dataFolder);
  if (now === null || !worksIn(now.pid, dataFolder)) return null;
  if (await answers(now, dataFolder, passwordFile)) return now;
  await stopServer(now.pid);
  return null;
}

async function answers(server: Postmaster, dataFolder: string, passwordFile: string): Promise<boolean> {
  const client = new pg.Client({
    connectionString: urlOf(server.port, passwordFile, 'postgres'),
    connectionTimeoutMillis: 5_000,
  });
  client.on('error', () => undefined);
  try {
    await client.connect();
    const { rows } = await client.query<{ data_directory: string }>('SHOW data_directory');
    return rows[0]?.data_directory === dataFolder;
  } catch {
    return false;
  } finally {
    await client.end().catch(() => undefined);
  }
}
