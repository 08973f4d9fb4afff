import { expect, it } from 'vitest';
import { suretyOf } from './odds-words.js';

it('says every probability in a word, never a surer one for a smaller', () => {
  const order = ['unlikely', 'hardly', 'even', 'rather', 'likely', 'surely'];
  const said = Array.from({ length: 101 }, (_, i) => order.indexOf(suretyOf(i / 100)));
  expect(said[0]).toBe(0);
  expect(said[100]).toBe(5);
  said.slice(1).forEach((place, i) => expect(place).toBeGreaterThanOrEqual(said[i]!));
  expect(new Set(said).size).toBe(order.length);
});
