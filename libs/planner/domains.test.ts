import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { contains, domainOf, lastInRow, mirrorDomain, nextIn } from './domains.js';

const UNTIL = 40;
const minutes = Array.from({ length: UNTIL + 1 }, (_, at) => at);

/** Hours whose openings may touch, a duration, and bounds. */
const anyDomain = fc
  .record({
    marks: fc.uniqueArray(fc.integer({ min: 0, max: UNTIL }), { maxLength: 12 }),
    duration: fc.nat(4),
    least: fc.nat(UNTIL),
    greatest: fc.nat(UNTIL),
  })
  .map(({ marks, ...rest }) => {
    const sorted = [...marks].sort((a, b) => a - b);
    return { hours: sorted.flatMap((to, i) => (i % 2 === 1 ? [{ from: sorted[i - 1]!, to }] : [])), ...rest };
  });

describe('the starts that hours leave a stage', () => {
  /** Oracle: the definition, minute by minute. */
  it('are those from which all of it fits into one opening', () => {
    fc.assert(
      fc.property(anyDomain, ({ hours, duration, least, greatest }) => {
        const domain = domainOf(duration, hours, least, greatest);
        const allowed = minutes.filter(
          (at) =>
            least <= at && at <= greatest && hours.some(({ from, to }) => from <= at && at + duration <= to),
        );
        expect(minutes.filter((at) => contains(domain, at))).toEqual(allowed);
        for (const at of minutes) {
          expect(nextIn(domain, at)).toBe(allowed.find((start) => start >= at) ?? NaN);
        }
      }),
      { numRuns: 300, seed: 1 },
    );
  });

  it('go on from one to the end of its opening', () => {
    const domain = domainOf(
      10,
      [
        { from: 0, to: 30 },
        { from: 40, to: 50 },
      ],
      5,
      100,
    );
    expect([5, 12, 20].map((at) => lastInRow(domain, at))).toEqual([20, 20, 20]);
    expect(lastInRow(domain, 40)).toBe(40);
  });

  it('are all within the bounds where there are no hours', () => {
    const domain = domainOf(10, undefined, 3, 8);
    expect(minutes.filter((at) => contains(domain, at))).toEqual([3, 4, 5, 6, 7, 8]);
    expect(nextIn(domainOf(10, undefined, -Infinity, Infinity), 7)).toBe(7);
  });

  it('are the same seen backwards, negated', () => {
    fc.assert(
      fc.property(anyDomain, ({ hours, duration, least, greatest }) => {
        const domain = domainOf(duration, hours, least, greatest);
        const back = mirrorDomain(domain);
        for (const at of minutes) expect(contains(back, -at)).toBe(contains(domain, at));
        // Whatever reads it forwards must find it sorted.
        expect([...back.from]).toEqual([...back.from].sort((a, b) => a - b));
      }),
      { numRuns: 200, seed: 2 },
    );
  });
});
