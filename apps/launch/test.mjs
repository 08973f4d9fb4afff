import { spawn } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import { delimiter, dirname } from 'node:path';
import { countTests } from './count-tests.mjs';
import { LaunchError } from './launch-error.mjs';
import { inProject, projectFolder } from './paths.mjs';
import { ready } from './ready.mjs';

const reportFile = inProject('tests', 'output', 'vitest.json');
/** Path of another Node, which is to run the tests too. */
const otherNode = process.env['BENCHTIDE_ALSO_NODE'] ?? '';
/**
 * What the other Node is not asked: pages, which run in a browser, and libraries that use nothing but the language, with the
 * published examples that they are held to. What speaks to Node, PostgreSQL, Redis, a terminal or Intl is asked.
 */
const NOT_AGAIN = [
  'tests/e2e/**',
  'apps/web/**',
  'tests/literature/**',
  'libs/{units,chemistry,clocks,planner,contract,runs}/**',
];

/**
 * `npm test [-- ARGUMENTS FOR VITEST]`: packages, build, checks, tests, and a last line that counts them, the
 * checks among them and the tests that another Node ran. Whatever breaks on the way counts as one failure, so the last
 * line never claims success.
 */
const counts = { passed: 0, failed: 0, skipped: 0 };
try {
  await ready({ need: 'build', log: console.log });
  const { runChecks } = await import(new URL('../../tests/check/run.mjs', import.meta.url).href);
  add(await runChecks());
  add(await runVitest(process.execPath, process.argv.slice(2)));
  if (otherNode !== '') {
    console.log(`The tests once more with ${otherNode}, but for ${NOT_AGAIN.join(', ')}`);
    const without = NOT_AGAIN.flatMap((files) => ['--exclude', files]);
    add(await runVitest(otherNode, [...process.argv.slice(2), ...without]));
  }
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
 * @param {string} node path of the Node that runs them
 * @param {string[]} args
 * @returns {Promise<import('./count-tests.mjs').Counts>}
 */
async function runVitest(node, args) {
  rmSync(reportFile, { force: true });
  const vitest = [
    inProject('node_modules', 'vitest', 'vitest.mjs'),
    ...['run', '--config', inProject('tests', 'vitest.config.ts'), '--passWithNoTests'],
    ...['--reporter=default', '--reporter=json', `--outputFile.json=${reportFile}`],
  ];
  const status = await new Promise((resolve, reject) => {
    // What a test starts as “node” is that one too.
    const env = { ...process.env, PATH: [dirname(node), process.env['PATH']].join(delimiter) };
    const child = spawn(node, [...vitest, ...args], { cwd: projectFolder, stdio: 'inherit', env });
    child.once('error', reject);
    child.once('exit', resolve);
  });
  const tests = countTests(JSON.parse(readFileSync(reportFile, 'utf8')), status === 0);
  if (tests.passed + tests.failed === 0) throw new LaunchError('No test ran.');
  return tests;
}
