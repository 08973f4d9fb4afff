/** What each library may import from the others: the table of DEVELOPERS.md, which a test compares. */
const mayImport = {
  units: [],
  chemistry: ['units'],
  clocks: ['units'],
  planner: ['units'],
  hours: ['units'],
  contract: ['units'],
  runs: ['units', 'chemistry', 'clocks', 'planner', 'hours', 'contract'],
  words: ['units', 'contract'],
  storage: ['contract'],
  nudges: ['units', 'contract', 'words'],
};
const pure = ['units', 'chemistry', 'clocks', 'planner', 'hours', 'contract', 'runs', 'words'];
const packagesOfPure = { contract: ['zod'], hours: ['luxon'] };

/** What is outside of a library sees of it; also the names of the contract alone, and one language, or all. */
const index = '^libs/([^/]+|contract/names|words/(de|en|all))/index[.]ts$';
const test = '[.]test[.]tsx?$';
/** Reached by path once found, by bare name when it is not installed. */
const fromPackage = (/** @type {string} */ name) => `(^|node_modules/)${name}(/|$)`;
const npm = ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-no-pkg', 'npm-unknown', 'npm-bundled'];

module.exports = {
  forbidden: [
    ...Object.entries(mayImport).map(([library, others]) => ({
      name: `flow-of-${library}`,
      comment: `libs/${library} knows of ${others.join(', ') || 'no other library'}.`,
      severity: 'error',
      from: { path: `^libs/${library}/`, pathNot: test },
      to: { path: '^libs/', pathNot: `^libs/(${[library, ...others].join('|')})/` },
    })),
    {
      name: 'through-the-index',
      comment: 'A library is used through its index.ts; its other files are its own business.',
      severity: 'error',
      from: { path: '^libs/([^/]+)/' },
      to: { path: '^libs/[^/]+/', pathNot: ['^libs/$1/', index] },
    },
    {
      name: 'apps-through-the-index',
      severity: 'error',
      from: { path: '^apps/' },
      to: { path: '^libs/[^/]+/', pathNot: index },
    },
    ...pure.map((library) => ({
      name: `packages-of-${library}`,
      comment: 'Pure code runs anywhere, so it uses no package but the one agreed.',
      severity: 'error',
      from: { path: `^libs/${library}/`, pathNot: test },
      to: {
        dependencyTypes: npm,
        pathNot: (packagesOfPure[/** @type {keyof typeof packagesOfPure} */ (library)] ?? ['$^']).flatMap(
          (name) => [fromPackage(name), fromPackage(`@types/${name}`)],
        ),
      },
    })),
    {
      name: 'names-alone',
      comment: 'Names of the contract come to a page without the schemas that are made from them.',
      severity: 'error',
      from: { path: '^libs/contract/names/', pathNot: test },
      to: { pathNot: '^libs/contract/names/' },
    },
    {
      name: 'pure-without-node',
      severity: 'error',
      from: { path: `^libs/(${pure.join('|')})/`, pathNot: test },
      to: { dependencyTypes: ['core'] },
    },
    {
      name: 'luxon-in-hours',
      comment: 'Local time is understood in one place.',
      severity: 'error',
      from: { path: '^(apps|libs)/', pathNot: ['^libs/hours/', test] },
      to: { path: fromPackage('luxon') },
    },
    {
      name: 'database-client-in-storage',
      severity: 'error',
      from: { path: '^(apps|libs)/', pathNot: '^libs/storage/' },
      to: { path: [fromPackage('@prisma'), '^libs/storage/generated/'] },
    },
    {
      name: 'queue-in-nudges',
      severity: 'error',
      from: { path: '^(apps|libs)/', pathNot: '^libs/nudges/' },
      to: { path: [fromPackage('bullmq'), fromPackage('ioredis')] },
    },
    {
      name: 'no-app-from-a-library',
      severity: 'error',
      from: { path: '^libs/' },
      to: { path: '^apps/' },
    },
    {
      name: 'no-app-from-an-app',
      severity: 'error',
      from: { path: '^apps/([^/]+)/' },
      to: { path: '^apps/', pathNot: '^apps/$1/' },
    },
    {
      name: 'no-database-in-cli-and-web',
      severity: 'error',
      from: { path: '^apps/(cli|web)/' },
      to: { path: '^libs/(storage|nudges)/' },
    },
    {
      name: 'no-tests-in-the-product',
      severity: 'error',
      from: { path: '^(apps|libs)/', pathNot: [test, '^apps/launch/'] },
      to: { path: ['^tests/', test] },
    },
    {
      name: 'no-circle',
      severity: 'error',
      from: { pathNot: '^libs/storage/generated/' },
      to: { circular: true },
    },
    {
      name: 'no-folder-circle',
      comment:
        'Folders of a program or library stand in an order. Helpers of tests may use what their tests are of.',
      severity: 'error',
      scope: 'folder',
      from: { pathNot: ['^tests(/|$)', '^libs/storage/generated'] },
      to: { circular: true, pathNot: '^tests(/|$)' },
    },
    {
      name: 'resolvable',
      comment: 'Types made from the OpenAPI document have no source that could be resolved.',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^[.]/schema[.]js$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^dist/' },
    // Imports of types count too: knowing a type is knowing the library.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    enhancedResolveOptions: {
      conditionNames: ['source', 'import', 'require', 'node', 'default', 'types'],
      exportsFields: ['exports'],
      extensions: ['.ts', '.tsx', '.mjs', '.cjs', '.js', '.json'],
    },
  },
};
