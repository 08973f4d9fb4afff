/**
 * What is wrong with this Node, or null. Mirrors `engines` in package.json, which npm only warns about.
 * @param {string} version as in `process.versions.node`
 * @returns {string | null}
 */
export function nodeVersionProblem(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const fits = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 24;
  return fits
    ? null
    : `Benchtide needs Node 20.19 or a later 20, 22.12 or a later 22, or 24 and up; this is Node ${version}.`;
}
