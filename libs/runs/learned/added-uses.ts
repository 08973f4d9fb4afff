import type { Learned, LearnedWeighing, RunTeachings } from '#contract';

type Use = Learned['uses'][number];

/**
 * Weighings kept one by one for each part of a design, the latest: a batch that is made already is sized by those before it
 * (`sizeBatches`), and more than these are hardly weighed while a run is under way. A choice.
 */
const SINGLY = 8;

/** Older ones are kept together, so many kinds of them: others differ in pieces or in what was expected. A choice. */
const KINDS = 16;

/**
 * Weighings added to those that were kept. The latest stay single; of older ones of as many pieces with the same amount
 * expected, nothing but their number, their mean and the sum of squares about it matters to `learnUse`.
 */
export function addedUses(kept: readonly Use[], weighings: RunTeachings['weighings']): Use[] {
  const uses = new Map(kept.map((use) => [nameOf(use), use]));
  for (const { design, part, ...weighing } of weighings) {
    const name = nameOf({ design, part });
    const before = uses.get(name)?.weighings ?? [];
    uses.set(name, { design, part, weighings: [...before, weighing] });
  }
  const changed = new Set(weighings.map(nameOf));
  return [...uses].map(([name, use]) =>
    changed.has(name) ? { ...use, weighings: reduced(use.weighings) } : use,
  );
}

function nameOf({ design, part }: Pick<Use, 'design' | 'part'>): string {
  return `${design} ${part}`;
}

function reduced(weighings: readonly LearnedWeighing[]): LearnedWeighing[] {
  const single = weighings.filter(({ times }) => times === undefined).sort(byTime);
  const older = [...weighings.filter(({ times }) => times !== undefined), ...single.slice(0, -SINGLY)];
  const kinds = new Map<string, LearnedWeighing>();
  for (const weighing of older) {
    const kind = `${String(weighing.pieces)} ${String(weighing.expectedMl)}`;
    const same = kinds.get(kind);
    kinds.set(kind, same === undefined ? weighing : pooled(same, weighing));
  }
  const together = [...kinds.values()].sort(byTime).slice(-KINDS);
  return [...together, ...single.slice(-SINGLY)];
}

/** Oldest first, and always in the same order. */
function byTime(a: LearnedWeighing, b: LearnedWeighing): number {
  return a.at - b.at || a.pieces - b.pieces || a.usedG - b.usedG || a.expectedMl - b.expectedMl;
}

/** @see T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247, for the sums (from memory) */
function pooled(one: LearnedWeighing, other: LearnedWeighing): LearnedWeighing {
  const [first, second] = [one.times ?? 1, other.times ?? 1];
  const times = first + second;
  const apart = other.usedG - one.usedG;
  return {
    ...one,
    at: Math.max(one.at, other.at),
    usedG: one.usedG + (apart * second) / times,
    times,
    squares: (one.squares ?? 0) + (other.squares ?? 0) + (apart * apart * first * second) / times,
  };
}
