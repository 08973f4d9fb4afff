import { defineConfig } from 'vitest/config';
import usual from '../vitest.config.ts';
import { testFilesOf } from './tests-of.mjs';

const include = testFilesOf(process.env['MUTATE'] ?? '');
if (include === undefined) throw new Error('MUTATE names nothing that has tests of its own.');

export default defineConfig({
  ...usual,
  test: { ...usual.test, include, maxWorkers: 1, testTimeout: 120_000 },
});
