import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, statSync } from 'node:fs';

/** The user a database process runs as; empty when that is simply ours. */
export interface ServerUser {
  readonly uid?: number;
  readonly gid?: number;
}

/**
 * PostgreSQL refuses to run as root, so root hands it to the owner of the existing data, else to the user
 * `postgres`, else to `nobody`. Anyone else runs it as themselves.
 */
export function serverUser(dataFolders: readonly string[]): ServerUser {
  if (process.getuid?.() !== 0) return {};
  for (const folder of dataFolders) {
    if (!existsSync(folder)) continue;
    const { uid, gid } = statSync(folder);
    if (uid !== 0) return { uid, gid };
  }
  const user = inPasswd('postgres') ?? inPasswd('nobody');
  if (user === undefined) {
    throw new Error(
      'Started as root, and there is neither a user "postgres" nor "nobody" to run the database as.',
    );
  }
  return user;
}

/** Whether that user can run the program. */
export function canRun(program: string, user: ServerUser): boolean {
  return spawnSync(program, ['--version'], { ...user, cwd: '/', stdio: 'ignore' }).status === 0;
}

/** Whether that user can enter the folder. */
export function canEnter(folder: string, user: ServerUser): boolean {
  // Node enters a child's working folder before it changes the user, so `cwd` would prove nothing.
  return spawnSync('/bin/sh', ['-c', 'cd "$0"', folder], { ...user, cwd: '/', stdio: 'ignore' }).status === 0;
}

function inPasswd(name: string): ServerUser | undefined {
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith(`${name}:`));
  const [, , uid, gid] = line?.split(':') ?? [];
  return uid === undefined || gid === undefined ? undefined : { uid: Number(uid), gid: Number(gid) };
}
