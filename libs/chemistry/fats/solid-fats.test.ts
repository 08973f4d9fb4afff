import { expect, it } from 'vitest';
import { fatTable } from './fat-table.js';
import { solidFatsPercent } from './fat-profile.js';

it('counts fats that are solid in a room: coconut, palm, butters and waxes, no oils', () => {
  // Common practice, no source: these are melted, olive and castor oil are stirred in as they are.
  const shares = [
    ...[
      { fat: 'olive', percent: 40 },
      { fat: 'castor', percent: 5 },
    ],
    ...[
      { fat: 'coconut', percent: 25 },
      { fat: 'palm', percent: 22 },
    ],
    ...[
      { fat: 'shea-butter', percent: 5 },
      { fat: 'beeswax', percent: 3 },
    ],
  ];
  expect(solidFatsPercent({ fats: shares }, fatTable([]))).toBeCloseTo(55, 9);
  expect(solidFatsPercent({ fats: [{ fat: 'olive', percent: 100 }] }, fatTable([]))).toBe(0);
});
