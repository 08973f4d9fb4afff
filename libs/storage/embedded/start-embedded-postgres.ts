import pg from 'pg';
import { explainHome, prepareHome } from '../home-folder.js';
import { adoptServer } from './adopt.js';
import { guardServer } from './guard.js';
import { initDataFolder } from './init.js';
import { lockHome } from './lock.js';
import { preparePlace } from './place.js';
import { startServer } from './start.js';
import { stopServer } from './stop.js';
import { urlOf } from './url.js';

const DATABASE = 'benchtide';

export interface EmbeddedPostgresOptions {
  /** Folder that belongs to this copy of Benchtide; made if missing. */
  readonly home: string;
  /** Receives one line for each thing a person may want to know. */
  readonly log: (line: string) => void;
  /** `fsync: false` trades safety at power loss for speed: only for tests. Default: true. */
  readonly settings?: { readonly fsync?: boolean };
  /** The server ended by itself and could not be started anew, so that nothing works any more. Called once. */
  readonly onGivenUp?: (reason: Error) => void;
}

export interface EmbeddedPostgres {
  readonly databaseUrl: string;
  /** It was already running, left behind by a killed owner. */
  readonly adopted: boolean;
  readonly dataFolder: string;
  /** Whether the server runs, or ended by itself and is being started anew, at the same address. */
  state(): 'running' | 'restarting';
  /** Stops the server and gives the folder up. Close your own connections first. */
  stop(): Promise<void>;
}

/**
 * Runs a PostgreSQL of our own in a folder: makes it on first use, recovers or adopts it after a kill.
 * One that ends by itself is started anew.
 * Call it from the main thread: the kernel binds the death signal to the thread that starts the server.
 * @throws HomeUnusableError when the folder cannot be made or written to
 * @throws HomeInUseError when another living process uses the folder
 * @throws UnsupportedPlatformError when there is no built-in PostgreSQL for this machine
 * @throws DatabaseStartError when it is there and does not start
 */
export async function startEmbeddedPostgres(options: EmbeddedPostgresOptions): Promise<EmbeddedPostgres> {
  const { home, log } = options;
  const fsync = options.settings?.fsync ?? true;
  prepareHome(home);
  const unlock = await lockHome(home).catch((error: unknown) => {
    throw explainHome(home, error);
  });
  try {
    const place = preparePlace(home, log);
    await initDataFolder(place, fsync);
    const left = await adoptServer(place.dataFolder, place.passwordFile);
    if (left !== null) log('Found the database still running and took it over');
    const server = left ?? (await startServer(place, fsync));
    await ensureDatabase(urlOf(server.port, place.passwordFile, 'postgres'));
    const guarded = guardServer(server, {
      async restart({ port }) {
        // Nobody else may start one here, but one that is still on its way down must be gone first.
        const found = await adoptServer(place.dataFolder, place.passwordFile);
        if (found?.port === port) return found;
        if (found !== null) await stopServer(found.pid);
        return startServer(place, fsync, port);
      },
      log,
      onGivenUp: options.onGivenUp ?? (() => undefined),
    });
    return {
      databaseUrl: urlOf(server.port, place.passwordFile, DATABASE),
      adopted: left !== null,
      dataFolder: place.dataFolder,
      state: () => guarded.state(),
      async stop() {
        const last = await guarded.release();
        if (last !== null) await stopServer(last.pid);
        unlock();
      },
    };
  } catch (error) {
    unlock();
    throw explainHome(home, error);
  }
}

async function ensureDatabase(adminUrl: string): Promise<void> {
  const client = new pg.Client({ connectionString: adminUrl });
  await client.connect();
  try {
    const { rowCount } = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [DATABASE]);
    if (rowCount === 0) await client.query(`CREATE DATABASE ${DATABASE}`);
  } finally {
    await client.end();
  }
}
