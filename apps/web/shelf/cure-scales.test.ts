import { describe, expect, it } from 'vitest';
import { cureSpan, weekly } from './cure-scales.js';

const reading = (days: number, pieceG: number) => ({
  entry: String(days),
  at: '2026-12-01T10:00:00Z',
  days,
  pieces: 1,
  massG: pieceG,
  pieceG,
  counts: true,
});
const point = (days: number, likely: number) => ({
  days,
  pieceG: { low: likely - 1, likely, high: likely + 1 },
});

describe('the room of a cure picture', () => {
  it('holds every weigh-in, today and the ready day', () => {
    const readings = [reading(2, 100), reading(9, 96)];
    const curve = [point(0, 110), point(5, 98), point(30, 92)];
    const span = cureSpan({ readings, curve, cure: { readyDays: { low: 20, likely: 25, high: 28 } } }, 12);
    expect(span.days).toEqual([0, 30]);
    expect(span.grams[0]).toBeLessThan(91);
    expect(span.grams[1]).toBeGreaterThan(100);
    // What lies before the first weigh-in does not squeeze the rest.
    expect(span.grams[1]).toBeLessThan(109);
  });

  it('is not squeezed by a reading that does not count and is far off', () => {
    const slip = (pieceG: number) => ({ ...reading(5, pieceG), counts: false });
    const gramsWith = (...more: ReturnType<typeof slip>[]) =>
      cureSpan({ readings: [reading(2, 100), ...more, reading(9, 96)], curve: [], cure: {} }).grams;
    expect(gramsWith(slip(980), slip(9.8))).toEqual(gramsWith());
    expect(gramsWith(slip(120))[1]).toBeGreaterThan(120);
  });

  it('has some height for a single weigh-in', () => {
    const { days, grams } = cureSpan({ readings: [reading(0.5, 80)], curve: [], cure: {} }, 0.5);
    expect(grams[1] - grams[0]).toBeGreaterThan(0.5);
    expect(days).toEqual([0, 1]);
  });
});

describe('a curve by weeks', () => {
  it('takes the point nearest to each week, and none twice', () => {
    const curve = [0, 1, 3, 6.5, 9, 13, 22].map((days) => ({ days }));
    expect(weekly(curve).map(({ days }) => days)).toEqual([0, 6.5, 13, 22]);
    expect(weekly([])).toEqual([]);
  });
});
