import { describe, expect, it } from 'vitest';
import type { Problem } from '#planner';
import { seededRandom } from '#units';
import { scheduleFaults } from '../../../tests/support/check-schedule.js';
import { compileProblem } from '../compile-problem.js';
import { StageSearch } from './stage-search.js';

const p: Problem = {
  stages: [{ id: 'pour', duration: 2, uses: [], calendar: 'hours' }],
  calendars: {
    hours: [
      { from: 1, to: 5 },
      { from: 9, to: 14 },
    ],
  },
  ...{ lags: [], holds: [], resources: [], draws: {}, from: 0, until: 20 },
};

describe('StageSearch', () => {
  it('starts a stage in its hours when it may not start before a minute between them', () => {
    const search = StageSearch.over(p, compileProblem(p, 0.5), seededRandom(1))!;
    const found = search.place([search.notBefore(0, 6)], { left: 100, stop: () => false });
    if (found.status !== 'placed') throw new Error(found.status);
    const starts = new Map([['pour', found.starts[0]!]]);
    expect(scheduleFaults(p, { starts, certainty: 0.5 })).toEqual([]);
    expect(found.starts[0]).toBe(9);
  });

  it('goes on after claims that cannot hold, and names those', () => {
    const search = StageSearch.over(p, compileProblem(p, 0.5), seededRandom(1))!;
    const budget = { left: 100, stop: () => false };
    const inGap = [search.notBefore(0, 4), search.notAfter(0, 8)];
    expect(search.place(inGap, budget)).toMatchObject({ status: 'impossible' });
    const early = search.notAfter(0, 0);
    expect(search.place([...inGap, early], budget)).toMatchObject({ status: 'impossible' });
    expect(search.place([early, ...inGap], budget)).toEqual({ status: 'impossible', core: [early] });
    expect(search.place([search.notAfter(0, 5)], budget)).toMatchObject({
      status: 'placed',
      starts: Float64Array.of(1),
    });
  });
});
