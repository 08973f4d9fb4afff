import { spawn } from 'node:child_process';
import { chmodSync, closeSync, existsSync, openSync, readFileSync, statSync } from 'node:fs';
import { createServer, type AddressInfo } from 'node:net';
import { delimiter, join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { DatabaseStartError, fullDisk } from './errors.js';
import type { Place } from './place.js';
import { readPostmaster, type Postmaster } from './postmaster-file.js';

const START_MS = 120_000;
const MAX_LOG_BYTES = 5_000_000;
/** A port that was just taken by another, or the memory of a killed server that its last children still hold. */
const PASSING_TROUBLE = /Address already in use|still in use/;
const ATTEMPTS = 5;

/**
 * Starts a server in the place and waits until it takes connections.
 * @param port where it is to be reached; any free one if not given
 */
export async function startServer(place: Place, fsync: boolean, port?: number): Promise<Postmaster> {
  // Copies and restored backups often lose the mode without which PostgreSQL refuses the folder.
  chmodSync(place.dataFolder, 0o700);
  for (let attempt = 1; ; attempt += 1) {
    const outcome = await startOnce(place, fsync, port ?? (await freePort()));
    if (typeof outcome !== 'string') return outcome;
    if (attempt === ATTEMPTS || !PASSING_TROUBLE.test(outcome)) {
      throw new DatabaseStartError(
        `${fullDisk(place, outcome)}The database did not start. Its log, ${place.logFile}, ends with:\n${outcome}`,
      );
    }
    await pause(300 * attempt);
  }
}

/** @returns the running server, or the end of its log */
async function startOnce(place: Place, fsync: boolean, port: number): Promise<Postmaster | string> {
  const tooLong = existsSync(place.logFile) && statSync(place.logFile).size > MAX_LOG_BYTES;
  const output = openSync(place.logFile, tooLong ? 'w' : 'a', 0o600);
  const logStart = statSync(place.logFile).size;
  const [program, ...args] = command(place, fsync, port);
  // A process group of its own: Ctrl-C then reaches only us, and we stop the database last.
  const child = spawn(program, args, {
    ...place.user,
    cwd: place.dataFolder,
    env: { PATH: process.env['PATH'], TZ: 'UTC' },
    detached: true,
    stdio: ['ignore', output, output],
  });
  closeSync(output);
  let ended = false;
  child.on('error', () => (ended = true));
  child.on('exit', () => (ended = true));
  child.unref();
  for (let waited = 0; waited < START_MS && !ended; waited += 20) {
    const server = readPostmaster(place.dataFolder);
    if (server?.ready === true && server.pid === child.pid) return server;
    await pause(20);
  }
  if (!ended) child.kill('SIGQUIT');
  return readFileSync(place.logFile, 'utf8').slice(logStart).trim().slice(-1500);
}

function command(place: Place, fsync: boolean, port: number): [string, ...string[]] {
  const settings = [
    'listen_addresses=127.0.0.1',
    `port=${port}`,
    'unix_socket_directories=',
    'timezone=UTC',
    'log_timezone=UTC',
    ...(fsync ? [] : ['fsync=off', 'full_page_writes=off']),
  ];
  const postgres = join(place.binaries.folder, 'bin', 'postgres');
  const server = [postgres, '-D', place.dataFolder, ...settings.flatMap((setting) => ['-c', setting])];
  // With setpriv the kernel tells the server when we are killed, and it shuts down in good order.
  const setpriv = onPath('setpriv');
  return setpriv === undefined
    ? (server as [string, ...string[]])
    : [setpriv, '--pdeathsig', 'INT', ...server];
}

function onPath(name: string): string | undefined {
  if (process.platform !== 'linux') return undefined;
  return (process.env['PATH'] ?? '')
    .split(delimiter)
    .map((folder) => join(folder, name))
    .find((path) => existsSync(path));
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address() as AddressInfo;
      probe.close(() => resolve(port));
    });
  });
}
