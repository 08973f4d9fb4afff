import { createHash } from 'node:crypto';
import { chmodSync, chownSync, existsSync, mkdirSync, realpathSync } from 'node:fs';
import { join } from 'node:path';
import { copyBinaries, findBinaries, linkLibraries, type Binaries } from './find-binaries.js';
import { canEnter, canRun, serverUser, type ServerUser } from './server-user.js';

/** Where one database lives, what runs it and as whom. */
export interface Place {
  readonly binaries: Binaries;
  readonly user: ServerUser;
  readonly dataFolder: string;
  readonly passwordFile: string;
  readonly logFile: string;
}

/** Used only by root, when the user the database runs as cannot enter the home folder or the project. */
const SYSTEM_FOLDER = '/var/lib/benchtide';

/** Decides on the place for the database of this home folder and makes its folders. */
export function preparePlace(home: string, log: (line: string) => void): Place {
  const inHome = join(realpathSync(home), 'database');
  const name = createHash('sha256').update(realpathSync(home)).digest('hex').slice(0, 16);
  const inSystem = join(SYSTEM_FOLDER, name);
  const user = serverUser([join(inHome, 'data'), join(inSystem, 'data')]);
  makeFolder(inHome, user);

  let folder = inHome;
  if (user.uid !== undefined && !canEnter(inHome, user)) {
    if (existsSync(join(inHome, 'data'))) {
      throw new Error(
        `The user with id ${user.uid}, who owns the database in ${inHome}, can no longer enter that folder.`,
      );
    }
    folder = inSystem;
    mkdirSync(SYSTEM_FOLDER, { recursive: true, mode: 0o755 });
    makeFolder(folder, user);
    log(`The database user cannot enter ${home}; the data is kept in ${folder}`);
  }
  return {
    binaries: runnableBinaries(folder, user, log),
    user,
    dataFolder: join(folder, 'data'),
    passwordFile: join(folder, 'password'),
    logFile: join(folder, 'server.log'),
  };
}

function runnableBinaries(folder: string, user: ServerUser, log: (line: string) => void): Binaries {
  const installed = findBinaries();
  const linked = linkLibraries(installed.folder);
  if (linked && canRun(join(installed.folder, 'bin', 'postgres'), user)) return installed;
  const parent = user.uid === undefined ? folder : SYSTEM_FOLDER;
  log(`The installed PostgreSQL cannot be run from its own folder; using a copy in ${parent}`);
  return copyBinaries(installed, parent);
}

function makeFolder(folder: string, user: ServerUser): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  if (user.uid !== undefined && user.gid !== undefined) chownSync(folder, user.uid, user.gid);
  chmodSync(folder, 0o700);
}
