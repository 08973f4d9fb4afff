import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyInputs } from '../../tests/support/clock-inputs.js';
import { floorShares, liftOf } from './floor.js';
import { forecast } from './forecast.js';
import { referenceInputs } from './inputs.js';
import type { StateId } from './states.js';

fc.configureGlobal({ seed: 1843 });

const floored = Object.entries(floorShares) as [StateId, number][];

describe('a floor', () => {
  it('holds whatever the batch', () => {
    fc.assert(
      fc.property(fc.constantFrom(...floored), anyInputs, ([state, share], inputs) => {
        const { medianMin } = forecast(state, inputs);
        expect(medianMin).toBeGreaterThanOrEqual(share * 60 * 0.999999);
        expect(medianMin).toBeGreaterThanOrEqual(share * inputs.hotHours * 60 * 0.999999);
        const gelPercent = inputs.process === 'cold' ? inputs.gelPercent : 0;
        expect(medianMin).toBeGreaterThanOrEqual(share * (60 + 1.8 * gelPercent) * 0.999999);
      }),
      { numRuns: 2000 },
    );
  });

  it('leaves what is twice as long alone, and is a reason like another where it counts', () => {
    expect(liftOf('firm', 2 * 66, referenceInputs)).toBeUndefined();
    const hot = forecast('firm', { ...referenceInputs, hotHours: 100 });
    // 60 h against a floor of 110 h: ln 110 + (ln 2 − ln (110/60))² / (4 ln 2).
    const bent = (Math.LN2 - Math.log(110 / 60)) ** 2 / (4 * Math.LN2);
    expect(hot.medianMin / 60).toBeCloseTo(110 * Math.exp(bent), 9);
    expect(hot.reasons).toMatchObject([
      { rule: 'hot-soap', input: 'hotHours', value: 100, usual: 0, isFloor: true },
    ]);
  });

  it('is the floor itself far below it, and has no corner on the way', () => {
    expect((liftOf('cuttable', 1, referenceInputs)?.factor ?? 1) * 1).toBeCloseTo(60, 9);
    const lifted = (min: number) => min * (liftOf('cuttable', min, referenceInputs)?.factor ?? 1);
    const slopes = Array.from({ length: 200 }, (_, i) => {
      const min = 20 * 1.01 ** i;
      return Math.log(lifted(min * 1.01) / lifted(min)) / Math.log(1.01);
    });
    for (const [i, slope] of slopes.entries()) {
      expect(slope).toBeGreaterThanOrEqual(-1e-9);
      expect(slope).toBeLessThanOrEqual(1 + 1e-9);
      expect(Math.abs(slope - (slopes[i - 1] ?? slope))).toBeLessThan(0.02);
    }
  });
});
