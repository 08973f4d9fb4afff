import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { countTests } from './count-tests.mjs';
import { LaunchError } from './launch-error.mjs';
import { inProject, projectFolder } from './paths.mjs';
import { ready } from './ready.mjs';

const reportFile = inProject('tests', 'output', 'vitest.json');

/**
 * `npm test [-- ARGUMENTS FOR VITEST]`: packages, build, checks, tests, and a last line that counts them, the
 * checks among them. Whatever breaks on the way counts as one failure, so the last line never claims success.
 */
const counts = { passed: 0, failed: 0, skipped: 0 };
try {
  await ready({ need: 'build', log: console.log });
  const { runChecks } = await import(new URL('../../tests/check/run.mjs', import.meta.url).href);
  add(await runChecks());
  const tests = await runVitest(process.argv.slice(2));
  add(tests);
  if (tests.passed + tests.failed === 0) throw new LaunchError('No test ran.');
} catch (error) {
  counts.failed += 1;
  console.log(error instanceof LaunchError ? error.message : error);
}
process.exitCode = counts.failed > 0 ? 1 : 0;
console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);

/** @param {import('./count-tests.mjs').Counts} more */
function add(more) {
  counts.passed += more.passed;
  counts.failed += more.failed;
  counts.skipped += more.skipped;
}

/**
 * @param {string[]} args
 * @returns {Promise<import('./count-tests.mjs').Counts>}
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
  return countTests(JSON.parse(readFileSync(reportFile, 'utf8')), status === 0);
}
