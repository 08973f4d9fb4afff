import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { buildWeb, isWebBuilt } from './build-web.mjs';
import { inProject } from './paths.mjs';
import { removeStaleOutput } from './remove-stale-output.mjs';
import { runStep } from './run-step.mjs';
import { sourceListing } from './sources.mjs';

const stampFile = inProject('dist', '.built');

/** Whether dist was made from the sources as they are now. */
export function isCompiled() {
  return (
    existsSync(stampFile) &&
    existsSync(inProject('libs', 'storage', 'generated')) &&
    isWebBuilt() &&
    readFileSync(stampFile, 'utf8') === sourceListing()
  );
}

/**
 * Generates the database client, compiles libraries and programs, bundles the web app, and notes from what.
 * @param {(line: string) => void} log
 */
export async function compile(log) {
  // Listed first: what is edited while the compiler runs is then built next time.
  const listing = sourceListing();
  await runStep(log, {
    title: 'Generating the database client …',
    still: 'still generating',
    command: process.execPath,
    args: [inProject('prisma', 'generate.cjs')],
    failure: 'The database client could not be generated; the reason is above.',
  });
  await runStep(log, {
    title: 'Compiling, about ten seconds the first time …',
    still: 'still compiling',
    command: process.execPath,
    args: [inProject('node_modules', 'typescript-native', 'bin', 'tsc'), '-b', inProject('tsconfig.json')],
    failure: 'The sources do not compile; the compiler’s words are above.',
  });
  removeStaleOutput();
  await buildWeb(log);
  writeFileSync(stampFile, listing);
}
