import { existsSync } from 'node:fs';
import { isCompiled, compile } from './compile.mjs';
import { install, isInstalled } from './install.mjs';
import { withLock } from './lock.mjs';
import { LaunchError } from './launch-error.mjs';
import { nodeVersionProblem } from './node-version.mjs';
import { inProject } from './paths.mjs';

/**
 * Brings the project folder to where its programs can run: a Node that will do, packages as locked, sources
 * compiled. Costs a few milliseconds when there is nothing to do. Two calls at once, in one process or in
 * several, take turns.
 * @param {{ need: 'install' | 'build', log?: (line: string) => void }} options `log` gets progress lines;
 *   by default they go to standard error, so that a program's own output stays clean
 * @throws {LaunchError} with a sentence for the person at the terminal
 */
export async function ready({ need, log = toStandardError }) {
  const problem = nodeVersionProblem(process.versions.node);
  if (problem !== null) throw new LaunchError(problem);
  const done = () => isInstalled() && (need === 'install' || isCompiled());
  if (done()) return;
  if (!existsSync(inProject('package-lock.json'))) {
    throw new LaunchError('package-lock.json is missing; without it the right packages cannot be installed.');
  }
  await withLock(log, async () => {
    if (!isInstalled()) await install(log);
    if (need === 'build' && !isCompiled()) await compile(log);
  });
}

/** @param {string} line */
function toStandardError(line) {
  process.stderr.write(`${line}\n`);
}
