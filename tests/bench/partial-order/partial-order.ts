import type { OrderLink, UncertainProject } from './uncertain-project.js';

/**
 * Links that keep the order of a schedule where it matters: as long as lags and links are met, no resource is
 * overloaded whatever the durations. Each unit of a resource is handed from activity to activity (chaining: Policella,
 * Cesta, Oddi and Smith, “From precedence constraint posting to partial order schedules”, AI Communications 20, 2007;
 * from memory). Units come first from activities that must come before anyway, so that few new links are needed, then
 * from those that ended last, so that early ones keep their freedom.
 * @param project.dur the durations for which the schedule is made
 * @param starts a schedule that keeps the resources at these durations
 * @throws RangeError when it does not
 */
export function partialOrder(
  project: Pick<UncertainProject, 'cap' | 'req' | 'lags'> & { readonly dur: readonly number[] },
  starts: ArrayLike<number>,
): OrderLink[] {
  const { dur, cap, req, lags } = project;
  const precedence = new Precedence(dur.length);
  for (const [i, j, w] of lags) if (w > 0 && w >= dur[i]!) precedence.add(i, j);
  const end = (i: number): number => starts[i]! + dur[i]!;
  const links: OrderLink[] = [];
  const linked = new Set<string>();
  cap.forEach((capacity, r) => {
    const users = [...dur.keys()].filter((i) => dur[i]! > 0 && req[i]![r]! > 0);
    users.sort((a, b) => starts[a]! - starts[b]! || end(a) - end(b) || a - b);
    let unused = capacity;
    const held = new Map<number, number>();
    for (const taker of users) {
      const givers = [...held.keys()].filter((i) => end(i) <= starts[taker]!);
      const comesBefore = (i: number): number => (precedence.has(i, taker) ? 1 : 0);
      givers.sort((a, b) => comesBefore(b) - comesBefore(a) || end(b) - end(a) || a - b);
      let needed = req[taker]![r]!;
      const give = (i: number): void => {
        const units = held.get(i)!;
        const handed = Math.min(units, needed);
        if (handed === 0) return;
        needed -= handed;
        if (handed === units) held.delete(i);
        else held.set(i, units - handed);
        if (linked.has(`${i} ${taker}`)) return;
        linked.add(`${i} ${taker}`);
        links.push([i, taker]);
        precedence.add(i, taker);
      };
      givers.filter((i) => comesBefore(i) === 1).forEach(give);
      const fresh = Math.min(unused, needed);
      unused -= fresh;
      needed -= fresh;
      givers.filter((i) => held.has(i)).forEach(give);
      if (needed > 0) throw new RangeError(`resource ${r} is overloaded when activity ${taker} starts`);
      held.set(taker, req[taker]![r]!);
    }
  });
  return links;
}

/** Who comes before whom, directly or over others. */
class Precedence {
  private readonly before: Uint8Array;

  constructor(private readonly count: number) {
    this.before = new Uint8Array(count * count);
  }

  has(i: number, j: number): boolean {
    return this.before[i * this.count + j] === 1;
  }

  add(i: number, j: number): void {
    if (this.has(i, j)) return;
    for (let a = 0; a < this.count; a++) {
      if (a !== i && !this.has(a, i)) continue;
      for (let b = 0; b < this.count; b++) {
        if (b === j || this.has(j, b)) this.before[a * this.count + b] = 1;
      }
    }
  }
}
