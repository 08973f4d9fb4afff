import { describe, expect, it } from 'vitest';
import { forecast } from '../forecast.js';
import { referenceInputs, type ClockInputs } from '../inputs.js';
import type { StateId } from '../states.js';

const given = (state: StateId, inputs: Partial<ClockInputs>) =>
  forecast(state, { ...referenceInputs, ...inputs });

/** The shipped defaults, each worked by hand from firm at 60 h. Common practice, no source. */
describe.each<[string, Partial<ClockInputs>, number]>([
  ['lye-on-set', { lyeConcentrationPercent: 25 }, 96],
  ['lye-on-set', { lyeConcentrationPercent: 30.5 }, 69],
  ['lye-on-set', { lyeConcentrationPercent: 38 }, 48],
  ['sodium-lactate', { sodiumLactatePercent: 1 }, 49.2],
  ['sodium-lactate', { sodiumLactatePercent: 2.5 }, 38.4],
  ['salt-in-mould', { saltPercent: 0.5 }, 55.5],
  ['salt-in-mould', { saltPercent: 2 }, 45],
  ['salt-in-mould', { saltPercent: 25 }, 6],
  ['hard-fatty-acids', { hardFattyAcidsPercent: 15 }, 120],
  ['hard-fatty-acids', { hardFattyAcidsPercent: 60 }, 48],
  ['room-temperature', { roomTemperatureC: 15 }, 81],
  ['room-temperature', { roomTemperatureC: 30 }, 39],
  ['gel-on-set', { gel: 'full' }, 36],
  ['mould', { mould: 'lined-wood' }, 39],
  ['mould', { mould: 'lined-carton' }, 45],
  ['mould', { mould: 'rigid-plastic' }, 75],
])('%s given %o', (rule, inputs, hours) => {
  it(`makes a piece firm at ${String(hours)} h`, () => {
    const firm = given('firm', inputs);
    expect(firm.medianMin / 60).toBeCloseTo(hours, 9);
    expect(firm.reasons.map((reason) => reason.rule)).toEqual([rule]);
  });
});

describe('the rules of setting', () => {
  const all: Partial<ClockInputs> = {
    lyeConcentrationPercent: 38,
    sodiumLactatePercent: 2,
    saltPercent: 1,
    hardFattyAcidsPercent: 60,
    roomTemperatureC: 25,
    gel: 'full',
    mould: 'lined-wood',
  };
  const inTheMould = [
    'lye-on-set',
    'sodium-lactate',
    'salt-in-mould',
    'hard-fatty-acids',
    'room-temperature',
    'gel-on-set',
    'mould',
  ];
  const inTheOpen = [
    'lye-on-set',
    'sodium-lactate',
    'salt-in-the-open',
    'hard-fatty-acids',
    'room-temperature',
  ];

  it.each<[StateId, string[]]>([
    ['light-trace', ['lye-on-batter']],
    ['holds-layer', ['lye-on-batter']],
    ['skinned', ['lye-on-batter', 'room-temperature']],
    ['bonds-until', ['lye-on-batter', 'sodium-lactate', 'hard-fatty-acids', 'room-temperature']],
    ['ash-safe', ['lye-on-ash', 'room-on-ash', 'gel-on-ash']],
    ['patchable', inTheMould],
    ['firm', inTheMould],
    ['pliable-until', inTheMould],
    ['handled', inTheMould],
    ['cuttable', inTheMould],
    ['cuttable-until', inTheMould],
    ['coat-tacky-until', inTheOpen],
    ['coat-turnable', inTheOpen],
    ['piping-skinned', ['lye-on-batter', 'room-temperature']],
    ['piping-firm', inTheOpen],
    ['piping-turnable', inTheOpen],
    ['glaze-set', ['room-on-glaze']],
    ['glaze-turnable', ['room-on-glaze']],
    ['usable', ['lye-on-cure', 'gel-on-cure']],
    ['cured', ['lye-on-cure', 'gel-on-cure']],
    ['best', ['lye-on-cure', 'gel-on-cure']],
  ])('move %s by the rules meant for it', (state, expected) => {
    expect(given(state, all).reasons.map((reason) => reason.rule)).toEqual(expected);
  });

  it('say that salt beyond 2 % is not known for coats, though it is for blocks', () => {
    expect(given('coat-turnable', { saltPercent: 30 }).beyond).toHaveLength(1);
    expect(given('cuttable', { saltPercent: 30 }).beyond).toEqual([]);
  });

  /**
   * Newton's law of cooling: from 55 °C to 40 °C in a room at T takes a time proportional to
   * ln((55 − T) / (40 − T)). Both temperatures are from memory.
   */
  it.each([10, 30])('let a glaze set as it cools in a room of %d °C', (room) => {
    const cooling = (at: number): number => Math.log((55 - at) / (40 - at));
    const factor = given('glaze-set', { roomTemperatureC: room }).medianMin / 30;
    expect(factor).toBeCloseTo(cooling(room) / cooling(20), 1);
  });
});
