import { existsSync } from 'node:fs';
import { compressBelow } from './compress.mjs';
import { inProject } from './paths.mjs';
import { runStep } from './run-step.mjs';

const page = inProject('dist', 'web', 'index.html');
const description = inProject('dist', 'openapi.json');
const types = inProject('apps', 'web', 'api', 'schema.d.ts');

/** Whether the files of the web build are there; from which sources is told by the list of all sources. */
export function isWebBuilt() {
  return existsSync(page) && existsSync(types);
}

/**
 * Describes the compiled API, turns the description into the types that the web app asks it with, and bundles
 * the web app into dist/web with compressed copies beside its files.
 * @param {(line: string) => void} log
 */
export async function buildWeb(log) {
  await runStep(log, {
    title: 'Describing the API …',
    still: 'still describing',
    command: process.execPath,
    args: [inProject('dist', 'apps', 'api', 'docs', 'write-document.js')],
    failure: 'The API could not be described; the reason is above.',
  });
  await runStep(log, {
    title: 'Writing the types of the API for the web app …',
    still: 'still writing',
    command: process.execPath,
    args: [
      inProject('node_modules', 'openapi-typescript', 'bin', 'cli.js'),
      ...[description, '--output', types],
      // What has a default may be left out of what is sent; what is answered always holds it, and says so itself.
      '--default-non-nullable=false',
    ],
    failure: 'The types of the API could not be written; the reason is above.',
  });
  await runStep(log, {
    title: 'Bundling the web app …',
    still: 'still bundling',
    command: process.execPath,
    args: [
      inProject('node_modules', 'vite', 'bin', 'vite.js'),
      ...['build', '--config', inProject('apps', 'web', 'vite.config.ts'), '--logLevel', 'warn'],
    ],
    failure: 'The web app could not be bundled; the reason is above.',
  });
  compressBelow(inProject('dist', 'web'));
}
