import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { logChannel, openNudgeQueue, startNudges, type Clock, type Log, type QueueAlone } from '#nudges';
import {
  explainHome,
  keepClearing,
  listenInbox,
  migrate,
  openStorage,
  prepareHome,
  startEmbeddedPostgres,
  type EmbeddedPostgres,
  type Storage,
} from '#storage';
import type { Config } from '../config.js';
import { openCompute } from '../compute/compute.js';
import { createApp } from '../create-app.js';
import { openInboxHub } from '../inbox/inbox-hub.js';
import type { Services } from '../services.js';
import { programVersion, projectFolder } from '../program/project-folder.js';
import { signInPath } from '../session/sign-in-path.js';
import { OddsRenewal } from '../use-cases/renew-odds.js';
import { StockUse } from '../use-cases/stock-use.js';
import { Taught } from '../use-cases/taught.js';
import { WorkshopTurns } from '../use-cases/workshop-turns.js';
import { ensureAccessKey, type AccessKeyFile } from './access-key.js';
import { explainDatabase } from './explain-database.js';
import { ensureOwnWorkshop } from './own-workshop.js';
import { portError, requireFreePort } from './require-free-port.js';

const SWEEP_MS = 60_000;
const CONCURRENCY = 5;

/** The program, serving. */
export interface Program {
  readonly address: string;
  readonly accessKey: AccessKeyFile;
  /** Lets one browser in, for a quarter of an hour. */
  readonly signIn: { readonly code: string; readonly link: string };
  /** Lets what runs end, in order; the database last. */
  stop(): Promise<void>;
}

export interface StartOptions {
  readonly config: Config;
  readonly clock: Clock;
  readonly log: Log;
  /** Receives what is being done, a line at a time. */
  readonly progress: (line: string) => void;
  /** The built-in database cannot be kept running, and nothing works without it. */
  readonly onDatabaseLost?: (reason: Error) => void;
  /** File that the computing threads run; that of the build if not given. */
  readonly computeWorker?: string;
}

/**
 * Starts everything: database, tables, an empty workshop (once), nudges, HTTP.
 * What was started before a failure is stopped again.
 * @throws StartError, HomeInUseError and their like, whose message is for the person at the terminal
 */
export async function startProgram(options: StartOptions): Promise<Program> {
  const { config, clock, log, progress } = options;
  const stops: (() => Promise<void>)[] = [];
  const stop = async (): Promise<void> => {
    for (const each of stops.splice(0).reverse()) {
      await each().catch((error: unknown) =>
        log.error('A part did not stop in order', { reason: String(error) }),
      );
    }
  };
  try {
    if (config.port !== 0) await requireFreePort(config.port, config.bind);
    prepareHome(config.home);
    const builtIn = config.databaseUrl === undefined ? await startBuiltIn(options, stops) : undefined;
    const databaseUrl = builtIn?.databaseUrl ?? config.databaseUrl ?? '';
    progress('Tables: looking for changes …');
    await migrate(databaseUrl, progress).catch((error: unknown) => {
      throw config.databaseUrl === undefined ? error : explainDatabase(config.databaseUrl, error);
    });
    const storage = await openStorage(databaseUrl, {
      now: () => clock.now(),
      onLockHeld: (milliseconds) => log.debug('A workshop was held', { milliseconds }),
    });
    stops.push(() => storage.close());
    const { id: workshopId } = await storage.startingAlone(ensureOwnWorkshop);
    const accessKey = await ensureAccessKey(storage, workshopId, config.home);
    const nudges = await openNudges(storage, databaseUrl, options);
    stops.push(() => nudges.stop());
    if (config.worker)
      stops.push(keepClearing({ storage, now: () => options.clock.now(), log: options.log }));
    const address = await serve({ storage, nudges, builtIn, workshopId }, databaseUrl, options, stops);
    const { code } = await storage.signInCodes.create(workshopId);
    return { address, accessKey, signIn: { code, link: `${address}${signInPath(code)}` }, stop };
  } catch (error) {
    await stop();
    throw explainHome(config.home, error);
  }
}

async function startBuiltIn(
  { config, log, progress, onDatabaseLost }: StartOptions,
  stops: (() => Promise<void>)[],
): Promise<EmbeddedPostgres> {
  progress('Database: starting …');
  let started = false;
  const postgres = await startEmbeddedPostgres({
    home: config.home,
    log: (line) => (started ? log.warn(line) : progress(line)),
    onGivenUp: (reason) => onDatabaseLost?.(reason),
  });
  started = true;
  stops.push(() => postgres.stop());
  return postgres;
}

/** Delivers nudges here, or only tells the queue of them where a separate worker delivers. */
async function openNudges(
  storage: Storage,
  databaseUrl: string,
  { config, clock, log }: StartOptions,
): Promise<QueueAlone> {
  const queue = { databaseUrl, redisUrl: config.redisUrl, clock, log, sweepEveryMs: SWEEP_MS };
  if (!config.worker) return openNudgeQueue(queue);
  return startNudges({
    ...queue,
    store: storage.nudges,
    channels: [logChannel(log)],
    concurrency: CONCURRENCY,
  });
}

async function serve(
  { workshopId, ...made }: Pick<Services, 'storage' | 'nudges' | 'builtIn'> & { readonly workshopId: string },
  databaseUrl: string,
  { config, clock, log, computeWorker }: StartOptions,
  stops: (() => Promise<void>)[],
): Promise<string> {
  const inbox = openInboxHub(made.storage, (error) =>
    log.warn('The inbox could not be read', { reason: String(error) }),
  );
  const listener = await listenInbox(
    databaseUrl,
    (notice) => inbox.notice(notice),
    () => inbox.gap(),
    (notice) => inbox.judged(notice),
    (notice) => inbox.changed(notice),
  );
  stops.push(() => listener.close());
  const compute = openCompute({
    ...config.compute,
    ...(computeWorker === undefined ? {} : { worker: computeWorker }),
  });
  const turns = new WorkshopTurns();
  const taught = new Taught(made.storage, compute);
  const stockUse = new StockUse(taught, compute);
  const renewal = new OddsRenewal({ storage: made.storage, compute, taught, log });
  stops.push(() => renewal.close());
  const parts = {
    ...made,
    compute,
    turns,
    taught,
    stockUse,
    renewal,
    inbox,
    clock,
    log,
    version: programVersion(),
  };
  const app = await createApp(parts, { bind: config.bind, pages: join(projectFolder(), 'dist', 'web') });
  stops.push(() => app.close());
  // First of all, so that no request in flight waits for a search.
  stops.push(() => compute.close());
  await app.listen(config.port, config.bind).catch((error: unknown) => {
    throw portError(error as NodeJS.ErrnoException, config.port, config.bind);
  });
  // After an update that reads logs in another way, so that the first request need not wait for it.
  taught.prepare(workshopId).catch((error: unknown) => {
    log.debug('What the logs teach is left to the first request', { reason: String(error) });
  });
  renewal.soon(workshopId);
  return addressFromHere(app.getHttpServer().address() as AddressInfo);
}

/** Listening on all addresses is told as the one that works on this machine. */
function addressFromHere({ address, family, port }: AddressInfo): string {
  const own: Record<string, string> = { '0.0.0.0': '127.0.0.1', '::': '::1' };
  const reached = own[address] ?? address;
  return `http://${family === 'IPv6' ? `[${reached}]` : reached}:${String(port)}`;
}
