import { spawn } from 'node:child_process';
import { randomBytes } from 'node:crypto';
import { chownSync, existsSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { DatabaseStartError, fullDisk } from './errors.js';
import type { Place } from './place.js';

/** The one database user; the server listens to this machine only and asks for a password. */
export const SUPERUSER = 'benchtide';

/**
 * Makes the data folder unless it is there. It is made beside its place and moved when whole, so that a kill
 * half-way leaves nothing that looks like a database.
 */
export async function initDataFolder(place: Place, fsync: boolean): Promise<void> {
  if (existsSync(join(place.dataFolder, 'PG_VERSION'))) return checkVersion(place);
  const draft = `${place.dataFolder}.init`;
  rmSync(draft, { recursive: true, force: true });
  writePassword(place);
  const options = [
    `--pgdata=${draft}`,
    `--username=${SUPERUSER}`,
    `--pwfile=${place.passwordFile}`,
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    '--locale=C',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    ...(fsync ? [] : ['--no-sync']),
  ];
  await runInitdb(place, options);
  renameSync(draft, place.dataFolder);
}

function writePassword(place: Place): void {
  rmSync(place.passwordFile, { force: true });
  writeFileSync(place.passwordFile, randomBytes(24).toString('base64url'), { mode: 0o600 });
  const { uid, gid } = place.user;
  if (uid !== undefined && gid !== undefined) chownSync(place.passwordFile, uid, gid);
}

function runInitdb(place: Place, options: readonly string[]): Promise<void> {
  const child = spawn(join(place.binaries.folder, 'bin', 'initdb'), options, {
    ...place.user,
    cwd: dirname(place.dataFolder),
    env: { PATH: process.env['PATH'], TZ: 'UTC' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  child.stdout.on('data', (chunk: Buffer) => (output += chunk.toString()));
  child.stderr.on('data', (chunk: Buffer) => (output += chunk.toString()));
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve();
      else {
        const said = output.trim().slice(-800);
        reject(new DatabaseStartError(`${fullDisk(place, said)}The database could not be made: ${said}`));
      }
    });
  });
}

function checkVersion(place: Place): void {
  const made = readFileSync(join(place.dataFolder, 'PG_VERSION'), 'utf8').trim();
  const [ours] = place.binaries.version.split('.');
  if (made !== ours) {
    throw new DatabaseStartError(
      `The data in ${place.dataFolder} was made by PostgreSQL ${made}; this is PostgreSQL ${ours}. ` +
        'Use the Benchtide it was made with, or move that folder away to begin anew.',
    );
  }
}
