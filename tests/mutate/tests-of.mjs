import { existsSync } from 'node:fs';

const chemistry = (/** @type {string[]} */ ...names) =>
  names.map((name) => `tests/literature/chemistry/${name}`);
const fatSources = chemistry('fat-', 'stoichiometry', 'titration');
const lyeSources = chemistry('koh-', 'lye', 'stoichiometry');

/**
 * The tests that must notice a change in a folder: those that somebody who works there would run, not all that there are.
 * The longest path that what is mutated begins with counts.
 * @type {Readonly<Record<string, readonly string[]>>}
 */
const testsOf = {
  'libs/units': ['libs/units'],
  'libs/chemistry': ['libs/chemistry', 'tests/literature/chemistry', 'tests/literature/demand'],
  'libs/chemistry/batter': [
    'libs/chemistry/batter',
    'libs/chemistry/lye/water',
    'tests/literature/chemistry/additive-volume',
  ],
  // Not the story told at random, which takes seconds for each mutant: the formulas stand on paper beside it.
  'libs/chemistry/demand': ['libs/chemistry/demand', 'tests/literature/demand/posterior'],
  'libs/chemistry/fats': ['libs/chemistry/fats', 'libs/chemistry/batter/check-recipe', ...fatSources],
  'libs/chemistry/lye': ['libs/chemistry/lye', 'libs/chemistry/batter/batch', ...lyeSources],
  'libs/chemistry/volumes': ['libs/chemistry/volumes', 'tests/literature/chemistry/volumes'],
  // Without tests/literature/clocks/cure: its simulated lots take a minute, for each thing that is broken anew.
  'libs/clocks': [
    'libs/clocks',
    'tests/literature/clocks/common-practice',
    'tests/literature/clocks/lessons',
    'tests/literature/clocks/reaction-rate',
  ],
  'libs/clocks/heat': ['libs/clocks/heat'],
  'libs/clocks/rules': [
    'libs/clocks/rules',
    'libs/clocks/forecast',
    'tests/literature/clocks/common-practice',
  ],
  'libs/clocks/evaluate.ts': ['libs/clocks/forecast'],
  'libs/clocks/rule.ts': ['libs/clocks/forecast', 'libs/clocks/rules'],
  'libs/clocks/cure': ['libs/clocks/cure'],
  'libs/clocks/engine': ['libs/clocks/engine'],
  'libs/clocks/lessons': ['libs/clocks/lessons', 'tests/literature/clocks/lessons'],
  'libs/planner': ['libs/planner'],
  ...partsOfPlanner(),
  'libs/hours': ['libs/hours', 'libs/runs/plan/choose-nudges'],
  'libs/runs/clocks': ['libs/runs/clocks', 'libs/runs/amounts/soap-risks'],
  'libs/runs/amounts/soap-risks.ts': ['libs/runs/amounts/soap-risks'],
  'libs/runs/log': ['libs/runs/log', 'libs/runs/observed'],
  'libs/runs/plan': ['libs/runs/plan', 'libs/runs/log'],
  // Without those over a real queue, which take seconds each; its ends alone cannot do without one.
  'libs/nudges': ['libs/nudges'],
  'libs/nudges/backend.ts': ['tests/nudges/delivery'],
  'libs/storage': ['libs/storage', 'tests/database'],
  'libs/storage/repositories/idempotency.ts': ['tests/database/once', 'tests/database/plans'],
  'libs/storage/repositories/nudges.ts': [
    'tests/database/inbox',
    'tests/database/plans',
    'tests/database/undo-early',
  ],
  'libs/storage/repositories/undo-early.ts': ['tests/database/undo-early'],
};

/**
 * Where a test beside a file, of the same name, answers for it alone: all shipped fats, a fit of a cure or a database
 * behind it would be asked thousands of times more.
 */
const withOwnTests = [
  ...['check-fat', 'nearest-fats', 'questions-about'].map((name) => `libs/chemistry/fats/${name}`),
  'libs/clocks/',
  'libs/storage/',
];

/**
 * All searches ask for windows and simulations, hundreds of thousands of times: the tests of these would take hours and
 * say no more than their own.
 * @returns {Record<string, readonly string[]>}
 */
function partsOfPlanner() {
  const windows = ['windows', 'domains'];
  const simulation = ['simulate', 'odds', 'met-scenarios', 'paired-simulation', 'draws', 'tally'];
  const askedOf = (/** @type {string[]} */ files, /** @type {string[]} */ tests) =>
    files.map((name) => [`libs/planner/${name}.ts`, tests.map((test) => `libs/planner/${test}`)]);
  return Object.fromEntries([
    ...askedOf(['windows', 'fixed-point', 'domains'], windows),
    ...askedOf(['odds', 'simulate', 'simulation-model', 'paired-simulation', 'draws', 'tally'], simulation),
  ]);
}

/** Folders that can be mutated, or any folder or file in them. */
export const folders = Object.keys(testsOf).filter((path) => !path.endsWith('.ts'));

/**
 * @param {string} path of the project, with / between its steps
 * @returns patterns of the test files; undefined where nothing is known of the path
 */
export function testFilesOf(path) {
  const own = path.replace(/\.ts$/, '.test.ts');
  const answersAlone = own !== path && withOwnTests.some((folder) => path.startsWith(folder));
  if (answersAlone && existsSync(new URL(`../../${own}`, import.meta.url))) return [own];
  const known = Object.keys(testsOf)
    .filter((each) => path === each || path.startsWith(`${each}/`))
    .sort((a, b) => b.length - a.length)[0];
  // A folder with all in it, or every file that begins so.
  return testsOf[known ?? '']?.flatMap((start) => [`${start}/**/*.test.ts`, `${start}*.test.ts`]);
}
