import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { inProject } from './paths.mjs';

const dist = inProject('dist');
const output = /\.(js|js\.map|d\.ts|d\.ts\.map)$/;

/**
 * Deletes compiled files whose source is gone: the compiler leaves them, and an import of a removed module
 * would go on working here and nowhere else.
 */
export function removeStaleOutput() {
  for (const folder of ['libs', 'apps', 'tests']) {
    const below = join(dist, folder);
    if (!existsSync(below)) continue;
    for (const entry of readdirSync(below, { recursive: true, withFileTypes: true })) {
      const path = join(entry.parentPath, entry.name);
      if (entry.isFile() && output.test(path) && !hasSource(path)) rmSync(path);
    }
  }
}

/** @param {string} path */
function hasSource(path) {
  const source = inProject(relative(dist, path).replace(output, ''));
  return existsSync(`${source}.ts`) || existsSync(`${source}.tsx`);
}
