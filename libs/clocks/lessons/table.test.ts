import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evidenceOf, type RecipeEvidence } from './evidence.js';
import { learnFrom } from './learn.js';
import type { Observation } from './observation.js';

fc.configureGlobal({ seed: 1877 });

/** Looks at batches whose pace lies about one offset, as a workshop's log has them. */
const logOf = (count: number) =>
  fc
    .record({
      offset: fc.integer({ min: -80, max: 80 }).map((n) => n / 100),
      sigma: fc.constantFrom(0.2, 0.25, 0.3, 0.35, 0.4),
      looks: fc.array(
        fc.record({
          off: fc.integer({ min: -60, max: 60 }),
          kind: fc.constantFrom('above', 'below', 'both'),
        }),
        { minLength: count, maxLength: count },
      ),
    })
    .map(({ offset, sigma, looks }) =>
      looks.map(({ off, kind }): Observation => {
        const at = offset + off / 100;
        return {
          ...{ recipe: 'tiles', sigma, entries: [] },
          ...(kind !== 'below' && { above: at - 0.1 }),
          ...(kind !== 'above' && { below: at + 0.1 }),
        };
      }),
    );

describe('many censored observations in a table', () => {
  it.each([10, 60, 200])(
    '%i of them teach what they teach one by one, to a thousandth of the doubt',
    (count) => {
      fc.assert(
        fc.property(logOf(count), (looks) => {
          const evidence = evidenceOf(looks);
          expect(evidence.get('tiles')).toMatchObject({ batches: count, censored: [] });
          const each: RecipeEvidence = { batches: count, precision: 0, pull: 0, censored: looks };
          const [mine, exact] = [learnFrom(evidence), learnFrom(new Map([['tiles', each]]))];
          for (const [one, other] of [
            [mine.workshop, exact.workshop] as const,
            [mine.recipe('tiles'), exact.recipe('tiles')] as const,
          ]) {
            expect(Math.abs(one.mean - other.mean)).toBeLessThan(1e-3 * other.sd);
            expect(Math.abs(one.sd / other.sd - 1)).toBeLessThan(1e-3);
          }
        }),
        { numRuns: 8, endOnFailure: true },
      );
    },
  );

  it('that no workshop is like still draw it their way', () => {
    const slow = Array.from({ length: 40 }, (): Observation => ({
      recipe: 'tiles',
      above: 2.8,
      sigma: 0.25,
      entries: [],
    }));
    const { mean, sd } = learnFrom(evidenceOf(slow)).recipe('tiles');
    expect(mean).toBeGreaterThan(2);
    expect(sd).toBeLessThan(0.3);
  });
});
