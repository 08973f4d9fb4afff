import type { Learned, RunTeachings } from '#contract';

type Use = Learned['uses'][number];

/**
 * Weighings kept one by one for each part of a design, the latest: a batch that is made already is sized by those before it
 * (`sizeBatches`), and more than these are hardly weighed while a run is under way. A choice.
 */
const SINGLY = 12;

/** Older ones are kept together, so many kinds of them: others differ in pieces or in what was expected. A choice. */
const KINDS = 24;

/**
 * Weighings added to those that were kept. The latest stay single; of older ones of as many pieces with the same amount
 * expected, nothing but their number, their mean and the sum of squares about it matters to `learnUse`.
 */
export function addedUses(kept: readonly Use[], weighings: RunTeachings['weighings']): Use[] {
  const all = [...kept, ...weighings.map((each) => ({ ...each, times: 1, squares: 0 }))];
  const byPart = new Map<string, Use[]>();
  for (const use of all) {
    const name = `${use.design} ${use.part}`;
    byPart.set(name, [...(byPart.get(name) ?? []), use]);
  }
  return [...byPart.values()].flatMap(reduced);
}

function reduced(uses: readonly Use[]): Use[] {
  const single = uses.filter(({ times }) => times === 1).sort(byTime);
  const together = new Map<string, Use>();
  const older = [...uses.filter(({ times }) => times > 1), ...single.slice(0, -SINGLY)];
  for (const use of older) {
    const kind = `${String(use.pieces)} ${String(use.expectedMl)}`;
    const same = together.get(kind);
    together.set(kind, same === undefined ? use : pooled(same, use));
  }
  const groups = [...together.values()].sort(byTime).slice(-KINDS);
  return [...groups, ...single.slice(-SINGLY)];
}

/** Oldest first, and always in the same order. */
function byTime(a: Use, b: Use): number {
  return a.at - b.at || a.pieces - b.pieces || a.usedG - b.usedG || a.expectedMl - b.expectedMl;
}

/** @see T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247, for the sums (from memory) */
function pooled(one: Use, other: Use): Use {
  const times = one.times + other.times;
  const apart = other.usedG - one.usedG;
  return {
    ...one,
    times,
    at: Math.max(one.at, other.at),
    usedG: one.usedG + (apart * other.times) / times,
    squares: one.squares + other.squares + (apart * apart * one.times * other.times) / times,
  };
}
