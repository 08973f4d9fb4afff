import type { Interval } from '../problem.js';

/** An interval in which so much of a resource is taken. */
export type Taken = Interval & { readonly amount: number };

/** The same use of a resource as disjoint intervals in order: those that overlap are added up, those that meet joined. */
export function busyProfile(taken: readonly Taken[]): Taken[] {
  const steps = taken
    .filter(({ from, to, amount }) => from < to && amount > 0)
    .flatMap(({ from, to, amount }) => [
      { at: from, change: amount },
      { at: to, change: -amount },
    ])
    .sort((a, b) => a.at - b.at);
  const profile: { from: number; to: number; amount: number }[] = [];
  let amount = 0;
  for (const [k, { at, change }] of steps.entries()) {
    amount += change;
    const to = steps[k + 1]?.at ?? at;
    if (to === at || amount === 0) continue;
    const last = profile.at(-1);
    if (last?.to === at && last.amount === amount) last.to = to;
    else profile.push({ from: at, to, amount });
  }
  return profile;
}
