import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { oddsShares } from './odds-shares.js';

fc.configureGlobal({ seed: 100 });

describe('runs of a hundred', () => {
  it('are counted as they come out', () => {
    expect(oddsShares(0.72, 0.9)).toEqual({ sound: 72, late: 18, lost: 10 });
    expect(oddsShares(1, 1)).toEqual({ sound: 100, late: 0, lost: 0 });
    expect(oddsShares(0, 0)).toEqual({ sound: 0, late: 0, lost: 100 });
  });

  it('add up, each less than one off', () => {
    const chance = fc.integer({ min: 0, max: 2000 }).map((n) => n / 2000);
    fc.assert(
      fc.property(chance, chance, (a, b) => {
        const [byTheDay, atAll] = [Math.min(a, b), Math.max(a, b)];
        const { sound, late, lost } = oddsShares(byTheDay, atAll);
        expect(sound + late + lost).toBe(100);
        expect(Math.abs(sound - byTheDay * 100)).toBeLessThan(1);
        expect(Math.abs(late - (atAll - byTheDay) * 100)).toBeLessThan(1);
        expect(Math.abs(lost - (1 - atAll) * 100)).toBeLessThan(1);
      }),
    );
  });
});
