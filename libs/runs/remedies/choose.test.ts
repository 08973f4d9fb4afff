import { describe, expect, it } from 'vitest';
import type { Remedy } from '#contract';
import { chooseRemedies } from './choose.js';

/** A remedy that gains so many in a hundred, for so many points of disturbance; no other outdoes it. */
function remedy(gain: number, points = gain, standardError = 0.001): Remedy {
  const effects = { odds: { gain: gain / 100, standardError }, runs: [], pieces: { after: 1 } };
  return { effects, disturbance: { points } } as unknown as Remedy;
}

describe('the remedies that are shown', () => {
  it('gain five in a hundred; what gains less is left out beside one that does', () => {
    const [four, five, nine] = [remedy(4, 1), remedy(5), remedy(9)];
    expect(
      chooseRemedies([four, five, nine]).toSorted((a, b) => a.disturbance.points - b.disturbance.points),
    ).toEqual([five, nine]);
    expect(chooseRemedies([four, remedy(4.9, 1), nine])).toEqual([nine]);
  });

  it('are the one that helps most for its trouble, where none gains five', () => {
    const [three, four] = [remedy(3, 3), remedy(4, 2)];
    expect(chooseRemedies([three, four])).toEqual([four]);
    expect(chooseRemedies([three])).toEqual([three]);
  });

  it('do not count on luck: a gain of five within its error is none', () => {
    const lucky = remedy(6, 1, 0.04);
    expect(chooseRemedies([lucky])).toEqual([]);
    expect(chooseRemedies([lucky, remedy(4, 2)])).toEqual([remedy(4, 2)]);
  });
});
