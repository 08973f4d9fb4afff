import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { materialBalance } from './material-balance.js';

type Move = Parameters<typeof materialBalance>[0][number];

const at = (minute: number): string => new Date(Date.UTC(2026, 10, 27) + minute * 60_000).toISOString();

const taking = ['used', 'written-off', 'made', 'spoilt'] as const;
const adding = ['purchase', 'leftover-used'] as const;

/** No two at one moment, so that nothing but their times tells what comes first. */
const moves = fc.uniqueArray(fc.integer({ min: 0, max: 10_000 }), { maxLength: 25 }).chain((minutes) =>
  fc.tuple(
    ...minutes.map((minute) =>
      fc.oneof(
        fc.record({
          kind: fc.constantFrom(...taking),
          at: fc.constant(at(minute)),
          amount: fc.integer({ min: -900, max: -1 }),
        }),
        fc.record({
          kind: fc.constantFrom(...adding),
          at: fc.constant(at(minute)),
          amount: fc.integer({ min: 1, max: 900 }),
        }),
      ),
    ),
  ),
);

const counted = fc.record({
  kind: fc.constant('count' as const),
  at: fc.integer({ min: 10_001, max: 20_000 }).map(at),
  amount: fc.integer({ min: 0, max: 5000 }),
});

const sum = (list: readonly Move[]): number => list.reduce((total, { amount }) => total + amount, 0);

describe('the balance of a material', () => {
  it('is the sum of what came and went, however they are listed', () => {
    fc.assert(
      fc.property(
        moves,
        fc.integer({ min: 0, max: 900 }),
        fc.infiniteStream(fc.double({ noNaN: true })),
        (list, opening, keys) => {
          const shuffled = list.map((move) => ({ move, key: keys.next().value as number }));
          shuffled.sort((a, b) => a.key - b.key);
          const balance = materialBalance(list, { amount: opening });
          expect(balance.onHand).toBe(opening + sum(list));
          expect(
            materialBalance(
              shuffled.map(({ move }) => move),
              { amount: opening },
            ),
          ).toEqual(balance);
          expect(balance.onHand).toBe(
            opening + balance.bought + balance.fromLeftovers - balance.usedByRuns - balance.usedElse,
          );
        },
      ),
    );
  });

  it('forgets all that was before a count, and only that', () => {
    fc.assert(
      fc.property(moves, moves, counted, (before, later, count) => {
        const after = later.map((move) => ({
          ...move,
          at: new Date(Date.parse(move.at) + 30 * 864e5).toISOString(),
        }));
        const balance = materialBalance([...after, count, ...before]);
        expect(balance.onHand).toBe(count.amount + sum(after));
        expect(balance.from).toEqual({ amount: count.amount, at: count.at });
      }),
    );
  });

  it('goes by the later of two counts, whichever was written down first', () => {
    const counts: Move[] = [
      { kind: 'count', at: at(60), amount: 300 },
      { kind: 'count', at: at(30), amount: 900 },
    ];
    expect(materialBalance(counts).onHand).toBe(300);
    expect(materialBalance(counts.toReversed()).onHand).toBe(300);
    const together = counts.map((count) => ({ ...count, at: at(60) }));
    expect(materialBalance(together).onHand).toBe(900);
  });

  it('holds what the workshop began with, less what was used since', () => {
    const list: Move[] = [
      { kind: 'made', at: at(10), amount: -100 },
      { kind: 'made', at: at(30), amount: -50 },
      { kind: 'purchase', at: at(10), amount: 500 },
    ];
    expect(materialBalance(list, { amount: 200, at: at(20) }).onHand).toBe(650);
    expect(
      materialBalance([...list, { kind: 'count', at: at(20), amount: 70 }], { amount: 200, at: at(25) })
        .onHand,
    ).toBe(20);
  });
});
