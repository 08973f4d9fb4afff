import { describe, expect, it } from 'vitest';
import { checkWeighIns } from './check-weigh-ins.js';
import type { WeighIn } from './weigh-in.js';

const rows = (...pairs: [days: number, massG: number][]): WeighIn[] =>
  pairs.map(([days, massG]) => ({ days, massG }));
const fine = rows([0, 1000], [7, 960]);

describe('weighings of one lot', () => {
  it('pass on one day as on several, in any order, with what is known besides', () => {
    expect(checkWeighIns(fine, {})).toEqual([]);
    expect(checkWeighIns(rows([3, 1], [3, 500]), {})).toEqual([]);
    expect(checkWeighIns(rows([7, 960], [0, 1000]), { waterShare: 0.999, scaleSdG: 0.01 })).toEqual([]);
  });

  it('are too few when there is one', () => {
    expect(checkWeighIns(rows([0, 1000]), {})).toEqual([
      {
        code: 'cure.too-few-weighings',
        path: ['weighIns'],
        value: 1,
        accepted: { kind: 'range', low: 2 },
        count: 1,
      },
    ]);
  });

  it.each([-0.5, Infinity, NaN])('are refused on day %d, and which one it was is told', (days) => {
    expect(checkWeighIns([...fine, { days, massG: 950 }], {})).toEqual([
      {
        code: 'cure.day-out-of-range',
        path: ['weighIns', 2, 'days'],
        value: days,
        accepted: { kind: 'range', low: 0 },
      },
    ]);
  });

  it.each([0, -5, Infinity, NaN])('are refused with a mass of %d g', (massG) => {
    expect(checkWeighIns([...fine, { days: 14, massG }], {})).toEqual([
      {
        code: 'cure.mass-out-of-range',
        path: ['weighIns', 2, 'massG'],
        value: massG,
        accepted: { kind: 'range', low: 0, isOpen: true, unit: 'g' },
      },
    ]);
  });

  it.each([0, 1, -0.2, 1.5, NaN])('are refused with a water share of %d', (waterShare) => {
    expect(checkWeighIns(fine, { waterShare })).toEqual([
      {
        code: 'cure.water-share-out-of-range',
        path: ['waterShare'],
        value: waterShare,
        accepted: { kind: 'range', low: 0, high: 1, isOpen: true },
      },
    ]);
  });

  it.each([0, -1, Infinity, NaN])('are refused with scales of ± %d g', (scaleSdG) => {
    expect(checkWeighIns(fine, { scaleSdG })).toEqual([
      {
        code: 'cure.scale-out-of-range',
        path: ['scaleSdG'],
        value: scaleSdG,
        accepted: { kind: 'range', low: 0, isOpen: true, unit: 'g' },
      },
    ]);
  });

  it('are complained of all at once, but not compared while a value is wrong', () => {
    const codes = checkWeighIns(rows([0, 100], [-1, 0], [9, 500]), { waterShare: 2 }).map(({ code }) => code);
    expect(codes).toEqual([
      'cure.day-out-of-range',
      'cure.mass-out-of-range',
      'cure.water-share-out-of-range',
    ]);
  });
});

describe('weighings of different days', () => {
  // 3 % more is what damp air and scales account for: 800 g · 1.03 = 824 g.
  it('may gain 3 % above the lightest of an earlier day, and no more', () => {
    const lot = (massG: number) => rows([0, 900], [7, 800], [14, massG]);
    expect(checkWeighIns(lot(824), {})).toEqual([]);
    expect(checkWeighIns(lot(825), {})).toEqual([
      {
        code: 'cure.mass-gained',
        path: ['weighIns', 2, 'massG'],
        value: 825,
        massG: 825,
        days: 14,
        accepted: { kind: 'range', low: 0, high: 824, unit: 'g' },
        mostG: 824,
      },
    ]);
  });

  // The heaviest is 1000 g. 20 % water and 3 % more: 770 g is left; not known, 35 % and 3 % more: 620 g.
  it.each([
    [0.2, 770],
    [undefined, 620],
  ])('may lose a water share of %s and 3 % more, and no more', (waterShare, leastG) => {
    const options = waterShare === undefined ? {} : { waterShare };
    const lot = (massG: number) => rows([14, massG], [0, 1000], [7, 990]);
    expect(checkWeighIns(lot(leastG), options)).toEqual([]);
    expect(checkWeighIns(lot(leastG - 0.5), options)).toEqual([
      {
        code: 'cure.lost-more-than-water',
        path: ['weighIns', 0, 'massG'],
        value: leastG - 0.5,
        massG: leastG - 0.5,
        days: 14,
        accepted: { kind: 'range', low: expect.closeTo(leastG, 9) as number, unit: 'g' },
        leastG: expect.closeTo(leastG, 9) as number,
      },
    ]);
  });

  it('are compared with earlier days only: two of one day may differ', () => {
    expect(checkWeighIns(rows([0, 1000], [7, 980], [7, 700]), {})).toEqual([]);
  });
});
