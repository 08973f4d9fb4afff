import fc from 'fast-check';
import { expect, it } from 'vitest';
import { behaviourTogether, type FragranceBehaviour } from '#chemistry';
import { scent } from '../../../tests/support/scent.js';

type Dose = readonly [percent: number, behaviour: FragranceBehaviour];

const together = (...doses: readonly Dose[]): FragranceBehaviour =>
  behaviourTogether(doses.map(([percent, behaviour]) => scent({ percent, behaviour })));

/** The quickest decides; below a fifth of all it counts as a class milder. */
it.each<[readonly Dose[], FragranceBehaviour]>([
  [[], 'none'],
  [[[0, 'seizing']], 'none'],
  [[[3, 'slowing']], 'slowing'],
  [
    [
      [2, 'mild'],
      [1, 'brisk'],
    ],
    'brisk',
  ],
  [
    [
      [4, 'mild'],
      [1, 'brisk'],
    ],
    'brisk',
  ],
  [
    [
      [4.1, 'mild'],
      [1, 'brisk'],
    ],
    'mild',
  ],
  [
    [
      [4.1, 'none'],
      [1, 'seizing'],
    ],
    'strong',
  ],
  [
    [
      [3, 'slowing'],
      [1, 'none'],
    ],
    'none',
  ],
  [
    [
      [4.1, 'mild'],
      [0.1, 'unknown'],
    ],
    'unknown',
  ],
  [
    [
      [4.1, 'strong'],
      [1, 'unknown'],
    ],
    'strong',
  ],
  [
    [
      [4.1, 'mild'],
      [0.1, 'ricing'],
    ],
    'ricing',
  ],
])('takes %j for %s', (doses, expected) => {
  expect(together(...doses)).toBe(expected);
});

it('takes what was not said for unknown', () => {
  expect(behaviourTogether([{ key: 'a', title: 'A', percent: 2 }])).toBe('unknown');
});

it('does not depend on the order of the list', () => {
  const behaviour = fc.constantFrom<FragranceBehaviour>(
    'none',
    'slowing',
    'mild',
    'strong',
    'ricing',
    'unknown',
  );
  const dose = fc.tuple(fc.integer({ min: 0, max: 5 }), behaviour);
  fc.assert(
    fc.property(fc.array(dose, { maxLength: 8 }), (doses) => {
      expect(together(...doses.toReversed())).toBe(together(...doses));
    }),
    { seed: 1 },
  );
});
