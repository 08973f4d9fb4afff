import { fileURLToPath } from 'node:url';
import { runCommand } from './run-command.mjs';
import { fileSizes } from './file-sizes.mjs';
import { forbiddenWords } from './forbidden-words.mjs';
import { projectFiles } from './project-files.mjs';
import { topLevel } from './top-level.mjs';

/**
 * @typedef {{ status: 'passed' | 'failed' | 'skipped', text: string }} Outcome `text` says what is wrong
 * @typedef {{ name: string, run: () => Promise<Outcome> }} Check
 */

/**
 * Two lanes for two processors. Each goes by the files under version control; only the compiler takes all that its
 * configurations include, as the build does.
 * @type {Check[][]}
 */
const lanes = [
  [
    { name: 'types', run: () => compiler(['-b', 'tsconfig.json']) },
    { name: 'types of the web app', run: () => compiler(['-p', 'apps/web/tsconfig.pages.json']) },
    { name: 'types of the service worker', run: () => compiler(['-p', 'apps/web/offline']) },
    { name: 'types of tests and launchers', run: () => compiler(['-p', 'tests']) },
    {
      name: 'lint',
      run: () =>
        runCommand('oxlint/bin/oxlint', [
          '--deny-warnings',
          ...orFolders(/^(apps|libs|tests)\/.*\.(ts|tsx|mjs|cjs|js)$/, ['apps', 'libs', 'tests']),
        ]),
    },
  ],
  [
    {
      name: 'format',
      run: () =>
        // The pattern lets a list pass that holds nothing it formats.
        runCommand('oxfmt/bin/oxfmt', [
          '--check',
          '--no-error-on-unmatched-pattern',
          ...orFolders(/./, ['.']),
        ]),
    },
    {
      name: 'boundaries',
      run: () =>
        runCommand('dependency-cruiser/bin/dependency-cruise.mjs', [
          ...['--config', '.dependency-cruiser.cjs', '--output-type', 'err'],
          ...orFolders(/^(apps|libs|prisma)\/.*\.(ts|tsx|mjs|cjs|js)$/, ['apps', 'libs', 'prisma']),
        ]),
    },
    {
      name: 'unused',
      run: () => runCommand('knip/bin/knip.js', ['--no-progress', '--config', 'tests/check/knip.config.mjs']),
    },
    { name: 'file sizes', run: () => onFiles(fileSizes) },
    { name: 'top level', run: () => onFiles(topLevel) },
    { name: 'words', run: () => onFiles(forbiddenWords) },
  ],
];

/** @param {string[]} args */
function compiler(args) {
  return runCommand('typescript-native/bin/tsc', args);
}

/**
 * Runs every check, also after one failed, and prints a line for each.
 * @returns {Promise<{ passed: number, failed: number, skipped: number }>}
 */
export async function runChecks() {
  const outcomes = (await Promise.all(lanes.map(runLane))).flat();
  const count = (/** @type {Outcome['status']} */ status) =>
    outcomes.filter((outcome) => outcome.status === status).length;
  return { passed: count('passed'), failed: count('failed'), skipped: count('skipped') };
}

/** @param {Check[]} lane */
async function runLane(lane) {
  const outcomes = [];
  for (const check of lane) {
    const started = performance.now();
    const outcome = await check.run();
    const seconds = ((performance.now() - started) / 1000).toFixed(1);
    console.log(`${outcome.status.padEnd(7)} ${check.name} (${seconds} s)`);
    if (outcome.text !== '') console.log(outcome.text);
    outcomes.push(outcome);
  }
  return outcomes;
}

/**
 * @param {RegExp} wanted
 * @param {string[]} folders what to look at instead where Git cannot list the files
 */
function orFolders(wanted, folders) {
  return projectFiles()?.filter((path) => wanted.test(path)) ?? folders;
}

/**
 * @param {(files: string[]) => string[]} complaints
 * @returns {Promise<Outcome>}
 */
async function onFiles(complaints) {
  const files = projectFiles();
  if (files === null) return { status: 'skipped', text: 'Git cannot list the files of this folder.' };
  const found = complaints(files);
  return { status: found.length === 0 ? 'passed' : 'failed', text: found.join('\n') };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const { failed } = await runChecks();
  process.exitCode = failed > 0 ? 1 : 0;
}
