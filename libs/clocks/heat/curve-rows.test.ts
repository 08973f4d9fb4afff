import fc from 'fast-check';
import { expect, it } from 'vitest';
import { curveRows } from './curve-rows.js';

fc.configureGlobal({ seed: 1843 });

const line = (lastMin: number) => [
  { min: 0, middleC: 40, edgeC: 40 },
  { min: lastMin / 3, middleC: 70, edgeC: 60 },
  { min: lastMin, middleC: 40, edgeC: 30 },
];

it('takes round times and the hottest, in order, with what lies between two points', () => {
  expect(curveRows(line(360), 125)).toEqual([
    { min: 0, middleC: 40, edgeC: 40 },
    { min: 60, middleC: 55, edgeC: 50 },
    { min: 125, middleC: expect.closeTo(69.375, 9), edgeC: expect.closeTo(59.375, 9) },
    { min: 180, middleC: 62.5, edgeC: 52.5 },
    { min: 240, middleC: 55, edgeC: 45 },
    { min: 300, middleC: 47.5, edgeC: 37.5 },
    { min: 360, middleC: 40, edgeC: 30 },
  ]);
  expect(curveRows([], 0)).toEqual([]);
  expect(curveRows(line(360).slice(0, 1), 0)).toHaveLength(1);
});

it('never has more than nine rows, nor one that is not on the curve', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 40_000 }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (last, at) => {
        const rows = curveRows(line(last), at * last);
        expect(rows.length).toBeLessThanOrEqual(9);
        expect(rows.map(({ min }) => min)).toEqual(rows.map(({ min }) => min).sort((a, b) => a - b));
        for (const { min, middleC } of rows) {
          expect(min).toBeLessThanOrEqual(last);
          expect(middleC).toBeGreaterThanOrEqual(40);
          expect(middleC).toBeLessThanOrEqual(70);
        }
      },
    ),
  );
});
