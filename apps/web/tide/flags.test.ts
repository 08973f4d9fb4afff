import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { FLAG_HALF, hang, type Flag } from './flags.js';

const END = 330;

function boxes(flags: readonly Flag[], end: number) {
  return hang(flags, end).map(({ level, isLeft }, i) => {
    const { x, width } = flags[i]!;
    const from = isLeft ? x + FLAG_HALF - width : x - FLAG_HALF;
    return { x, from, to: from + width, level };
  });
}

describe('flags', () => {
  it('hang at the foot where each has room', () => {
    expect(
      hang(
        [
          { x: 20, width: 90 },
          { x: 120, width: 90 },
          { x: 220, width: 100 },
        ],
        END,
      ),
    ).toEqual([
      { level: 0, isLeft: false },
      { level: 0, isLeft: false },
      { level: 0, isLeft: false },
    ]);
  });

  it('hang the higher the earlier, where their names would lie over each other', () => {
    const close = [100, 110, 125].map((x) => ({ x, width: 120 }));
    expect(hang(close, END).map(({ level }) => level)).toEqual([2, 1, 0]);
  });

  it('hang to the left where the picture ends', () => {
    expect(hang([{ x: 310, width: 100 }], END)).toEqual([{ level: 0, isLeft: true }]);
    // Nowhere is room for it: it begins in sight.
    expect(hang([{ x: 100, width: 400 }], END)).toEqual([{ level: 0, isLeft: false }]);
  });

  const flag = fc.record({ x: fc.integer({ min: 0, max: END }), width: fc.integer({ min: 40, max: 240 }) });
  const flags = fc.array(flag, { maxLength: 25 }).map((some) => some.toSorted((a, b) => a.x - b.x));

  it('never lie over each other', () => {
    fc.assert(
      fc.property(flags, (some) => {
        const all = boxes(some, END);
        all.forEach((a, i) => {
          for (const b of all.slice(i + 1))
            expect(a.level !== b.level || a.from >= b.to || b.from >= a.to).toBe(true);
        });
        expect(Math.max(-1, ...all.map(({ level }) => level))).toBeLessThan(some.length);
      }),
    );
  });

  it('have no name that a pole goes through, where there is room on the right', () => {
    fc.assert(
      fc.property(flags, (some) => {
        const all = boxes(some, Infinity);
        for (const low of all) {
          const above = all.filter(({ level }) => level > low.level);
          expect(above.filter(({ x }) => x > low.x + FLAG_HALF && x < low.to)).toEqual([]);
        }
      }),
    );
  });
});
