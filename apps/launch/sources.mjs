import { readdirSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { inProject } from './paths.mjs';

const compiled = /\.(ts|tsx|json)$/;
const web = inProject('apps', 'web');
/** Tests are not compiled, generated code follows from the schemas, and the launchers run as they are. */
const apart = /\.test\.tsx?$/;
const pathsApart = new Set([
  inProject('libs', 'storage', 'generated'),
  inProject('apps', 'launch'),
  inProject('apps', 'web', 'api', 'schema.d.ts'),
]);

/**
 * Everything that decides what is compiled, one line per file with its size and time of change: when two
 * listings are equal there is nothing to build. It also notices files that went, and older ones that came.
 */
export function sourceListing() {
  const single = ['package-lock.json', 'tsconfig.json', 'prisma/schema.prisma'].map((path) =>
    inProject(path),
  );
  return [...single, ...filesBelow(inProject('libs')), ...filesBelow(inProject('apps'))]
    .flatMap(line)
    .sort()
    .join('\n');
}

/**
 * @param {string} folder
 * @returns {string[]}
 */
function filesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (pathsApart.has(path)) return [];
    if (entry.isDirectory()) return filesBelow(path);
    return isPart(path) && !apart.test(path) ? [path] : [];
  });
}

/**
 * Styles, pictures and the page itself are as much part of the web app as its code.
 * @param {string} path
 */
function isPart(path) {
  return compiled.test(path) || path.startsWith(`${web}${sep}`);
}

/** @param {string} path */
function line(path) {
  const stat = statSync(path, { throwIfNoEntry: false });
  return stat === undefined ? [] : [`${path} ${stat.size} ${stat.mtimeMs}`];
}
