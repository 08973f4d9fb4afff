const agreed = new Set([
  ...['README.md', 'DEVELOPERS.md', 'LICENSE'],
  ...['package.json', 'package-lock.json', 'tsconfig.json', 'docker-compose.yml'],
  ...['apps', 'libs', 'prisma', 'tests'],
]);

/**
 * @param {string[]} files
 * @returns {string[]} one complaint for each thing in the project folder that is not part of the agreed tree
 */
export function topLevel(files) {
  const names = new Set(files.map((path) => path.split('/')[0] ?? path));
  return [...names]
    .filter((name) => !agreed.has(name) && !name.startsWith('.'))
    .map((name) => `${name}: not part of the agreed tree; see the list in tests/check/top-level.mjs`);
}
