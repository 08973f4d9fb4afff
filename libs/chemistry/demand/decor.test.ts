import binomialCdfOracle from '@stdlib/stats-base-dists-binomial-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chanceOfTooFew, piecesWithSpares } from './decor.js';

fc.configureGlobal({ seed: 1654 });

const needed = fc.integer({ min: 1, max: 400 });
const breakage = fc.integer({ min: 1, max: 60 });
const certainty = fc.integer({ min: 500, max: 999 }).map((n) => n / 1000);

describe('spare decor', () => {
  it('on paper: of 2 shells made for 1 needed, both break in 1 of 16 at 25 %', () => {
    expect(chanceOfTooFew(1, 2, 25)).toBeCloseTo(1 / 16, 14);
    expect(piecesWithSpares(1, 25, 0.93)).toBe(2);
    expect(piecesWithSpares(1, 25, 0.95)).toBe(3);
  });

  /** Oracle: every way in which up to 12 pieces can break or survive. */
  it('is right in every way that few pieces can break', () => {
    for (let made = 1; made <= 12; made += 1) {
      for (const percent of [3, 20, 55]) {
        const chances = new Array<number>(made + 1).fill(0);
        for (let pattern = 0; pattern < 1 << made; pattern += 1) {
          let survivors = 0;
          for (let piece = 0; piece < made; piece += 1) survivors += (pattern >> piece) & 1;
          const chance = (1 - percent / 100) ** survivors * (percent / 100) ** (made - survivors);
          chances[survivors] = (chances[survivors] ?? 0) + chance;
        }
        for (let wanted = 0; wanted <= made; wanted += 1) {
          const short = chances.slice(0, wanted).reduce((sum, chance) => sum + chance, 0);
          expect(chanceOfTooFew(wanted, made, percent)).toBeCloseTo(short, 12);
        }
      }
    }
  });

  /** Oracle: the binomial of @stdlib. */
  it('is just enough: one fewer would not do', () => {
    fc.assert(
      fc.property(needed, breakage, certainty, (wanted, percent, sure) => {
        const made = piecesWithSpares(wanted, percent, sure);
        const short = (of: number): number => binomialCdfOracle(wanted - 1, of, 1 - percent / 100);
        expect(made).toBeGreaterThanOrEqual(wanted);
        expect(short(made)).toBeLessThanOrEqual((1 - sure) * (1 + 1e-8));
        if (made > wanted) expect(short(made - 1)).toBeGreaterThan(1 - sure);
      }),
    );
  });

  it('grows with what is needed, with breakage and with certainty', () => {
    fc.assert(
      fc.property(needed, breakage, certainty, (wanted, percent, sure) => {
        const made = piecesWithSpares(wanted, percent, sure);
        expect(piecesWithSpares(wanted + 1, percent, sure)).toBeGreaterThan(made);
        expect(piecesWithSpares(wanted, percent + 5, sure)).toBeGreaterThanOrEqual(made);
        expect(piecesWithSpares(wanted, percent, (1 + sure) / 2)).toBeGreaterThanOrEqual(made);
      }),
    );
  });

  it('needs no spares where nothing breaks, and none for a certainty met exactly', () => {
    expect(piecesWithSpares(72, 0, 0.999)).toBe(72);
    expect(piecesWithSpares(1, 5, 0.95)).toBe(1);
    expect(piecesWithSpares(0, 40, 0.95)).toBe(0);
  });

  it('copes with heavy breakage and large counts', () => {
    // Survivors of N at 1 %: mean N/100, so about ten thousand, and a good deal more to be 95 % sure of 100.
    const made = piecesWithSpares(100, 99, 0.95);
    expect(binomialCdfOracle(99, made, 0.01)).toBeLessThanOrEqual(0.05);
    expect(binomialCdfOracle(99, made - 1, 0.01)).toBeGreaterThan(0.05);
    const many = piecesWithSpares(10_000, 4, 0.95);
    // Normal approximation: (10 000 + 1.645 · √(10 000 · 0.04)) / 0.96 = 10 451
    expect(Math.abs(many - 10_451)).toBeLessThan(3);
  });

  it('has too few for certain when fewer are made than needed', () => {
    expect(chanceOfTooFew(10, 9, 1)).toBe(1);
    expect(chanceOfTooFew(10, 0, 1)).toBe(1);
  });

  it('refuses what it is not defined for', () => {
    expect(() => piecesWithSpares(2.5, 4, 0.95)).toThrow(RangeError);
    expect(() => piecesWithSpares(-1, 4, 0.95)).toThrow(RangeError);
    expect(() => piecesWithSpares(10, 100, 0.95)).toThrow(RangeError);
    expect(() => piecesWithSpares(10, -1, 0.95)).toThrow(RangeError);
    expect(() => piecesWithSpares(10, 4, 1)).toThrow(RangeError);
    expect(() => chanceOfTooFew(1, NaN, 4)).toThrow(RangeError);
    for (const percent of [-1, 100, NaN]) {
      expect(() => chanceOfTooFew(10, 12, percent)).toThrow(
        `breakagePercent is ${String(percent)}; accepted: 0 to below 100 %`,
      );
    }
  });
});
