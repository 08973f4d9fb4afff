import { describe, expect, it } from 'vitest';
import { forecast } from '../forecast.js';
import { referenceInputs, type ClockInputs } from '../inputs.js';

/** The shipped defaults, each worked by hand from 72 h. Common practice, no source. */
describe.each<[string, Partial<ClockInputs>, number]>([
  ['lye-on-ash', { lyeConcentrationPercent: 29 }, 90],
  ['lye-on-ash', { lyeConcentrationPercent: 40 }, 50.4],
  ['room-on-ash', { roomTemperatureC: 15 }, 90],
  ['room-on-ash', { roomTemperatureC: 30 }, 54],
  ['humidity-on-ash', { roomHumidityPercent: 65 }, 86.4],
  ['lye-on-ash', { lyeConcentrationPercent: 50 }, 32.4],
  ['air-on-ash', { air: 'still' }, 54],
  ['air-on-ash', { air: 'moving' }, 86.4],
  ['gel-on-ash', { gelPercent: 100 }, 28.8],
])('%s given %o', (rule, inputs, hours) => {
  it(`ends the days of ash at ${String(hours)} h`, () => {
    const safe = forecast('ash-safe', { ...referenceInputs, ...inputs });
    expect(safe.medianMin / 60).toBeCloseTo(hours, 9);
    expect(safe.reasons.map((reason) => reason.rule)).toEqual([rule]);
  });
});
