import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Span, WorkshopFacts } from '#contract';
import { localDateOf, localTimeOf, openIntervals, instantOf } from '#hours';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { closedStretches } from './closed-stretches.js';

/** What must be there for the test to mean anything. */
function got<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('missing');
  return value;
}

const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

const span = fc
  .tuple(fc.integer({ min: 0, max: 47 }), fc.integer({ min: 1, max: 12 }))
  .map(([from, length]): Span => ({
    from: clock(from * 30),
    to: clock(Math.min(1440, (from + length) * 30)),
  }));
const spans = fc.array(span, { maxLength: 3 });
const weekly = fc.record({
  ...{ monday: spans, tuesday: spans, wednesday: spans, thursday: spans },
  ...{ friday: spans, saturday: spans, sunday: spans },
});

/** Weeks with and without a change of the clocks: in Ireland on 29 March and on 25 October 2026. */
const starts = fc.constantFrom('2026-03-27T18:00', '2026-10-23T18:00', '2026-11-27T18:00');

describe('stretches in which a sitting could be added', () => {
  it('lie in none of the maker’s hours, in no quiet ones, and each in one day', () => {
    fc.assert(
      fc.property(weekly, starts, (hours, start) => {
        const { workshop } = loadRunFile('ok', 'two-layer');
        const facts: WorkshopFacts = { ...workshop, hours: { ...workshop.hours, weekly: hours } };
        const from = got(instantOf(start, facts.timeZone));
        const until = minute(from + 5 * 1440);
        const open = openIntervals(facts.hours, facts.timeZone, from, until);
        for (const stretch of closedStretches(open, facts, from, until)) {
          expect(stretch.from).toBeLessThan(stretch.to);
          expect(open.some((each) => each.from < stretch.to && stretch.from < each.to)).toBe(false);
          const [first, last] = [stretch.from, minute(stretch.to - 1)];
          expect(localDateOf(first, facts.timeZone)).toBe(localDateOf(last, facts.timeZone));
          for (const at of [first, last]) {
            const time = localTimeOf(at, facts.timeZone);
            expect(time >= '07:30' && time < '22:30', time).toBe(true);
          }
        }
      }),
      { numRuns: 40 },
    );
  });

  it('are the whole waking day where there are no hours at all', () => {
    const { workshop } = loadRunFile('ok', 'two-layer');
    const from = got(instantOf('2026-11-28', workshop.timeZone));
    const [day, ...more] = closedStretches([], workshop, from, minute(from + 1440));
    expect(more).toEqual([]);
    expect(day).toEqual({ from: from + 450, to: from + 1350 });
  });
});
