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
  ['lye-on-set', { lyeConcentrationPercent: 50 }, 33],
  ['hard-fats-in-gel', { hardGelPercent: 50 }, 49.5],
  ['sodium-lactate', { sodiumLactatePercent: 1 }, 49.2],
  ['sodium-lactate', { sodiumLactatePercent: 2.5 }, 38.4],
  ['salt-in-mould', { saltPercent: 0.5 }, 55.5],
  ['salt-in-mould', { saltPercent: 2 }, 45],
  ['salt-in-mould', { saltPercent: 25 }, 6],
  ['hard-fatty-acids', { hardFattyAcidsPercent: 15 }, 120],
  ['hard-fatty-acids', { hardFattyAcidsPercent: 60, oleicPercent: 30 }, 48],
  ['room-temperature', { roomTemperatureC: 15 }, 81],
  ['room-temperature', { roomTemperatureC: 30 }, 39],
  ['gel-on-set', { gelPercent: 100 }, 36],
  ['gel-on-set', { gelPercent: 50 }, 48],
  ['batter-on-set', { batterTemperatureC: 29 }, 63.6],
  ['batter-on-set', { batterTemperatureC: 55 }, 52.8],
  ['koh-on-set', { kohSharePercent: 10 }, 81],
  ['cast-size', { castMl: 10 }, 70.8],
  ['cast-size', { castMl: 6000 }, 51],
  ['mould', { mould: 'lined-wood' }, 43.2],
  ['mould', { mould: 'lined-carton' }, 49.8],
  ['mould', { mould: 'rigid-plastic' }, 75],
])('%s given %o', (rule, inputs, hours) => {
  it(`makes a piece firm at ${String(hours)} h`, () => {
    const firm = given('firm', inputs);
    expect(firm.medianMin / 60).toBeCloseTo(hours, 9);
    expect(firm.reasons.map((reason) => reason.rule)).toEqual([rule]);
  });
});

/** Of what stands open, each worked by hand from its base. Common practice, no source. */
it.each<[StateId, Partial<ClockInputs>, number]>([
  ['coat-turnable', { coatMm: 0.5 }, 6 * 60],
  ['coat-turnable', { coatMm: 20 }, 30 * 60],
  ['piping-firm', { beadMm: 30 }, 21.6 * 60],
  ['glaze-set', { meltMl: 0.5 }, 16.5],
  ['glaze-set', { meltMl: 200 }, 90],
  ['cuttable-until', { hardFattyAcidsPercent: 80, oleicPercent: 10 }, 33 * 60],
  ['holds-layer', { saltPercent: 25 }, 14],
])('%s given %o comes at %d min', (state, inputs, minutes) => {
  expect(given(state, inputs).medianMin).toBeCloseTo(minutes, 9);
});

describe('the rules of setting', () => {
  const all: Partial<ClockInputs> = {
    lyeConcentrationPercent: 38,
    sodiumLactatePercent: 2,
    saltPercent: 1,
    hardFattyAcidsPercent: 50,
    roomTemperatureC: 25,
    gelPercent: 100,
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
  const curing = ['lye-on-cure', 'salt-on-cure', 'room-on-cure', 'gel-on-cure'];
  const early = ['lye-on-batter', 'fats-on-batter'];

  it.each<[StateId, string[]]>([
    ['light-trace', early],
    ['holds-layer', early],
    ['skinned', [...early, 'room-temperature']],
    ['bonds-until', ['lye-on-batter', 'sodium-lactate', 'hard-fatty-acids', 'room-temperature']],
    ['ash-safe', ['lye-on-ash', 'room-on-ash', 'gel-on-ash']],
    ['patchable', [...inTheMould, 'gel-cools']],
    ['firm', inTheMould],
    ['pliable-until', inTheMould],
    ['handled', inTheMould],
    ['cuttable', [...inTheMould, 'gel-cools']],
    ['cuttable-until', inTheMould.map((rule) => (rule === 'hard-fatty-acids' ? 'cutting-end' : rule))],
    ['coat-tacky-until', inTheOpen],
    ['coat-turnable', inTheOpen],
    ['piping-skinned', [...early, 'room-temperature']],
    ['piping-firm', inTheOpen],
    ['piping-turnable', inTheOpen],
    ['glaze-set', ['room-on-glaze']],
    ['glaze-turnable', ['room-on-glaze']],
    ['usable', curing],
    ['cured', curing],
    ['best', curing],
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
