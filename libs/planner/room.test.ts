import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileProblem } from './compile-problem.js';
import { loadsOf, type Load } from './loads.js';
import type { Problem } from './problem.js';
import { Room } from './room.js';

const UNTIL = 20;
const uses = (amount: number) => [{ resource: 'r', amount }];
const minute = fc.nat(UNTIL);

describe('room', () => {
  /** Oracle: the use of every minute, added up. */
  it('is short exactly where a minute of what moved asks for more than there is', () => {
    const seen = { short: 0, enough: 0 };
    const stage = fc.record({ duration: fc.nat(6), amount: fc.integer({ min: 1, max: 2 }) });
    const moves = fc.array(fc.tuple(fc.nat(4), minute), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(fc.array(stage, { minLength: 5, maxLength: 5 }), minute, moves, (random, busy, moved) => {
        const p: Problem = {
          stages: random.map(({ duration, amount }, i) => ({ id: `${i}`, duration, uses: uses(amount) })),
          ...{ lags: [], calendars: {}, draws: {}, from: 0, until: UNTIL },
          holds: [{ id: 'h', resource: 'r', amount: 1, from: '0', to: '1' }],
          resources: [{ id: 'r', capacity: 3, busy: [{ from: busy, to: busy + 5, amount: 2 }] }],
        };
        const { duration } = compileProblem(p, 0.5);
        const x = Float64Array.from(duration, (_, i) => (i < 5 ? 3 * i : busy));
        const all = loadsOf(p);
        const room = new Room(all, x, duration);
        const isThere = ({ first, last }: Load, at: number): boolean =>
          x[first]! <= at && x[last]! + duration[last]! > at;
        for (const [i, at] of moved) {
          // What is held is held for some time.
          if (i < 2 && (i === 0 ? at >= x[1]! : at <= x[0]!)) continue;
          x[i] = at;
          room.move(i);
          const { loads, capacity } = all[0]!;
          const mine = loads.filter(({ first, last }) => first === i || last === i);
          const isShort = Array.from({ length: 2 * UNTIL }, (_, t) => t).some((t) => {
            const used = loads.filter((load) => isThere(load, t)).reduce((sum, load) => sum + load.amount, 0);
            return used > capacity && mine.some((load) => isThere(load, t));
          });
          seen[isShort ? 'short' : 'enough']++;
          expect(room.isOverloadedBy(i)).toBe(isShort);
        }
      }),
      { numRuns: 400, seed: 61 },
    );
    expect(Math.min(seen.short, seen.enough)).toBeGreaterThan(500);
  });
});
