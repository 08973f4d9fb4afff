import { describe, expect, it } from 'vitest';
import { evidenceOf, isExact } from './evidence.js';
import type { Observation } from './observation.js';

const seen = (over: Partial<Observation>): Observation => ({
  ...{ recipe: 'tiles', sigma: 0.5, entries: [] },
  ...over,
});
const looks = (count: number): Observation[] => Array.from({ length: count }, () => seen({ above: 0.1 }));

describe('what observations of one pace add up to', () => {
  it('is kept by recipe', () => {
    const evidence = evidenceOf([
      seen({ exact: 1 }),
      seen({ recipe: 'loaves', below: 2 }),
      seen({ exact: 3 }),
    ]);
    // Two of σ 0.5 weigh 4 each: Σ 1/σ² = 8 and Σ y/σ² = 4 · (1 + 3) = 16.
    expect([...evidence]).toEqual([
      ['tiles', { batches: 2, precision: 8, pull: 16, censored: [] }],
      ['loaves', { batches: 1, precision: 0, pull: 0, censored: [{ below: 2, sigma: 0.5 }] }],
    ]);
  });

  it('is added to what was known, which stays as it was', () => {
    const before = evidenceOf([seen({ exact: 1 }), seen({ above: 0, below: 1 })]);
    const kept = structuredClone([...before]);
    const more = evidenceOf([seen({ exact: 2 }), seen({ above: -Infinity, below: 3 })], before);
    expect([...before]).toEqual(kept);
    expect(more.get('tiles')).toEqual({
      ...{ batches: 4, precision: 8, pull: 12 },
      censored: [
        { above: 0, below: 1, sigma: 0.5 },
        { below: 3, sigma: 0.5 },
      ],
    });
  });

  it('is exact until something is known only by bounds, one by one or in a table', () => {
    const of = (observations: Observation[]) => [...evidenceOf(observations).values()].every(isExact);
    expect(of([seen({ exact: 1 })])).toBe(true);
    expect(of([seen({ exact: 1 }), ...looks(1)])).toBe(false);
    expect(of(looks(20))).toBe(false);
  });

  it('keeps eight looks as they are and puts the ninth and all after it into a table', () => {
    expect(evidenceOf(looks(8)).get('tiles')).toMatchObject({ batches: 8, censored: looks(8).map(bare) });
    expect(evidenceOf(looks(8)).get('tiles')?.table).toBeUndefined();
    const nine = evidenceOf(looks(9));
    expect(nine.get('tiles')).toMatchObject({ batches: 9, censored: [], table: { most: 36 } });
    expect(evidenceOf(looks(1), nine).get('tiles')).toMatchObject({
      ...{ batches: 10, censored: [], table: { most: 40 } },
    });
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

function bare({ above, sigma }: Observation): { above: number | undefined; sigma: number } {
  return { above, sigma };
}
