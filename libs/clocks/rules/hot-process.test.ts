import { describe, expect, it } from 'vitest';
import { forecast } from '../forecast.js';
import { checkInputs } from '../check-inputs.js';
import { referenceInputs, type ClockInputs } from '../inputs.js';
import type { StateId } from '../states.js';

const HOUR = 60;
const DAY = 24 * HOUR;
const WEEK = 7 * DAY;

/** Cooked soap in a lined loaf, with the water that it usually has. */
const loaf: ClockInputs = { ...referenceInputs, lyeConcentrationPercent: 30, mould: 'lined-wood' };
const given = (state: StateId, inputs: Partial<ClockInputs>) => forecast(state, { ...loaf, ...inputs });
const likely = (state: StateId, inputs: Partial<ClockInputs>): number => given(state, inputs).medianMin;

describe('cooked soap, by common practice (no source)', () => {
  const cooked = { process: 'cooked' } as const;

  it('is unmoulded and cut the next morning, not after days, and not before it is cold', () => {
    for (const state of ['firm', 'cuttable'] as const) {
      expect(likely(state, cooked)).toBeGreaterThan(4 * HOUR);
      expect(likely(state, cooked)).toBeLessThan(24 * HOUR);
    }
    expect(likely('firm', {})).toBeGreaterThan(36 * HOUR);
  });

  it('still cures for weeks: one or two at the least, as long as any other for many', () => {
    const { medianMin, sigma } = given('cured', cooked);
    expect(medianMin).toBeGreaterThan(2 * WEEK);
    expect(medianMin).toBeLessThan(4.5 * WEEK);
    const [low, high] = [-1.2816, 1.2816].map((z) => medianMin * Math.exp(z * sigma));
    expect(low).toBeGreaterThan(1 * WEEK);
    expect(low).toBeLessThan(2.5 * WEEK);
    expect(high).toBeGreaterThan(5 * WEEK);
  });

  it('has no ash to speak of', () => {
    expect(likely('ash-safe', cooked)).toBeLessThan(6 * HOUR);
    expect(likely('ash-safe', {})).toBeGreaterThan(2 * DAY);
  });

  it('is hurried by nothing that hurries batter, once it is in its mould', () => {
    const hurried = { batterTemperatureC: 80, fragrance: 'seizing', sugarPercent: 3, gel: 'full' } as const;
    for (const state of ['holds-layer', 'skinned', 'bonds-until', 'ash-safe', 'firm', 'cured'] as const)
      expect(likely(state, { ...cooked, ...hurried }), state).toBe(likely(state, cooked));
    // Before it is cooked it is batter like any other.
    expect(likely('light-trace', { ...cooked, batterTemperatureC: 48 })).toBeLessThan(
      likely('light-trace', cooked),
    );
  });

  it('may be as hot as it is cooked, which batter that is poured may not', () => {
    const hot = { ...loaf, batterTemperatureC: 85 };
    expect(checkInputs({ ...hot, process: 'cooked' })).toEqual([]);
    expect(checkInputs(hot)).toMatchObject([
      { code: 'clocks.out-of-range', path: ['batterTemperatureC'], value: 85, accepted: { high: 75 } },
    ]);
    expect(checkInputs({ ...hot, batterTemperatureC: 75 })).toEqual([]);
  });
});

describe('soap that was melted again, by common practice (no source)', () => {
  const rebatched = { process: 'rebatched' } as const;

  it('is slower to firm than cooked soap: a day or two', () => {
    expect(likely('firm', rebatched)).toBeGreaterThan(2 * likely('firm', { process: 'cooked' }));
    expect(likely('firm', rebatched)).toBeGreaterThan(18 * HOUR);
    expect(likely('firm', rebatched)).toBeLessThan(48 * HOUR);
  });

  it('cures for two to four weeks', () => {
    expect(likely('cured', rebatched)).toBeGreaterThan(2 * WEEK);
    expect(likely('cured', rebatched)).toBeLessThan(4 * WEEK);
  });

  it('has no ash to speak of', () => {
    expect(likely('ash-safe', rebatched)).toBeLessThan(6 * HOUR);
  });
});
