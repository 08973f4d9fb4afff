import { afterAll, beforeAll, expect, it } from 'vitest';
import { runFuzz } from '../fuzz/run-fuzz.js';
import { openTestApi, type TestApi } from '../support/test-api.js';
import { loadRunFile } from '../support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
let bench: TestApi;
beforeAll(async () => {
  bench = await openTestApi('2026-11-27T17:00:00Z', file);
});
afterAll(() => bench.close());

/** `npm run bench -- fuzz` sends 20,000; these are of another seed. */
it('answers whatever is sent with what it describes, and stores just what it says', async () => {
  const { url, key } = bench;
  const { faults, answers } = await runFuzz({
    ...{ url, key, file, requests: 500, seed: 2026, now: '2026-11-27T17:00:00Z' },
  });
  expect(faults).toEqual([]);
  expect(bench.log.lines.filter(({ level }) => level === 'error')).toEqual([]);
  // All routes but signing out, which is asked only with keys that are none.
  expect(answers.size).toBeGreaterThanOrEqual(44);
  const statuses = new Set([...answers.values()].flatMap((each) => [...each.keys()]));
  for (const status of [200, 201, 400, 401, 404, 409, 415, 422]) expect([...statuses]).toContain(status);
}, 240_000);
