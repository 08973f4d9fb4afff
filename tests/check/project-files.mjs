import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const projectFolder = fileURLToPath(new URL('../../', import.meta.url));

/**
 * The files under version control, those that are staged among them, as paths from the project folder. What merely lies
 * about, a log beside the README, belongs to whoever left it there; what is new is looked at once it is staged.
 * @param {string} folder
 * @returns {string[] | null} null where Git is missing or this is no working copy
 */
export function projectFiles(folder = projectFolder) {
  // A checkout that belongs to someone else is still only read.
  const git = spawnSync('git', ['-c', 'safe.directory=*', 'ls-files', '-z', '--cached'], {
    cwd: folder,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (git.status !== 0) return null;
  return [...new Set(git.stdout.split('\0'))].filter((path) => path !== '' && existsSync(join(folder, path)));
}
