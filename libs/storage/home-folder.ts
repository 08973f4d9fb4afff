import { chmodSync, existsSync, mkdirSync, readdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/** The data folder cannot be used; the message says which, why, and a way out. */
export class HomeUnusableError extends Error {
  constructor(
    readonly home: string,
    cause: unknown,
  ) {
    super(sentence(home, cause), { cause });
    this.name = 'HomeUnusableError';
  }
}

/** What this program puts into its data folder; a folder with anything else in it is not ours alone. */
const OURS = /^(access-key|database|lock)(\.|$)/;

/**
 * Makes the data folder if it is missing, and closes it to others: 0700. Started by root, the database runs as another
 * user, who must pass through, so root leaves that right where it is given: 0711. A folder that holds other things as
 * well, or belongs to someone else, keeps its mode.
 * @throws HomeUnusableError
 */
export function prepareHome(home: string): void {
  try {
    const root = process.getuid?.() === 0;
    if (!existsSync(home)) {
      makeWithParents(home);
      chmodSync(home, root ? 0o711 : 0o700);
      return;
    }
    const { mode, uid } = statSync(home);
    const closed = mode & (root ? 0o711 : 0o700);
    const mine = root || uid === process.getuid?.();
    if (mine && (mode & 0o7777) !== closed && readdirSync(home).every((name) => OURS.test(name))) {
      chmodSync(home, closed);
    }
  } catch (error) {
    throw new HomeUnusableError(home, error);
  }
}

/** One by one: making all at once never returns where the system hides a folder that it will not make, as in /proc. */
function makeWithParents(folder: string): void {
  const parent = dirname(folder);
  if (parent !== folder && !existsSync(parent)) makeWithParents(parent);
  mkdirSync(folder);
}

const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'this user may not write there',
  EPERM: 'this user may not write there',
  EROFS: 'it lies on a disk that can only be read',
  ENOSPC: 'the disk is full',
  EDQUOT: 'this user may store no more on that disk',
  EEXIST: 'there is a file of that name, where a folder is needed',
  ENOTDIR: 'a part of the path is a file, where a folder is needed',
  ENOENT: 'no folder can be made there',
  ENAMETOOLONG: 'its name is too long',
};

function sentence(home: string, cause: unknown): string {
  const { code = '', message } = cause as NodeJS.ErrnoException;
  const reason = REASONS[code] ?? 'the system refuses it';
  const wayOut =
    code === 'ENOSPC' || code === 'EDQUOT'
      ? 'Free some space there, or choose a folder on another disk with BENCHTIDE_HOME.'
      : 'Choose a folder that this user may write to with BENCHTIDE_HOME=/path/to/folder, or mend the rights of this one.';
  return `The data folder ${home} cannot be used: ${reason} (${message}). ${wayOut}`;
}

/** The same trouble in a sentence, whenever it is met while working in the folder; anything else as it was. */
export function explainHome(home: string, error: unknown): unknown {
  if (!(error instanceof Error)) return error;
  const { code, syscall = 'spawn', path = home } = error as NodeJS.ErrnoException;
  const here = !syscall.startsWith('spawn') && path.startsWith(home);
  return here && code !== undefined && code in REASONS ? new HomeUnusableError(home, error) : error;
}
