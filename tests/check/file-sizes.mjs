import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-files.mjs';

const LONGEST_LINES = 400;
const counted = /^(apps|libs|tests|prisma)\/.*\.(ts|tsx|mjs|cjs)$/;

/**
 * @param {string[]} files
 * @returns {string[]} one complaint for each source that is too long to be about one thing
 */
export function fileSizes(files) {
  return files
    .filter((path) => counted.test(path))
    .map((path) => ({ path, lines: readFileSync(join(projectFolder, path), 'utf8').split('\n').length - 1 }))
    .filter(({ lines }) => lines > LONGEST_LINES)
    .map(({ path, lines }) => `${path}: ${lines} lines; at most ${LONGEST_LINES}`);
}
