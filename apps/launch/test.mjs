import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { LaunchError } from './launch-error.mjs';
import { inProject, projectFolder } from './paths.mjs';
import { ready } from './ready.mjs';

const reportFile = inProject('tests', 'output', 'vitest.json');

/**
 * `npm test [-- ARGUMENTS FOR VITEST]`: packages, build, checks, tests, and a last line that counts them, the
 * checks among them. Whatever breaks on the way counts as one failure, so the last line never claims success.
 */
const counts = { passed: 0, failed: 0, skipped: 0 };
let ran = 0;
try {
  await ready({ need: 'build', log: console.log });
  const { runChecks } = await import(new URL('../../tests/check/run.mjs', import.meta.url).href);
  add(await runChecks());
  const tests = await runVitest(process.argv.slice(2));
  ran = tests.passed + tests.failed;
  add(tests);
  if (ran === 0) console.log('No test ran.');
} catch (error) {
  counts.failed += 1;
  console.log(error instanceof LaunchError ? error.message : error);
}
process.exitCode = counts.failed > 0 || ran === 0 ? 1 : 0;
console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);

/** @typedef {{ passed: number, failed: number, skipped: number }} Counts */

/** @param {Counts} more */
function add(more) {
  counts.passed += more.passed;
  counts.failed += more.failed;
  counts.skipped += more.skipped;
}

/**
 * @param {string[]} args
 * @returns {Promise<Counts>}
 */
async function runVitest(args) {
  rmSync(reportFile, { force: true });
  const vitest = [
    inProject('node_modules', 'vitest', 'vitest.mjs'),
    ...['run', '--config', inProject('tests', 'vitest.config.ts'), '--passWithNoTests'],
    ...['--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`],
  ];
  const status = await new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [...vitest, ...args], { cwd: projectFolder, stdio: 'inherit' });
    child.once('error', reject);
    child.once('exit', resolve);
  });
  const told = countReport(JSON.parse(readFileSync(reportFile, 'utf8')));
  // An error outside any test ends vitest with a failure that its report does not count.
  return status !== 0 && told.failed === 0 ? { ...told, failed: 1 } : told;
}

/**
 * @param {{ testResults: { status: string, assertionResults: { status: string }[] }[] }} report
 * @returns {Counts}
 */
function countReport({ testResults }) {
  const statuses = testResults.flatMap(({ status, assertionResults }) => [
    ...assertionResults.map((test) => test.status),
    // A file that fails before or after its tests is a failure that belongs to none of them.
    ...(status === 'failed' && !assertionResults.some((test) => test.status === 'failed') ? ['failed'] : []),
  ]);
  const passed = statuses.filter((status) => status === 'passed').length;
  const failed = statuses.filter((status) => status === 'failed').length;
  return { passed, failed, skipped: statuses.length - passed - failed };
}
