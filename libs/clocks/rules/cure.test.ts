import { describe, expect, it } from 'vitest';
import { forecast } from '../forecast.js';
import { referenceInputs, type ClockInputs } from '../inputs.js';

const WEEK = 7 * 24 * 60;

/** The shipped defaults, each worked by hand from cured at 5 weeks. Common practice, no source. */
describe.each<[string, Partial<ClockInputs>, number]>([
  ['lye-on-cure', { lyeConcentrationPercent: 25 }, 6.5],
  ['lye-on-cure', { lyeConcentrationPercent: 28 }, 5.75],
  ['lye-on-cure', { lyeConcentrationPercent: 39 }, 4.375],
  ['oleic', { oleicPercent: 55, polyunsaturatedPercent: 0 }, 6.2],
  ['oleic', { oleicPercent: 65, hardFattyAcidsPercent: 15 }, 8.5],
  ['oleic', { oleicPercent: 70, hardFattyAcidsPercent: 15 }, 10],
  ['polyunsaturated', { polyunsaturatedPercent: 60, hardFattyAcidsPercent: 10, oleicPercent: 30 }, 8],
  ['castor-on-cure', { castorPercent: 20 }, 5.75],
  ['superfat-on-cure', { superfatPercent: 0 }, 4.65],
  ['superfat-on-cure', { superfatPercent: 20 }, 6.1],
  ['salt-on-cure', { saltPercent: 100 }, 4],
  ['size-on-cure', { pieceMl: 10 }, 3.5],
  ['size-on-cure', { pieceMl: 6000 }, 15],
  ['room-on-cure', { roomTemperatureC: 10, batterTemperatureC: 38 }, 6.25],
  ['room-on-cure', { roomTemperatureC: 35 }, 3.8],
  ['room-humidity', { roomHumidityPercent: 30 }, 4.25],
  ['room-humidity', { roomHumidityPercent: 65 }, 6.25],
  ['lye-on-cure', { lyeConcentrationPercent: 50 }, 3.75],
  ['air-on-drying', { air: 'still' }, 6.5],
  ['air-on-drying', { air: 'moving' }, 4.1],
  ['gel-on-cure', { gelPercent: 100 }, 4.5],
])('%s given %o', (rule, inputs, weeks) => {
  it(`cures in ${String(weeks)} weeks`, () => {
    const cured = forecast('cured', { ...referenceInputs, ...inputs });
    expect(cured.medianMin / WEEK).toBeCloseTo(weeks, 9);
    expect(cured.reasons.map((reason) => reason.rule)).toEqual([rule]);
  });
});

describe('the rules of the cure', () => {
  it('act alike from the first use of the soap to its best', () => {
    const damp = { ...referenceInputs, roomHumidityPercent: 65, gelPercent: 100 } as const;
    for (const state of ['usable', 'cured', 'best'] as const) {
      expect(forecast(state, damp).reasons.map(({ factor }) => factor)).toEqual([1.25, 0.9]);
    }
  });
});
