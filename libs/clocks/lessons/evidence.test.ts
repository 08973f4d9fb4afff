import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evidenceOf, type Evidence } from './evidence.js';
import type { Observation } from './observation.js';

fc.configureGlobal({ seed: 1843 });

const seen = (over: Partial<Observation>): Observation => ({
  ...{ recipe: 'tiles', sigma: 0.25, doubt: 0.1, looks: 1, missed: 0, day: 20_000, entries: [] },
  ...over,
});
const many = fc.array(
  fc
    .record({
      recipe: fc.constantFrom('tiles', 'loaves', 'shells'),
      at: fc.integer({ min: -1500, max: 1500 }),
      width: fc.integer({ min: 2, max: 900 }),
      day: fc.integer({ min: 20_000, max: 20_400 }),
    })
    .map(({ recipe, at, width, day }) =>
      seen({ recipe, above: at / 1000, below: (at + width) / 1000, readyAfterDays: 2.5, day }),
    ),
  { maxLength: 260 },
);

/** Whatever the order in which its recipes were seen. */
const byRecipe = (evidence: Evidence) => Object.fromEntries(evidence);

describe('what observations of one pace add up to', () => {
  it('is kept by recipe, rounded to a thousandth of a time', () => {
    const evidence = evidenceOf([
      seen({ above: 0.123456, below: 0.5, readyAfterDays: 2.3456, opened: 0.04567 }),
      seen({ recipe: 'loaves', exact: 0.2, looks: 0, doubt: 0.2 }),
    ]);
    const common = { day: 20_000, sigma: 0.25, missed: 0 };
    expect([...evidence]).toEqual([
      [
        'tiles',
        {
          doubt: 0.1,
          seen: [{ ...common, looks: 1, above: 0.123, below: 0.5, readyAfterDays: 2.3, opened: 0.046 }],
        },
      ],
      ['loaves', { doubt: 0.2, seen: [{ ...common, looks: 0, above: 0.18, below: 0.22 }] }],
    ]);
  });

  it('depends neither on the order nor on whether it comes at once', () => {
    fc.assert(
      fc.property(many, fc.integer({ min: 0, max: 260 }), (observations, cut) => {
        const once = byRecipe(evidenceOf(observations));
        const parts = evidenceOf(observations.slice(cut), evidenceOf(observations.slice(0, cut)));
        expect(byRecipe(parts)).toEqual(once);
        expect(byRecipe(evidenceOf([...observations].toReversed()))).toEqual(once);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps the latest of a pace, and of each recipe at least twelve', () => {
    const old = Array.from({ length: 30 }, (_, i) => seen({ recipe: 'loaves', above: 0, day: 100 + i }));
    const late = Array.from({ length: 200 }, (_, i) => seen({ above: 0, day: 1000 + i }));
    const evidence = evidenceOf([...late, ...old]);
    expect(evidence.get('tiles')?.seen.map(({ day }) => day)).toEqual(late.slice(-96).map(({ day }) => day));
    expect(evidence.get('loaves')?.seen.map(({ day }) => day)).toEqual(old.slice(-12).map(({ day }) => day));
  });

  it('leaves room between bounds that meet once they are rounded', () => {
    const batch = evidenceOf([seen({ above: 0.1001, below: 0.1003 })]).get('tiles')?.seen[0];
    expect(batch).toMatchObject({ above: 0.1, below: 0.101 });
  });

  it.each<[string, Observation]>([
    ['a σ of 0', seen({ exact: 0, sigma: 0 })],
    ['a σ without end', seen({ above: 0, sigma: Infinity })],
    ['bounds that meet', seen({ above: 1, below: 1 })],
    ['an exact time at no time', seen({ exact: NaN })],
  ])('is refused for %s', (_, observation) => {
    expect(() => evidenceOf([observation])).toThrow(RangeError);
  });
});
