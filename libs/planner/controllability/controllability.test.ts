import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lengthsAlong } from '../../../tests/support/lengths-along.js';
import { controllability } from './controllability.js';
import type { Stnu } from './stnu.js';

const atLeast = fc.integer({ min: -5, max: 2 });
const atMost = fc.integer({ min: -1, max: 6 });

/** Up to five points; one or two contingent links, ending in points 1 and 3. */
const smallNetwork: fc.Arbitrary<Stnu> = fc.integer({ min: 2, max: 5 }).chain((points) => {
  const point = fc.nat(points - 1);
  const contingent = (from: number, to: number): fc.Arbitrary<Stnu['contingents'][number]> =>
    fc
      .tuple(fc.nat(2), fc.nat(2))
      .map(([min, spread]) => ({ from, to, min, max: Math.max(1, min + spread) }));
  const requirement = fc.record(
    { from: point, to: point, min: atLeast, max: atMost },
    { requiredKeys: ['from', 'to'] },
  );
  const second = fc.constantFrom(0, 1, 2);
  return fc.record({
    points: fc.constant(points),
    requirements: fc.array(requirement, { minLength: 1, maxLength: 5 }),
    contingents:
      points < 4
        ? fc.tuple(contingent(0, 1))
        : second.chain((from) => fc.tuple(contingent(0, 1), contingent(from, 3))),
  });
});

describe('controllability', () => {
  // B at most 5 before C, C 2 to 9 after A: B must wait for C until 4 after A (Hunsberger's tutorial on STNUs).
  const waits: Stnu = {
    points: 3,
    requirements: [{ from: 1, to: 2, max: 5 }],
    contingents: [{ from: 0, to: 2, min: 2, max: 9 }],
  };

  it('lets one wait for what nature decides', () => {
    expect(controllability(waits)).toEqual({ controllable: true });
  });

  it('names what leaves no time to wait', () => {
    const requirements = [...waits.requirements, { from: 0, to: 1, max: 3 }];
    expect(controllability({ ...waits, requirements })).toEqual({
      controllable: false,
      cycle: [
        // 3 + 5 − 9 < 0
        { kind: 'requirement', index: 1, bound: 'max', times: 1 },
        { kind: 'requirement', index: 0, bound: 'max', times: 1 },
        { kind: 'contingent', index: 0, bound: 'max', times: 1 },
        { kind: 'contingent', index: 0, bound: 'min', times: 0 },
      ],
    });
  });

  it('agrees with the game against nature played out', () => {
    let won = 0;
    fc.assert(
      fc.property(smallNetwork, (stnu) => {
        const wins = winsGame(stnu);
        if (wins) won += 1;
        expect(controllability(stnu).controllable).toBe(wins);
      }),
      { seed: 2006, numRuns: 1000 },
    );
    expect(won).toBeGreaterThan(200);
    expect(won).toBeLessThan(800);
  });

  it('names a cycle that is uncontrollable by itself', () => {
    fc.assert(
      fc.property(smallNetwork, (stnu) => {
        const found = controllability(stnu);
        if (found.controllable) return;
        const has = (kind: string, index: number, side: string): boolean =>
          found.cycle.some((each) => each.kind === kind && each.index === index && each.bound === side);
        const requirements = stnu.requirements.map(({ from, to, min, max }, r) => ({
          ...{ from, to },
          ...(has('requirement', r, 'min') && { min: min! }),
          ...(has('requirement', r, 'max') && { max: max! }),
        }));
        const contingents = stnu.contingents.filter(
          (_, c) => has('contingent', c, 'min') || has('contingent', c, 'max'),
        );
        expect(winsGame({ ...stnu, requirements, contingents })).toBe(false);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  it('names a cycle that closes and whose lengths come to less than 0', () => {
    fc.assert(
      fc.property(smallNetwork, (stnu) => {
        const found = controllability(stnu);
        if (found.controllable) return;
        const { sum, surplus } = lengthsAlong(stnu, found.cycle);
        expect(sum).toBeLessThan(0);
        expect(surplus.every((each) => each === 0)).toBe(true);
      }),
      { seed: 4, numRuns: 1000 },
    );
  });

  it('never loses by a requirement less, and scales', () => {
    fc.assert(
      fc.property(smallNetwork, fc.nat(4), fc.integer({ min: 2, max: 50 }), (stnu, r, factor) => {
        const { controllable } = controllability(stnu);
        const relaxed = { ...stnu, requirements: stnu.requirements.filter((_, k) => k !== r) };
        if (controllable) expect(controllability(relaxed).controllable).toBe(true);
        expect(controllability(scaled(stnu, factor)).controllable).toBe(controllable);
      }),
      { seed: 2 },
    );
  });

  it('is consistency when nature has no choice', () => {
    fc.assert(
      fc.property(smallNetwork, (stnu) => {
        const contingents = stnu.contingents.map((each) => ({ ...each, max: each.min }));
        const certain = { ...stnu, contingents };
        expect(controllability(certain).controllable).toBe(isConsistent(certain));
      }),
      { seed: 3, numRuns: 500 },
    );
  });

  it('refuses impossible contingent links', () => {
    const link = { from: 0, to: 2, min: 3, max: 2 };
    expect(() => controllability({ ...waits, contingents: [link] })).toThrow(RangeError);
    expect(() =>
      controllability({ ...waits, contingents: [...waits.contingents, { ...link, max: 4 }] }),
    ).toThrow(RangeError);
  });
});

function scaled({ points, requirements, contingents }: Stnu, factor: number): Stnu {
  return {
    points,
    requirements: requirements.map(({ from, to, min, max }) => ({
      ...{ from, to },
      ...(min !== undefined && { min: min * factor }),
      ...(max !== undefined && { max: max * factor }),
    })),
    contingents: contingents.map(({ from, to, min, max }) => ({
      ...{ from, to },
      ...{ min: min * factor, max: max * factor },
    })),
  };
}

/** Bellman and Ford, with contingent links as requirements. */
function isConsistent({ points, requirements, contingents }: Stnu): boolean {
  const edges = [...requirements, ...contingents].flatMap(({ from, to, min, max }) => [
    ...(max === undefined ? [] : [{ from, to, weight: max }]),
    ...(min === undefined ? [] : [{ from: to, to: from, weight: -min }]),
  ]);
  const at = Array.from({ length: points }, () => 0);
  for (let round = 0; round <= points; round++) {
    let moved = false;
    for (const { from, to, weight } of edges) {
      if (at[from]! + weight >= at[to]!) continue;
      at[to] = at[from]! + weight;
      moved = true;
    }
    if (!moved) return true;
  }
  return false;
}

/**
 * The game in whole time units: at each moment nature first lets ends come about, then the agent executes what it
 * wants, one after the other; an end that may come at once can answer each of them. Whole times are enough, since
 * all bounds are whole. No point need wait longer than all bounds together.
 */
function winsGame({ points, requirements, contingents }: Stnu): boolean {
  const lengths = [...requirements, ...contingents].map(({ min = 0, max = 0 }) =>
    Math.max(Math.abs(min), Math.abs(max)),
  );
  const end = lengths.reduce((sum, length) => sum + length, 0);
  const known = new Map<string, boolean>();
  const isEnd = (point: number): boolean => contingents.some(({ to }) => to === point);
  const isBroken = (times: readonly (number | null)[], now: number): boolean =>
    requirements.some(({ from, to, min, max }) => {
      const [a, b] = [times[from]!, times[to]!] as [number | null, number | null];
      if (a !== null && b !== null)
        return (min !== undefined && b - a < min) || (max !== undefined && b - a > max);
      // One that has not come about will come now at the earliest.
      if (a !== null) return max !== undefined && now - a > max;
      return b !== null && min !== undefined && now - b > -min;
    });

  const agent = (times: readonly (number | null)[], now: number): boolean => {
    if (isBroken(times, now)) return false;
    if (!times.includes(null)) return true;
    const key = `${times.join()} ${now}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const wins =
      times.some((time, point) => {
        if (time !== null || isEnd(point)) return false;
        return nature(
          times.with(point, now),
          now,
          (c) => contingents[c]!.from === point && contingents[c]!.min === 0,
        );
      }) ||
      (now < end && nature(times, now + 1, () => true));
    known.set(key, wins);
    return wins;
  };

  /** Nature's choices among the ends that may come about, each of them answered by the agent. */
  const nature = (
    times: readonly (number | null)[],
    now: number,
    mayCome: (c: number) => boolean,
    from = 0,
  ): boolean => {
    for (let c = from; c < contingents.length; c++) {
      const { from: start, to, min, max } = contingents[c]!;
      const began = times[start]!;
      if (times[to] !== null || began === null || !mayCome(c) || now - began < min) continue;
      const comes = times.with(to, now);
      // An end can set off another link that may end at once.
      const next = (k: number): boolean =>
        mayCome(k) || (contingents[k]!.from === to && contingents[k]!.min === 0);
      if (!nature(comes, now, next, 0)) return false;
      if (now - began === max) return true;
      return nature(times, now, (k) => k > c && mayCome(k), c + 1);
    }
    return agent(times, now);
  };

  return agent(
    Array.from({ length: points }, () => null),
    0,
  );
}
