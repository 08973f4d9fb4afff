import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  resolve: { conditions: ['source', 'module', 'node', 'default'] },
  ssr: { resolve: { conditions: ['source', 'module', 'node', 'default'] } },
  oxc: { decorator: { legacy: true, emitDecoratorMetadata: true } },
  test: {
    include: ['libs/**/*.test.ts', 'apps/**/*.test.ts', 'tests/**/*.test.ts'],
    exclude: ['**/node_modules/**', 'dist/**', 'tests/output/**'],
    globalSetup: ['tests/support/database-setup.ts'],
    pool: 'forks',
    maxWorkers: 2,
    env: { TZ: 'UTC' },
    testTimeout: 30_000,
    hookTimeout: 60_000,
  },
});
