import { describe, expect, it } from 'vitest';
import { learnedSpread } from './learned-spread.js';

const times = [0.24, 0.36, 0.54, 0.8, 1.2, 1.72, 2.4];
/** ln of the likelihood of κ after so many batches whose mean square is `seen`²: −n ln κ − n seen² / 2κ². */
const after = (n: number, seen: number) => {
  const logs = times.map((spread) => ({
    spread,
    log: -n * Math.log(spread) - (n * seen ** 2) / (2 * spread ** 2),
  }));
  const top = Math.max(...logs.map(({ log }) => log));
  return { logs, masses: new Map(logs.map(({ spread, log }) => [spread, Math.exp(log - top)])) };
};

describe('the spread that is learned', () => {
  it('is what batches vary by also where the prior has no point', () => {
    for (const seen of [0.43, 0.66, 1, 1.45]) {
      const { logs, masses } = after(100, seen);
      expect(learnedSpread(logs, masses, 0) / seen).toBeGreaterThan(0.95);
      expect(learnedSpread(logs, masses, 0) / seen).toBeLessThan(1.06);
    }
  });

  it('takes for what was not summed the most it can be', () => {
    const { logs, masses } = after(100, 1);
    const kept = new Map([...masses].filter(([, mass]) => mass > 1e-3));
    expect(kept.size).toBeLessThan(3);
    expect(learnedSpread(logs, kept, 0)).toBeCloseTo(learnedSpread(logs, masses, 0), 2);
  });

  it('allows for tails: with one in twenty of 3.2 times the width its band is that of both, as worked out by hand', () => {
    // 0.95 Φ(1.355) + 0.05 Φ(1.355 / 3.2) = 0.95 · 0.9123 + 0.05 · 0.6640 = 0.8999, and 1.355 / 1.2816 = 1.057
    const one = [{ spread: 1, log: 0 }];
    expect(learnedSpread(one, new Map([[1, 1]]), 0.05)).toBeCloseTo(1.057, 2);
    expect(learnedSpread(one, new Map([[1, 1]]), 0)).toBeCloseTo(1, 6);
  });
});
