import { expect, it } from 'vitest';
import type { PartHeat } from '#contract';
import { heatNotes } from './heat-notes.js';

const way = (kept: PartHeat['kept'], whole: number, overheats = 0) => ({
  ...{ kept, whole, part: 0, none: 1 - whole, overheats },
});
const keptElse = [way('open', 0.3), way('covered', 0.8), way('wrapped', 0.97, 0.3), way('chilled', 0.1)];

/** What is advised for a part that stands so and is to gel or not. */
function advice(kept: PartHeat['kept'], asked: PartHeat['asked']) {
  const { whole, none, part, overheats } = keptElse.find((each) => each.kept === kept)!;
  const notes = heatNotes({
    ...{ kept, asked, keptElse, overheats, isKeptTold: true, isMade: false, gel: { whole, none, part } },
    hottestC: { low: 60, likely: 70, high: 80 },
    ...{ hottestMin: 120, cooledMin: 300, gelC: 68, aroundC: 20, fatsC: 45 },
    curve: [
      { min: 0, middleC: 38, edgeC: 38 },
      { min: 120, middleC: 70, edgeC: 60 },
      { min: 300, middleC: 39, edgeC: 35 },
    ],
  });
  expect(notes).toContainEqual({ code: 'heat.cooled', min: 300, belowC: 40 });
  return notes.filter(({ code }) => code === 'heat.kept-else' || code === 'heat.pour');
}

it('advises the nearest way that is sure enough, and not the furthest', () => {
  expect(advice('chilled', 'full')).toEqual([
    { code: 'heat.kept-else', kept: 'covered', towards: 'gel', chance: 0.8 },
  ]);
  expect(advice('covered', 'none')).toEqual([
    { code: 'heat.kept-else', kept: 'chilled', towards: 'no-gel', chance: 0.9 },
  ]);
});

it('never advises towels that would overheat it, and cools what overheats before all else', () => {
  expect(advice('open', 'full')).toEqual([
    { code: 'heat.kept-else', kept: 'covered', towards: 'gel', chance: 0.8 },
  ]);
  expect(advice('wrapped', 'full')).toEqual([
    { code: 'heat.kept-else', kept: 'covered', towards: 'no-overheating', chance: 1 },
  ]);
});

it('advises nothing where what is asked for is to be expected', () => {
  expect(advice('covered', 'full')).toEqual([]);
  expect(advice('chilled', 'none')).toEqual([]);
  expect(advice('covered', 'auto')).toEqual([]);
});
