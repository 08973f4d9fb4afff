import lognormalQuantile from '@stdlib/stats-base-dists-lognormal-quantile';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyInputs } from '../../tests/support/clock-inputs.js';
import { band, quantile } from './engine/quantile.js';
import { forecast, type Reason } from './forecast.js';
import { referenceInputs } from './inputs.js';
import { ofTypicalWorkshop, withOffset } from './offset.js';
import { stateIds } from './states.js';

fc.configureGlobal({ seed: 1843 });

const reason: Reason = {
  rule: 'lesson',
  input: 'log',
  value: 4,
  usual: 0,
  factor: 1,
  evidence: { kind: 'bench log' },
};
const firm = forecast('firm', { ...referenceInputs, sodiumLactatePercent: 2 });

describe('a forecast with what a log has taught', () => {
  /** By hand: 60 h · 0.68 · 1.25 = 51 h; σ² = (0.8 · 0.25)² + 0.12² = 0.0544, of which 0.12² − 0.05² are the recipe’s. */
  it('moves by the offset and keeps only what is still not known of it', () => {
    const learned = withOffset(firm, {
      ...{ mean: Math.log(1.25), sd: 0.12, sharedSd: 0.05, spread: 0.8, reason },
    });
    expect(learned.medianMin / 60).toBeCloseTo(51, 10);
    expect(learned.sigma).toBeCloseTo(Math.sqrt(0.0544), 12);
    expect(learned.batchSigma).toBeCloseTo(0.2, 12);
    expect(learned.recipeSigma).toBeCloseTo(Math.sqrt(0.0119), 12);
    expect(learned.sharedSigma).toBeCloseTo(0.05, 12);
    expect(learned.reasons.at(-1)).toMatchObject({ rule: 'lesson', input: 'log', value: 4 });
    expect(learned.reasons.at(-1)?.factor).toBeCloseTo(1.25, 12);
  });

  it('has the product of its reasons as its likely value, to the last digit', () => {
    const offset = fc.record({
      mean: fc.integer({ min: -200, max: 200 }).map((n) => n / 100),
      sd: fc.integer({ min: 10, max: 40 }).map((n) => n / 100),
      sharedSd: fc.integer({ min: 0, max: 10 }).map((n) => n / 100),
      spread: fc.integer({ min: 20, max: 300 }).map((n) => n / 100),
      reason: fc.constant(reason),
    });
    fc.assert(
      fc.property(fc.constantFrom(...stateIds), anyInputs, offset, (state, inputs, taught) => {
        const f = withOffset(forecast(state, inputs), taught);
        expect(f.reasons.reduce((so, { factor }) => so * factor, f.baseMin)).toBe(f.medianMin);
        expect(f.sigma).toBeGreaterThanOrEqual(f.batchSigma);
      }),
    );
  });

  it('taught nothing at all, is the forecast itself', () => {
    const untaught = withOffset(firm, {
      ...{ mean: 0, sd: Math.hypot(0.35, 0.15, firm.ruleSigma), sharedSd: 0.35, spread: 1, reason },
    });
    expect(untaught.medianMin).toBe(firm.medianMin);
    expect(untaught.sigma).toBeCloseTo(firm.sigma, 12);
  });

  it('refuses an offset that is none', () => {
    const fit = { mean: 0, sd: 0.1, sharedSd: 0.1, spread: 1, reason };
    expect(withOffset(firm, fit).sigma).toBeGreaterThan(0);
    for (const bad of [{ mean: NaN }, { sd: -0.1, sharedSd: -0.1 }, { sharedSd: 0.2 }, { spread: 0 }]) {
      expect(() => withOffset(firm, { ...fit, ...bad })).toThrow(RangeError);
    }
  });
});

describe('a forecast for a typical workshop', () => {
  /** Oracle: the log-normal quantile of the @stdlib statistics library; σ² = 0.25² + 0.10² as worked by hand. */
  it('varies only from batch to batch', () => {
    const sigma = Math.sqrt(0.0725);
    for (const p of [0.05, 0.1, 0.5, 0.9]) {
      const theirs = lognormalQuantile(p, Math.log(60 * 60 * 0.68), sigma);
      expect(quantile(ofTypicalWorkshop(firm), p) / theirs).toBeCloseTo(1, 9);
    }
  });

  it('lies within the band for any workshop, around the same likely value', () => {
    const [typical, any] = [band(ofTypicalWorkshop(firm)), band(firm)];
    expect(typical.likely).toBe(any.likely);
    expect(any.low).toBeLessThan(typical.low);
    expect(any.high).toBeGreaterThan(typical.high);
  });

  /** Simulation by sums of normal draws at fixed quantiles: the middle of each of 60 equal shares, thrice. */
  it('spreads over workshops and recipes as their priors say', () => {
    const shares = Array.from({ length: 60 }, (_, i) => quantile({ medianMin: 1, sigma: 1 }, (i + 0.5) / 60));
    const z = shares.map((share) => Math.log(share));
    const within = z.flatMap((batch) =>
      z.flatMap((workshop) =>
        z.map((recipe) => Math.abs(Math.sqrt(0.0725) * batch + 0.35 * workshop + 0.15 * recipe)),
      ),
    );
    const { high } = band(firm);
    const inside = within.filter((deviation) => deviation <= Math.log(high / firm.medianMin)).length;
    expect(inside / within.length).toBeCloseTo(0.8, 2);
  });
});
