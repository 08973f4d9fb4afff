import studentCdfOracle from '@stdlib/stats-base-dists-t-cdf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchFor, demandOf, leftover, piecesCovered, shortageChance, type Demand } from './demand.js';
import { learnUse, priorUse } from './piece-use.js';

fc.configureGlobal({ seed: 1947 });

const percentages = (most: number): fc.Arbitrary<number> =>
  fc.integer({ min: 1, max: most * 10 }).map((n) => n / 10);
const stated = fc.record({
  meanMl: fc.double({ min: 0.1, max: 500, noNaN: true }),
  spreadPercent: percentages(30),
  meanUncertaintyPercent: percentages(30),
});
const losses = fc.record({
  fixedMl: fc.double({ min: 0, max: 400, noNaN: true }),
  fixedSpreadPercent: fc.integer({ min: 0, max: 60 }),
  trimmingPercent: fc.integer({ min: 0, max: 60 }),
});
const count = fc.integer({ min: 1, max: 500 });
const certainty = fc.integer({ min: 500, max: 999 }).map((n) => n / 1000);

const nothingLost = { fixedMl: 0, fixedSpreadPercent: 0, trimmingPercent: 0 };
const foam = { meanMl: 20, spreadPercent: 6, meanUncertaintyPercent: 3 };

/** What is held back beyond the expected need. */
function reserve(demand: Demand, sure: number): number {
  return batchFor(demand, sure) - demand.meanMl;
}

describe('the demand of a batch', () => {
  it('on paper: 4 pieces of 20 ± 1.2 mL, the mean known to 0.6, a fifth trimmed off, 50 ± 5 mL lost', () => {
    const demand = demandOf(priorUse(foam), 4, {
      fixedMl: 50,
      fixedSpreadPercent: 10,
      trimmingPercent: 20,
    });
    // Mean 4·20/0.8 + 50. Variance of the pieces 1.44 · 4 · (1 + 4/4) / 0.64 · 10/8 = 22.5, with the losses 47.5.
    expect(demand.meanMl).toBeCloseTo(150, 10);
    // df = 4 + 6 · (47.5/22.5)² = 30.741; scale² = 47.5 · 28.741/30.741 = 44.410
    expect(demand.df).toBeCloseTo(30.741, 3);
    expect(demand.scaleMl ** 2).toBeCloseTo(44.41, 2);
  });

  it('on paper, where the mean also differs by 1.2 mL from day to day', () => {
    const demand = demandOf(priorUse({ ...foam, dayPercent: 6 }), 4, {
      fixedMl: 50,
      fixedSpreadPercent: 10,
      trimmingPercent: 20,
    });
    expect(demand.meanMl).toBeCloseTo(150, 10);
    // r = 1. Variance of the pieces 1.44 · 4 · (1 + 4 (1/4 + 1)) / 0.64 · 10/8 = 67.5, with the losses 92.5.
    // df = 4 + 6 · (92.5/67.5)² = 15.2675; scale² = 92.5 · 13.2675/15.2675 = 80.383
    expect(demand.df).toBeCloseTo(15.2675, 4);
    expect(demand.scaleMl ** 2).toBeCloseTo(80.383, 2);
  });

  /** Oracle: Student's t of @stdlib with the demand's own location, scale and degrees of freedom. */
  it('runs short with the chance a statistics library gives', () => {
    fc.assert(
      fc.property(stated, losses, count, fc.integer({ min: -60, max: 60 }), (use, lost, n, tenths) => {
        const demand = demandOf(priorUse(use), n, lost);
        const batchMl = demand.meanMl + (tenths / 10) * demand.scaleMl;
        const theirs = 1 - studentCdfOracle(tenths / 10, demand.df);
        expect(shortageChance(demand, batchMl)).toBeCloseTo(theirs, 9);
      }),
    );
  });

  it('is met by the batch sized for it: sizing and chance undo each other', () => {
    fc.assert(
      fc.property(stated, losses, count, certainty, (use, lost, n, sure) => {
        const demand = demandOf(priorUse(use), n, lost);
        expect(shortageChance(demand, batchFor(demand, sure))).toBeCloseTo(1 - sure, 10);
        const batchMl = demand.meanMl * 1.02;
        const chance = shortageChance(demand, batchMl);
        if (chance > 1e-9) expect(batchFor(demand, 1 - chance) / batchMl).toBeCloseTo(1, 6);
      }),
    );
  });

  it('grows with pieces, certainty, losses and trimming; a bigger batch runs short more seldom', () => {
    fc.assert(
      fc.property(stated, losses, count, certainty, (stating, lost, n, sure) => {
        const use = priorUse(stating);
        const demand = demandOf(use, n, lost);
        const batchMl = batchFor(demand, sure);
        expect(batchFor(demandOf(use, n + 1, lost), sure)).toBeGreaterThan(batchMl);
        expect(batchFor(demand, (1 + sure) / 2)).toBeGreaterThan(batchMl);
        expect(batchFor(demandOf(use, n, { ...lost, fixedMl: lost.fixedMl + 5 }), sure)).toBeGreaterThan(
          batchMl,
        );
        const trimmed = { ...lost, trimmingPercent: lost.trimmingPercent + 1 };
        expect(batchFor(demandOf(use, n, trimmed), sure)).toBeGreaterThan(batchMl);
        expect(shortageChance(demand, batchMl + demand.scaleMl / 10)).toBeLessThan(
          shortageChance(demand, batchMl),
        );
      }),
    );
  });

  it('needs less in reserve the more is known', () => {
    fc.assert(
      fc.property(stated, count, fc.integer({ min: 1, max: 100 }), (stating, n, weighed) => {
        const prior = priorUse(stating);
        const known = learnUse(prior, [{ pieces: weighed, usedMl: weighed * stating.meanMl }]);
        expect(reserve(demandOf(known, n, nothingLost), 0.95)).toBeLessThan(
          reserve(demandOf(prior, n, nothingLost), 0.95),
        );
      }),
    );
  });

  it('does not depend on the unit of volume', () => {
    fc.assert(
      fc.property(stated, losses, count, percentages(100), (use, lost, n, k) => {
        const scaled = demandOf(priorUse({ ...use, meanMl: use.meanMl * k }), n, {
          ...lost,
          fixedMl: lost.fixedMl * k,
        });
        const demand = demandOf(priorUse(use), n, lost);
        const batchMl = batchFor(demand, 0.9);
        expect(batchFor(scaled, 0.9) / (batchMl * k)).toBeCloseTo(1, 9);
        expect(shortageChance(scaled, batchMl * k)).toBeCloseTo(0.1, 9);
        expect(leftover(scaled, batchMl * k).mean / (leftover(demand, batchMl).mean * k)).toBeCloseTo(1, 8);
      }),
    );
  });

  it('refuses what it is not defined for', () => {
    const use = priorUse(foam);
    const demand = demandOf(use, 24, nothingLost);
    expect(() => demandOf(use, 0, nothingLost)).toThrow(RangeError);
    expect(() => demandOf(use, 2.5, nothingLost)).toThrow(RangeError);
    expect(() => demandOf({ ...use, shape: 2 }, 2, nothingLost)).toThrow(RangeError);
    expect(() => demandOf(use, 2, { ...nothingLost, fixedMl: -1 })).toThrow(RangeError);
    expect(() => demandOf(use, 2, { ...nothingLost, fixedSpreadPercent: 101 })).toThrow(RangeError);
    expect(() => demandOf(use, 2, { ...nothingLost, trimmingPercent: 100 })).toThrow(RangeError);
    expect(() => batchFor(demand, 1)).toThrow(/certainty is 1; accepted: above 0 and below 1/);
    expect(() => batchFor({ ...demand, scaleMl: 0 }, 0.9)).toThrow(RangeError);
    expect(() => shortageChance(demand, NaN)).toThrow(RangeError);
    expect(() => leftover(demand, -1)).toThrow(RangeError);
    expect(() => leftover({ ...demand, df: 1 }, 500)).toThrow(RangeError);
    expect(() => piecesCovered(use, nothingLost, 500, 0, 10)).toThrow(RangeError);
    expect(() => piecesCovered(use, nothingLost, 500, 0.9, -1)).toThrow(RangeError);
  });
});

describe('the limits of a demand', () => {
  const use = priorUse(foam);
  const demandWith = (lost: Partial<typeof nothingLost>) => demandOf(use, 24, { ...nothingLost, ...lost });

  it('are those of its losses', () => {
    // 40 ± 40 mL: its variance is 1600 mL² above that of the pieces alone.
    const variance = ({ scaleMl, df }: Demand): number => (scaleMl ** 2 * df) / (df - 2);
    const unsure = demandWith({ fixedMl: 40, fixedSpreadPercent: 100 });
    expect(variance(unsure) - variance(demandWith({ fixedMl: 40 }))).toBeCloseTo(1600, 6);
    expect(() => demandWith({ fixedSpreadPercent: -1 })).toThrow(
      'fixedSpreadPercent is -1; accepted: 0 to 100 %',
    );
    expect(() => demandWith({ trimmingPercent: -1 })).toThrow(
      'trimmingPercent is -1; accepted: 0 to below 100 %',
    );
  });

  /** With one degree of freedom Student's t is Cauchy's distribution: a quarter lies beyond one scale. */
  it('are one degree of freedom', () => {
    expect(shortageChance({ meanMl: 500, scaleMl: 25, df: 1 }, 525)).toBeCloseTo(0.25, 9);
    expect(() => shortageChance({ meanMl: 500, scaleMl: 25, df: 0.9 }, 525)).toThrow(
      'df is 0.9; accepted: 1 or more',
    );
  });
});

describe('the pieces that a batch covers', () => {
  it('are as many as it was sized for', () => {
    fc.assert(
      fc.property(stated, losses, count, certainty, (stating, lost, n, sure) => {
        const use = priorUse(stating);
        const batchMl = batchFor(demandOf(use, n, lost), sure);
        expect(piecesCovered(use, lost, batchMl, sure, 2000)).toBe(n);
      }),
    );
  });

  /** Oracle: the definition, by trying every count. Certainties below one half too, for moderate spreads. */
  it('are the most whose chance of running short is small enough', () => {
    const sure = fc.integer({ min: 100, max: 999 }).map((n) => n / 1000);
    const batch = fc.double({ min: 0, max: 5000, noNaN: true });
    fc.assert(
      fc.property(stated, losses, batch, sure, (stating, lost, batchMl, atLeast) => {
        const use = priorUse(stating);
        let most = 0;
        for (let n = 1; n <= 60; n += 1) {
          if (shortageChance(demandOf(use, n, lost), batchMl) <= 1 - atLeast) most = n;
        }
        expect(piecesCovered(use, lost, batchMl, atLeast, 60)).toBe(most);
      }),
    );
  });

  it('are none where not even one is covered, and never more than asked for', () => {
    expect(piecesCovered(priorUse(foam), nothingLost, 0, 0.9, 24)).toBe(0);
    expect(piecesCovered(priorUse(foam), nothingLost, 20, 0.9, 24)).toBe(0);
    expect(piecesCovered(priorUse(foam), nothingLost, 1e6, 0.9, 24)).toBe(24);
    expect(piecesCovered(priorUse(foam), nothingLost, 1e6, 0.9, 0)).toBe(0);
  });
});

describe('what is left of a batch', () => {
  /** Oracle: E[max(b − T, 0)] is the integral of F up to b, here of @stdlib's, by the midpoint rule. */
  it('has the mean of a numerical integral', () => {
    for (const df of [3, 10, 57.8]) {
      for (const batchMl of [400, 470, 500, 560]) {
        const demand = { meanMl: 500, scaleMl: 25, df };
        // Steps that grow with the distance below b, for the heavy tail of 3 degrees of freedom.
        const step = 0.005;
        let integral = 0;
        for (let u = step / 2; u < 14; u += step) {
          integral += studentCdfOracle((batchMl + 1 - Math.exp(u) - 500) / 25, df) * Math.exp(u) * step;
        }
        expect(Math.abs(leftover(demand, batchMl).mean - integral)).toBeLessThan(0.001);
      }
    }
  });

  it('is the batch less the need that is rarely, evenly, mostly exceeded', () => {
    const demand = { meanMl: 500, scaleMl: 25, df: 10 };
    // t₀.₉ with 10 degrees of freedom is 1.372 (NIST/SEMATECH e-Handbook 1.3.6.7.2; from memory).
    const { low, likely, high } = leftover(demand, 560);
    expect(low).toBeCloseTo(60 - 1.372 * 25, 1);
    expect(likely).toBeCloseTo(60, 9);
    expect(high).toBeCloseTo(60 + 1.372 * 25, 1);
  });

  it('is in order, never below nothing, and nothing when the batch is far too small', () => {
    fc.assert(
      fc.property(stated, losses, count, percentages(300), (use, lost, n, percent) => {
        const demand = demandOf(priorUse(use), n, lost);
        const { low, likely, high, mean } = leftover(demand, (demand.meanMl * percent) / 100);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(likely).toBeGreaterThanOrEqual(low);
        expect(high).toBeGreaterThanOrEqual(likely);
        expect(mean).toBeGreaterThanOrEqual(0);
      }),
    );
    const { low, likely, high, mean } = leftover({ meanMl: 500, scaleMl: 5, df: 10 }, 100);
    expect([low, likely, high]).toEqual([0, 0, 0]);
    expect(mean).toBeLessThan(1e-9);
  });
});

describe('at the extremes', () => {
  it('a huge count leaves only the error of the mean: the reserve is a share of the batch', () => {
    const demand = demandOf(priorUse(foam), 1_000_000, nothingLost);
    // The mean is known to 3 %, with 10 degrees of freedom: t₀.₉₅ = 1.812 (NIST 1.3.6.7.2; from memory).
    expect(batchFor(demand, 0.95) / demand.meanMl).toBeCloseTo(1 + 0.03 * 1.812, 4);
  });

  it('a spread and an error of 0.1 % need hardly any reserve', () => {
    const use = priorUse({ meanMl: 20, spreadPercent: 0.1, meanUncertaintyPercent: 0.1 });
    expect(batchFor(demandOf(use, 24, nothingLost), 0.99)).toBeLessThan(480 * 1.003);
    expect(shortageChance(demandOf(use, 24, nothingLost), 479)).toBeGreaterThan(0.95);
  });

  it('trimming of 90 % takes ten times the batch and ten times the reserve', () => {
    const plain = demandOf(priorUse(foam), 24, nothingLost);
    const trimmed = demandOf(priorUse(foam), 24, { ...nothingLost, trimmingPercent: 90 });
    expect(batchFor(trimmed, 0.95) / batchFor(plain, 0.95)).toBeCloseTo(10, 9);
    expect(trimmed.df).toBe(plain.df);
  });

  it('losses that dwarf the pieces make the demand normal', () => {
    const demand = demandOf(priorUse({ ...foam, meanMl: 0.001 }), 1, {
      fixedMl: 1000,
      fixedSpreadPercent: 20,
      trimmingPercent: 0,
    });
    // Φ(1) = 0.841345 (any table of the normal distribution; from memory)
    expect(shortageChance(demand, 1200)).toBeCloseTo(1 - 0.841345, 5);
  });

  it('a certainty next to 0 asks for nothing rather than less', () => {
    const wild = priorUse({ meanMl: 20, spreadPercent: 100, meanUncertaintyPercent: 100 });
    expect(batchFor(demandOf(wild, 1, nothingLost), 0.001)).toBe(0);
  });
});
