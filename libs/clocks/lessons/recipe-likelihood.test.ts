import { expect, it } from 'vitest';
import { gridFor } from './cells.js';
import { recipeLikelihood, type PlacedBatch } from './recipe-likelihood.js';

/** Some between two looks, some that may have been looked at without a word; more of each than are multiplied at once. */
const batches = Array.from({ length: 40 }, (_, i): PlacedBatch => {
  const at = 0.3 * Math.sin(i);
  const ends = i % 2 === 0 ? [at + 0.2, at - 0.2] : [at + 0.3, at, at - 0.4];
  const weights = [0.9, 0.2].map((share) => (i % 2 === 0 ? [share] : [share, 1 - share]));
  return { sigma: 0.25, stretches: { ends, weights } };
});
const grid = gridFor([-1, 1]);
const of = (some: readonly PlacedBatch[]): Float64Array[][] =>
  recipeLikelihood(some, { spreads: [0.5, 1.2], habits: 2, slips: 0.05 }, grid);

it('is the product over batches, in logarithms, for every spread, habit and offset', () => {
  const all = of(batches);
  const each = batches.map((batch) => of([batch]));
  all.forEach((habits, j) => {
    habits.forEach((logs, h) => {
      logs.forEach((log, i) => {
        expect(log).toBeCloseTo(
          each.reduce((sum, one) => sum + one[j]![h]![i]!, 0),
          6,
        );
      });
    });
  });
});
