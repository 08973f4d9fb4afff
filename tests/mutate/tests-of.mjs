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
  // A fit runs through these thousands of times, so their own tests must notice: through fits it would take hours.
  ...ownTestsOf('libs/clocks/cure', [
    'check-weigh-ins',
    'drying-curve',
    'has-settled',
    'fit-cure',
    'most-likely',
    'plausible-curves',
    'posterior',
    'ready-day',
    'small-matrix',
    'weighted-band',
  ]),
  'libs/clocks/cure': ['libs/clocks/cure'],
  'libs/clocks/engine': ['libs/clocks/engine'],
  ...ownTestsOf('libs/clocks/lessons', ['evidence', 'grid', 'log-probability', 'observation', 'table']),
  'libs/clocks/lessons': ['libs/clocks/lessons', 'tests/literature/clocks/lessons'],
  'libs/planner': ['libs/planner'],
  'libs/hours': ['libs/hours', 'libs/runs/plan/choose-nudges'],
  'libs/runs/log': ['libs/runs/log', 'libs/runs/observed'],
  'libs/runs/plan': ['libs/runs/plan', 'libs/runs/log'],
  // What only a real queue shows is asked of one here, over both stores; whole programs and killed processes take too long.
  'libs/nudges': ['libs/nudges', 'tests/nudges/delivery'],
  ...ownTestsOf('libs/nudges', [
    'describe-nudge',
    'jobs',
    'log',
    'process-job',
    'queue',
    'sweep',
    'with-timeout',
    'worker',
  ]),
  'libs/nudges/report-errors.ts': ['libs/nudges/queue', 'libs/nudges/worker'],
  'libs/nudges/channels': ['libs/nudges/log', 'libs/nudges/process-job'],
  'libs/storage': ['libs/storage', 'tests/database'],
  ...ownTestsOf('libs/storage', ['keep-clearing']),
  ...ownTestsOf('libs/storage/repositories', ['reconcile-nudges']),
  'libs/storage/repositories/idempotency.ts': ['tests/database/once', 'tests/database/plans'],
  'libs/storage/repositories/nudges.ts': ['tests/database/inbox', 'tests/database/plans'],
  'libs/storage/repositories/undo-early.ts': ['tests/database/undo-early'],
};

/**
 * Files that the test beside them, of the same name, answers for.
 * @param {string} folder
 * @param {readonly string[]} names
 * @returns {Record<string, readonly string[]>}
 */
function ownTestsOf(folder, names) {
  return Object.fromEntries(names.map((name) => [`${folder}/${name}.ts`, [`${folder}/${name}`]]));
}

/** Folders that can be mutated, or any folder or file in them. */
export const folders = Object.keys(testsOf).filter((path) => !path.endsWith('.ts'));

/**
 * @param {string} path of the project, with / between its steps
 * @returns patterns of the test files; undefined where nothing is known of the path
 */
export function testFilesOf(path) {
  const known = Object.keys(testsOf)
    .filter((each) => path === each || path.startsWith(`${each}/`))
    .sort((a, b) => b.length - a.length)[0];
  // A folder with all in it, or every file that begins so.
  return testsOf[known ?? '']?.flatMap((start) => [`${start}/**/*.test.ts`, `${start}*.test.ts`]);
}
