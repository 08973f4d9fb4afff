import { describe, expect, it } from 'vitest';
import { logEntry } from '#contract';
import { amountsIn } from '#words';
import { readWeighIn } from './read-weigh-in.js';

const grams = (mass: number): number => mass;

describe('a weigh-in as it is typed', () => {
  it('is an entry that the log takes', () => {
    const { entry } = readWeighIn(6, 482.5, grams);
    expect(entry).toEqual({ kind: 'weigh-in', pieces: 6, massG: 482.5 });
    expect(logEntry.safeParse({ ...entry, at: '2026-12-20T10:00:00Z' }).success).toBe(true);
  });

  it('is in grams whatever it was typed in', () => {
    const { meant } = amountsIn('en', 'us').field.mass;
    expect(readWeighIn(6, 17, meant).entry?.massG).toBeCloseTo(481.942, 3); // 17 · 28.349523
  });

  it('is refused, field by field, where the log would refuse it', () => {
    expect(readWeighIn(0, 480, grams)).toEqual({ wrong: ['pieces'] });
    expect(readWeighIn(2.5, 480, grams)).toEqual({ wrong: ['pieces'] });
    expect(readWeighIn(5001, 480, grams)).toEqual({ wrong: ['pieces'] });
    expect(readWeighIn(6, undefined, grams)).toEqual({ wrong: ['mass'] });
    expect(readWeighIn(6, 0, grams)).toEqual({ wrong: ['mass'] });
    expect(readWeighIn(undefined, -3, grams)).toEqual({ wrong: ['pieces', 'mass'] });
    for (const massG of [0.09, 1_000_001]) {
      expect(readWeighIn(6, massG, grams).wrong).toEqual(['mass']);
      const entry = { kind: 'weigh-in', pieces: 6, massG, at: '2026-12-20T10:00:00Z' };
      expect(logEntry.safeParse(entry).success).toBe(false);
    }
  });
});
