import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { inProject } from './paths.mjs';
import { runStep } from './run-step.mjs';

const lockFile = inProject('package-lock.json');
/** npm's own note of what it put into node_modules. */
const npmNote = inProject('node_modules', '.package-lock.json');
const stampFile = inProject('node_modules', '.benchtide-install');

/**
 * Whether node_modules is what package-lock.json asks for. Packages that a person installed with npm are
 * accepted as they are, when they are the locked ones.
 */
export function isInstalled() {
  if (!existsSync(lockFile) || !existsSync(npmNote)) return false;
  const hash = lockHash();
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === hash) return true;
  return holdsLockedPackages();
}

/**
 * Installs exactly the locked packages, development ones included, because they build the rest.
 * @param {(line: string) => void} log
 */
export async function install(log) {
  await runStep(log, {
    title: 'Installing packages, about half a minute the first time …',
    still: 'still installing',
    // Under Windows npm is a script that only a shell can start.
    command: process.platform === 'win32' ? 'npm.cmd' : 'npm',
    args: ['ci', '--include=dev', '--no-audit', '--no-fund', '--no-update-notifier'],
    shell: process.platform === 'win32',
    failure: 'npm could not install the packages; what it said is above.',
  });
  writeFileSync(stampFile, lockHash());
}

function lockHash() {
  return createHash('sha256').update(readFileSync(lockFile)).digest('hex');
}

function holdsLockedPackages() {
  const wanted = packagesIn(lockFile);
  const present = packagesIn(npmNote);
  const allWanted = Object.entries(wanted).every(
    ([path, { version, optional }]) =>
      path === '' || optional === true || (path in present && present[path]?.version === version),
  );
  return (
    allWanted && Object.entries(present).every(([path, { version }]) => wanted[path]?.version === version)
  );
}

/**
 * @param {string} file
 * @returns {Record<string, { version?: string, optional?: boolean }>}
 */
function packagesIn(file) {
  return JSON.parse(readFileSync(file, 'utf8')).packages;
}
