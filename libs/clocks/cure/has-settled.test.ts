import { describe, expect, it } from 'vitest';
import { hasSettled } from './has-settled.js';
import { usualCureRule, type WeighIn } from './weigh-in.js';

// The rule of the trade, “less than about 1 % a week, or three a week apart within 1 g per 100 g”: common practice,
// no source.
describe('a lot that has stopped losing weight', () => {
  it.each<[string, readonly [number, number][], boolean]>([
    [
      'half a percent in a week',
      [
        [0, 1000],
        [28, 905],
        [35, 900.5],
      ],
      true,
    ],
    [
      'two percent in a week',
      [
        [0, 1000],
        [28, 920],
        [35, 901.6],
      ],
      false,
    ],
    [
      'just under one percent in one week, within the noise',
      [
        [28, 1000],
        [35, 991],
      ],
      false,
    ],
    [
      'three a week apart within 1 g per 100 g',
      [
        [21, 1000],
        [28, 999.5],
        [35, 990.4],
      ],
      true,
    ],
    [
      'three a week apart, of which the heaviest and the lightest are just 1 g per 100 g apart',
      [
        [21, 1000],
        [28, 1000],
        [35, 990],
      ],
      true,
    ],
    [
      'three six days apart within 1 g per 100 g: a week, with an evening more or less',
      [
        [23, 1000],
        [29, 999],
        [35, 991],
      ],
      true,
    ],
    [
      'three within 1 g per 100 g, but five and a half days apart',
      [
        [24, 1000],
        [29.5, 999],
        [35, 991],
      ],
      false,
    ],
    [
      'three a week apart, 1.2 g per 100 g apart',
      [
        [21, 1000],
        [28, 997.5],
        [35, 988],
      ],
      false,
    ],
    [
      'equal, but only four days apart',
      [
        [31, 900],
        [35, 900],
      ],
      false,
    ],
    [
      'two days apart, but five from the one before',
      [
        [30, 900.5],
        [33, 900.4],
        [35, 900],
      ],
      true,
    ],
    [
      'a gain of two percent',
      [
        [28, 900],
        [35, 918],
      ],
      false,
    ],
    [
      'three percent over six weeks',
      [
        [0, 1000],
        [42, 970],
      ],
      true,
    ],
    ['a single weighing', [[35, 900]], false],
    ['none', [], false],
    [
      'two of one day',
      [
        [35, 900],
        [35, 900],
      ],
      false,
    ],
    [
      'in any order',
      [
        [35, 900.5],
        [0, 1000],
        [28, 905],
      ],
      true,
    ],
    [
      'two of one day, averaged',
      [
        [28, 905],
        [35, 890],
        [35, 911],
      ],
      true,
    ],
  ])('%s', (_name, rows, settled) => {
    expect(hasSettled(rows.map(weighIn), usualCureRule)).toBe(settled);
  });

  it('is held to a stricter rule when the workshop has one', () => {
    const weighIns = [weighIn([28, 905]), weighIn([35, 900.5])];
    expect(hasSettled(weighIns, { lossPercentPerWeek: 0.5 })).toBe(false);
  });

  it('refuses a rule that nothing can meet', () => {
    expect(() => hasSettled([], { lossPercentPerWeek: 0 })).toThrow(RangeError);
  });
});

function weighIn([days, massG]: readonly [number, number]): WeighIn {
  return { days, massG };
}
