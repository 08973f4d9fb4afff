import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { projectFolder } from './project-files.mjs';

// Each pattern is written so that it does not find itself here.
const patterns = [
  { pattern: /\b(?:TO[D]O|FIX[M]E|XX[X])\b/, why: 'work left undone belongs to an issue' },
  { pattern: /\b(?:it|test|describe)\.on[l]y\b/, why: 'it keeps the other tests from running' },
  { pattern: /\b(?:it|test|describe)\.(?:ski[p]|tod[o])\(/, why: 'a test that never runs proves nothing' },
  { pattern: /@ts-(?:ignor[e]|nochec[k])\b/, why: 'it hides every error; @ts-expect-error names one' },
  { pattern: /\bdebugge[r];/, why: 'it stops whoever runs this' },
  { pattern: /(?:^|["'`(\s=])\/(?:home|Users|root|work)\/\w/, why: 'a path of one machine' },
  { pattern: /^<{7} |^>{7} /, why: 'a merge that was not finished' },
];
const textual = /\.(ts|tsx|mjs|cjs|js|json|md|sql|prisma|ya?ml|css|html)$|^\.[^/]*$/;

/**
 * @param {string[]} files
 * @returns {string[]} one complaint for each line that should not be committed
 */
export function forbiddenWords(files) {
  return files
    .filter((path) => textual.test(path) && path !== 'package-lock.json')
    .flatMap((path) =>
      readFileSync(join(projectFolder, path), 'utf8')
        .split('\n')
        .flatMap((line, index) =>
          complaints(line).map((why) => `${path}:${index + 1}: ${why}: ${line.trim()}`),
        ),
    );
}

/** @param {string} line */
function complaints(line) {
  return patterns.filter(({ pattern }) => pattern.test(line)).map(({ why }) => why);
}
