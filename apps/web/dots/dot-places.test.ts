import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countBy, dotPlaces } from './dot-places.js';

fc.configureGlobal({ seed: 2018 });

const times = fc
  .array(fc.integer({ min: 0, max: 600 }), { minLength: 1, maxLength: 40 })
  .map((all) => all.sort((a, b) => a - b));
const scale = fc.integer({ min: 1, max: 40 }).map((n) => n / 10);
const SIZE = 14;

describe('dots over their times', () => {
  it('are one for each time, exactly at it', () => {
    fc.assert(
      fc.property(times, scale, (all, per) => {
        const places = dotPlaces(all, (at) => at * per, SIZE);
        expect(places.map(({ at }) => at)).toEqual(all);
        expect(places.map(({ x }) => x)).toEqual(all.map((at) => at * per));
      }),
    );
  });

  /** Oracle: every pair of circles, as far apart as they are wide. */
  it('never overlap, so that they can be counted', () => {
    fc.assert(
      fc.property(times, scale, (all, per) => {
        const places = dotPlaces(all, (at) => at * per, SIZE);
        places.forEach((one, i) => {
          for (const other of places.slice(i + 1)) {
            const apart = Math.hypot(one.x - other.x, (one.level - other.level) * SIZE);
            expect(apart).toBeGreaterThanOrEqual(SIZE - 1e-9);
          }
        });
      }),
    );
  });

  it('stand on others only where there is no room beside them', () => {
    fc.assert(
      fc.property(times, scale, (all, per) => {
        const places = dotPlaces(all, (at) => at * per, SIZE);
        for (const { x, level } of places) {
          for (let below = 0; below < level; below++) {
            const touches = places.some((each) => each.level === below && Math.abs(each.x - x) < SIZE);
            expect(touches).toBe(true);
          }
        }
      }),
    );
  });

  it('count as come by a moment, that moment included', () => {
    expect(countBy([10, 20, 20, 30], 9)).toBe(0);
    expect(countBy([10, 20, 20, 30], 20)).toBe(3);
    expect(countBy([10, 20, 20, 30], 99)).toBe(4);
  });
});
