import { describe, expect, it } from 'vitest';
import { checkInputs, demandChecked } from './check-inputs.js';
import { referenceInputs, type ClockInputs } from './inputs.js';

const given = (inputs: Partial<ClockInputs>) => checkInputs({ ...referenceInputs, ...inputs });

describe('inputs', () => {
  it('pass at the reference point and at the ends of their ranges', () => {
    expect(given({})).toEqual([]);
    expect(given({ lyeConcentrationPercent: 20, saltPercent: 100, roomTemperatureC: 5 })).toEqual([]);
    expect(given({ lyeConcentrationPercent: 50, sodiumLactatePercent: 5, batterTemperatureC: 75 })).toEqual(
      [],
    );
  });

  it('are refused with field, value and range', () => {
    expect(given({ lyeConcentrationPercent: 60 })).toEqual([
      {
        code: 'clocks.out-of-range',
        path: ['lyeConcentrationPercent'],
        value: 60,
        accepted: { kind: 'range', low: 20, high: 50, unit: '%' },
        ...{ input: 'lyeConcentrationPercent', found: 60, unit: '%' },
      },
    ]);
  });

  it.each([
    ['sodiumLactatePercent', -1],
    ['saltPercent', 101],
    ['sugarPercent', 61],
    ['superfatPercent', 101],
    ['castMl', -1],
    ['coatMm', 51],
    ['gelPercent', 101],
    ['hotHours', 401],
    ['hardFattyAcidsPercent', -0.1],
    ['oleicPercent', Number.NaN],
    ['castorPercent', -5],
    ['buttersPercent', Infinity],
    ['olivePomacePercent', 120],
    ['batterTemperatureC', 90],
    ['roomTemperatureC', 40],
    ['roomHumidityPercent', 100],
  ] as const)('are refused when %s is %d', (field, value) => {
    expect(given({ [field]: value })).toMatchObject([{ code: 'clocks.out-of-range', path: [field], value }]);
  });

  it.each(['mould', 'fragrance', 'mixing'] as const)('are refused when %s is no known one', (field) => {
    // What a run file might carry before its schema is checked.
    const inputs = { ...referenceInputs, [field]: 'toString' };
    expect(checkInputs(inputs)).toMatchObject([{ code: 'clocks.unknown-choice', path: [field] }]);
  });

  it('are refused with the choices that there are', () => {
    expect(checkInputs({ ...referenceInputs, mixing: 'whisk' as never })).toEqual([
      {
        ...{ code: 'clocks.unknown-choice', path: ['mixing'], value: 'whisk', input: 'mixing' },
        accepted: { kind: 'one-of', values: ['blender', 'to-emulsion', 'hand'] },
      },
    ]);
  });

  it('are refused when shares of one whole exceed it', () => {
    expect(given({ hardFattyAcidsPercent: 50, oleicPercent: 46 })).toEqual([
      {
        ...{ code: 'clocks.more-than-whole', path: ['hardFattyAcidsPercent'], value: 106, sum: 106 },
        ...{ inputs: ['hardFattyAcidsPercent', 'oleicPercent', 'polyunsaturatedPercent'] },
        accepted: { kind: 'range', low: 0, high: 100, unit: '%' },
      },
    ]);
    expect(given({ hardFattyAcidsPercent: 50, oleicPercent: 45 })).toEqual([]);
    expect(given({ castorPercent: 40, buttersPercent: 40, olivePomacePercent: 40 })).toMatchObject([
      { code: 'clocks.more-than-whole', path: ['castorPercent'], value: 120 },
    ]);
  });

  it('are refused when the batter is far colder than the room', () => {
    expect(given({ batterTemperatureC: 20, roomTemperatureC: 35 })).toEqual([
      {
        ...{ code: 'clocks.batter-colder-than-room', path: ['batterTemperatureC'], value: 20 },
        ...{ accepted: { kind: 'range', low: 25, unit: '°C' }, batterC: 20, roomC: 35 },
      },
    ]);
    expect(given({ batterTemperatureC: 25, roomTemperatureC: 35 })).toEqual([]);
  });

  it('are complained of all at once', () => {
    expect(given({ lyeConcentrationPercent: 5, saltPercent: -1 }).map((issue) => issue.path)).toEqual([
      ['lyeConcentrationPercent'],
      ['saltPercent'],
    ]);
  });

  it('that were not checked are refused by whoever needs them checked, with all that is wrong', () => {
    expect(() => {
      demandChecked({ ...referenceInputs, saltPercent: -1, mixing: 'whisk' as never });
    }).toThrow(new RangeError('clocks.out-of-range at saltPercent, clocks.unknown-choice at mixing'));
    expect(() => {
      demandChecked(referenceInputs);
    }).not.toThrow();
  });
});
