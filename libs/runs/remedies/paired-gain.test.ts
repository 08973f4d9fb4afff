import { describe, expect, it } from 'vitest';
import { pairedGain } from './paired-gain.js';

describe('the gain over pairs', () => {
  /**
   * 1600 people asked twice whether they approve: 794 both times, 150 only at first, 86 only later, 570 never; the
   * difference is −0.04 with a standard error of 0.0095. Agresti, Categorical Data Analysis, 2nd edition (2002),
   * section 10.1; from memory.
   */
  it('is that of a worked example with matched pairs', () => {
    const pairs = [
      ...Array.from({ length: 794 }, () => [1, 1]),
      ...Array.from({ length: 150 }, () => [1, 0]),
      ...Array.from({ length: 86 }, () => [0, 1]),
      ...Array.from({ length: 570 }, () => [0, 0]),
    ];
    const side = (k: number) => Float64Array.from(pairs, (pair) => pair[k] ?? 0);
    const { gain, standardError } = pairedGain(side(0), side(1));
    expect(gain).toBeCloseTo(-0.04, 10);
    expect(Math.abs(standardError - 0.0095)).toBeLessThan(0.0001);
  });

  it('is sure where both plans fare alike in every scenario', () => {
    const some = Float64Array.from([1, 0, 1, 1]);
    expect(pairedGain(some, some)).toEqual({ gain: 0, standardError: 0 });
  });

  it('takes a plan that there is none of as lost in every scenario', () => {
    const { gain } = pairedGain(new Float64Array(4), Float64Array.from([1, 0, 1, 1]));
    expect(gain).toBe(0.75);
  });
});
