import { expect, it } from 'vitest';
import { heatSpan, timeMarks } from './heat-scales.js';

const heat = {
  curve: [
    { min: 0, middleC: 34, edgeC: 34 },
    { min: 120, middleC: 72, edgeC: 68 },
    { min: 330, middleC: 40, edgeC: 35 },
  ],
  hottestC: { low: 62, likely: 72, high: 81 },
  ...{ hottestMin: 120, gelC: 64, aroundC: 20, isMade: false },
};

it('has the band, the room and the line of gel in sight', () => {
  expect(heatSpan(heat)).toEqual({ min: [0, 330], celsius: [17, 84] });
  expect(heatSpan({ ...heat, gelC: 90 }).celsius).toEqual([17, 93]);
});

it('has no line of gel for soap that is made already', () => {
  expect(heatSpan({ ...heat, gelC: 90, isMade: true }).celsius).toEqual([17, 84]);
});

it('marks as many round times as there is room for', () => {
  expect(timeMarks(330, 6)).toEqual([0, 60, 120, 180, 240, 300]);
  expect(timeMarks(330, 3)).toEqual([0, 120, 240]);
  expect(timeMarks(40, 3)).toEqual([0, 15, 30]);
});
