/**
 * The tests that must notice a change in a folder: those that somebody who works there would run, not all that there are.
 * The longest path that what is mutated begins with counts.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
const testsOf = {
  'libs/units': ['libs/units'],
  'libs/chemistry': ['libs/chemistry', 'tests/literature/chemistry', 'tests/literature/demand'],
  'libs/clocks': ['libs/clocks', 'tests/literature/clocks'],
  'libs/planner': ['libs/planner'],
  'libs/hours': ['libs/hours', 'libs/runs/plan/choose-nudges'],
  'libs/runs/log': ['libs/runs/log', 'libs/runs/observed'],
  'libs/runs/plan': ['libs/runs/plan', 'libs/runs/log'],
  'libs/nudges': ['libs/nudges', 'tests/nudges'],
  'libs/storage': ['libs/storage', 'tests/database'],
};

/** Folders that can be mutated, or any folder or file in them. */
export const folders = Object.keys(testsOf);

/**
 * @param {string} path of the project, with / between its steps
 * @returns patterns of the test files; undefined where nothing is known of the path
 */
export function testFilesOf(path) {
  const folder = folders
    .filter((each) => path === each || path.startsWith(`${each}/`))
    .sort((a, b) => b.length - a.length)[0];
  // A folder with all in it, or every file that begins so.
  return testsOf[folder ?? '']?.flatMap((start) => [`${start}/**/*.test.ts`, `${start}*.test.ts`]);
}
