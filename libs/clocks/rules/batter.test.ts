import { describe, expect, it } from 'vitest';
import { forecast } from '../forecast.js';
import { referenceInputs, type ClockInputs } from '../inputs.js';
import { paceOf } from '../paces.js';
import type { StateId } from '../states.js';
import { batterRules } from './batter.js';

const given = (state: StateId, inputs: Partial<ClockInputs>) =>
  forecast(state, { ...referenceInputs, ...inputs });

/** The shipped defaults, each worked by hand from medium trace at 9 min. Common practice, no source. */
describe.each<[string, Partial<ClockInputs>, number]>([
  ['lye-on-batter', { lyeConcentrationPercent: 28 }, 12.15],
  ['lye-on-batter', { lyeConcentrationPercent: 35.5 }, 7.875],
  ['lye-on-batter', { lyeConcentrationPercent: 40 }, 5.85],
  ['lye-on-batter', { lyeConcentrationPercent: 50 }, 3.6],
  ['alcohol', { alcoholPercent: 2 }, 5.85],
  ['batter-temperature', { batterTemperatureC: 28 }, 16.2],
  ['batter-temperature', { batterTemperatureC: 43 }, 6.975],
  ['batter-temperature', { batterTemperatureC: 58 }, 2.7],
  ['fragrance', { fragrance: 'mild' }, 7.2],
  ['fragrance', { fragrance: 'brisk' }, 4.5],
  ['fragrance', { fragrance: 'strong' }, 2.25],
  ['fragrance', { fragrance: 'seizing' }, 0.45],
  ['fragrance-slowing', { fragrance: 'slowing' }, 11.7],
  ['fragrance-ricing', { fragrance: 'ricing' }, 7.2],
  ['fragrance-unknown', { fragrance: 'unknown' }, 6.75],
  ['olive-pomace', { olivePomacePercent: 60 }, 4.68],
  ['fats-on-batter', { hardFattyAcidsPercent: 15 }, 17.55],
  ['fats-on-batter', { hardFattyAcidsPercent: 50, oleicPercent: 30 }, 8.55],
  ['lard', { lardPercent: 100, castorPercent: 0 }, 13.05],
  ['free-acids', { freeAcidsPercent: 10 }, 2.25],
  ['wax', { waxPercent: 8 }, 3.6],
  ['clay', { clayPercent: 3 }, 7.65],
  ['sugar', { sugarPercent: 5 }, 5.85],
  ['castor', { castorPercent: 12.5 }, 8.1],
  ['castor', { castorPercent: 20 }, 7.2],
  ['butters', { buttersPercent: 20 }, 8.1],
  ['butters', { buttersPercent: 40 }, 7.2],
  ['sugar', { sugarPercent: 1 }, 8.1],
  ['mixing', { mixing: 'to-emulsion' }, 18],
  ['mixing', { mixing: 'hand' }, 36],
])('%s given %o', (rule, inputs, minutes) => {
  it(`brings medium trace at ${String(minutes)} min`, () => {
    const medium = given('medium-trace', inputs);
    expect(medium.medianMin).toBeCloseTo(minutes, 9);
    expect(medium.reasons.map((reason) => reason.rule)).toEqual([rule]);
  });
});

describe('the rules of the batter', () => {
  it('act for as long as the batter stiffens, but mixing only in the bowl', () => {
    const warm = { batterTemperatureC: 48, mixing: 'hand' } as const;
    expect(given('stiff', warm).reasons.map((reason) => reason.rule)).toEqual([
      'batter-temperature',
      'mixing',
    ]);
    for (const state of ['holds-layer', 'skinned', 'bonds-until', 'piping-skinned'] as const) {
      expect(given(state, warm).reasons.map((reason) => reason.rule)).toEqual(['batter-temperature']);
    }
  });

  it('leave the finished soap alone', () => {
    const acted = new Set(batterRules.flatMap((rule) => rule.acts));
    expect([...acted].filter((state) => !['batter', 'early'].includes(paceOf[state]))).toEqual([]);
  });

  it('say on which side of what they know a batter lies', () => {
    const sides = [25, 28, 58, 65].map((batterTemperatureC) =>
      given('light-trace', { batterTemperatureC }).beyond.map(({ rule, side }) => [rule, side]),
    );
    const rule = 'batter-temperature';
    expect(sides).toEqual([[[rule, 'below']], [], [], [[rule, 'above']]]);
  });
});
