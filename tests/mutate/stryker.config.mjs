const path = process.env['MUTATE'] ?? '';

/** @type {import('@stryker-mutator/api/core').PartialStrykerOptions} */
export default {
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutate/vitest.config.mjs', related: false },
  mutate: [path.endsWith('.ts') ? path : `${path}/**/*.ts`, '!**/*.test.ts', '!**/index.ts'],
  // Wording is not checked here, and tables of published figures are compared with their sources.
  mutator: { excludedMutations: ['StringLiteral'] },
  // What is read once when a module loads costs all tests for each thing broken; rules of the clocks are nothing else, and theirs are quick.
  ignoreStatic: !path.startsWith('libs/clocks/rules'),
  coverageAnalysis: 'perTest',
  concurrency: Number(process.env['MUTATE_WORKERS'] ?? 2),
  reporters: ['clear-text', 'json', 'progress-append-only'],
  jsonReporter: { fileName: `tests/output/mutants/${path.replaceAll('/', '-')}.json` },
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, allowEmojis: false },
  tempDirName: 'tests/output/mutate',
  timeoutMS: 10_000,
};
