import { defineConfig } from 'vitest/config';
import usual from '../vitest.config.ts';
import { testFilesOf } from './tests-of.mjs';

const path = process.env['MUTATE'] ?? '';
const include = testFilesOf(path);
if (include === undefined) throw new Error('MUTATE names nothing that has tests of its own.');

/** Tests of pure libraries leave nothing behind, so modules need not be loaded anew for each file of them: it takes longest. */
const isPure = /^libs\/(units|chemistry|clocks|planner|hours|runs)(\/|$)/.test(path);

export default defineConfig({
  ...usual,
  test: { ...usual.test, include, maxWorkers: 1, isolate: !isPure, testTimeout: 120_000 },
});
