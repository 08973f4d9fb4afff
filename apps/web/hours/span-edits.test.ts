import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  freeSpan,
  joined,
  lengthOf,
  MINUTES_OF_DAY,
  minutesOf,
  overMidnight,
  readTime,
  timeOf,
  withEdge,
  type Span,
} from './span-edits.js';

const spans: Span[] = [
  { from: '09:00', to: '12:30' },
  { from: '14:00', to: '18:00' },
];
const anySpans = fc
  .uniqueArray(fc.integer({ min: 0, max: 96 }), { minLength: 0, maxLength: 8 })
  .map((quarters) => quarters.sort((a, b) => a - b))
  .map((quarters) =>
    quarters.flatMap((quarter, i): Span[] => {
      const next = quarters[i + 1];
      return i % 2 === 0 && next !== undefined ? [{ from: timeOf(15 * quarter), to: timeOf(15 * next) }] : [];
    }),
  );

describe('spans of a day', () => {
  it('are joined where they touch or overlap', () => {
    const found = joined([{ from: '14:00', to: '18:00' }, { from: '12:00', to: '14:00' }, ...spans]);
    expect(found).toEqual([{ from: '09:00', to: '18:00' }]);
    expect(lengthOf([...spans, ...spans])).toBe(450); // 3 h 30 and 4 h
  });

  it('keep one that was not finished', () => {
    expect(joined([{ from: '20:00', to: '02:00' }])).toEqual([{ from: '20:00', to: '02:00' }]);
  });

  it('have edges that stop at their neighbours', () => {
    expect(withEdge(spans, 0, 'to', minutesOf('15:00'))[0]).toEqual({ from: '09:00', to: '14:00' });
    expect(withEdge(spans, 1, 'from', minutesOf('13:07'))[1]).toEqual({ from: '13:00', to: '18:00' });
    expect(withEdge(spans, 1, 'from', minutesOf('20:00'))[1]).toEqual({ from: '17:45', to: '18:00' });
    expect(withEdge(spans, 1, 'to', 5000)[1]).toEqual({ from: '14:00', to: '24:00' });
    expect(withEdge(spans, 7, 'to', 0)).toEqual(spans);
  });

  it('stay sorted and disjoint wherever an edge is moved', () => {
    const edge = fc.constantFrom('from' as const, 'to' as const);
    fc.assert(
      fc.property(anySpans, fc.nat(3), edge, fc.integer({ min: -100, max: 1600 }), (day, i, which, at) => {
        const moved = withEdge(day, i, which, at);
        moved.forEach((span, j) => {
          expect(span.from < span.to).toBe(true);
          const next = moved[j + 1];
          if (next !== undefined) expect(span.to <= next.from).toBe(true);
        });
      }),
    );
  });

  it('get a new one where there is room', () => {
    expect(freeSpan([])).toEqual({ from: '18:00', to: '21:00' });
    expect(freeSpan([{ from: '00:00', to: '24:00' }])).toBeUndefined();
    fc.assert(
      fc.property(anySpans, (day) => {
        const found = freeSpan(day);
        if (found === undefined) return;
        expect(found.from < found.to).toBe(true);
        expect(day.every(({ from, to }) => to <= found.from || from >= found.to)).toBe(true);
      }),
    );
  });

  it('split a night at midnight', () => {
    expect(overMidnight({ from: '20:00', to: '02:00' })).toEqual({
      today: { from: '20:00', to: '24:00' },
      tomorrow: { from: '00:00', to: '02:00' },
    });
  });
});

describe('a time as it is typed', () => {
  it.each([
    ['9', false, '09:00'],
    ['930', false, '09:30'],
    ['9:30', false, '09:30'],
    ['9.30', false, '09:30'],
    ['21h', false, '21:00'],
    ['2130', true, '21:30'],
    ['0', false, '00:00'],
    ['0:00', true, '24:00'],
    ['24', true, '24:00'],
    ['24', false, undefined],
    ['24:01', true, undefined],
    ['9:60', false, undefined],
    ['9:3', false, undefined],
    ['', false, undefined],
    ['evening', false, undefined],
  ] as const)('%s (end: %s) is %s', (text, isEnd, time) => {
    expect(readTime(text, isEnd)).toBe(time);
  });

  it('is read back as it was written', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: MINUTES_OF_DAY - 1 }), fc.boolean(), (minutes, isEnd) => {
        expect(readTime(timeOf(minutes), isEnd)).toBe(timeOf(minutes));
      }),
    );
  });
});
