import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { toldCounts } from './told-counts.js';

fc.configureGlobal({ seed: 361 });

describe('counts that are told', () => {
  it('are those as the maker’s hours open, each only where it is another', () => {
    const times = [5, 12, 13, 25, 31];
    const hours = [0, 10, 11, 20, 30, 40, 50].map((from) => ({ from, to: from + 1 }));
    expect(toldCounts(times, hours)).toEqual([
      { at: 10, count: 1 },
      { at: 20, count: 3 },
      { at: 30, count: 4 },
      { at: 40, count: 5 },
    ]);
  });

  it('are quarters where no hours open in between', () => {
    const times = Array.from({ length: 20 }, (_, i) => i + 1);
    expect(toldCounts(times, [{ from: 0, to: 100 }]).map(({ count }) => count)).toEqual([5, 10, 15, 20]);
  });

  /** Oracle: counting one by one. */
  it('are true, at most four, and grow', () => {
    const sorted = fc
      .array(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 20 })
      .map((all) => all.sort((a, b) => a - b));
    fc.assert(
      fc.property(sorted, sorted, (times, openings) => {
        const told = toldCounts(
          times,
          openings.map((from) => ({ from, to: from + 5 })),
        );
        expect(told.length).toBeGreaterThan(0);
        expect(told.length).toBeLessThanOrEqual(4);
        let before = 0;
        for (const { at, count } of told) {
          let come = 0;
          for (const time of times) if (time <= at) come++;
          expect(count).toBe(come);
          expect(count).toBeGreaterThanOrEqual(before);
          before = count;
        }
      }),
    );
  });
});
