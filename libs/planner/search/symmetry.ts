import { deliveriesOf } from '../deliveries.js';
import { NO_PATH } from './longest-paths.js';
import type { Network } from '../network.js';
import type { Problem } from '../problem.js';
import { componentsOf } from './components.js';
import type { LagPaths } from './lag-paths.js';

/** `before` starts no later than `after`, by stage number. */
export interface SymmetryOrder {
  readonly before: number;
  readonly after: number;
}

/**
 * Orders among components that can stand in for each other, such as runs of one design: of two whose schedules could be
 * exchanged, the first stage of one starts no later than that of the other. No total is lost by it, and the search need
 * not look at every way to permute them.
 *
 * Components are alike when stage by stage, in the order of the problem, durations, resources, hours, lags (at the
 * certainty of the network), holds and deliveries are the same; names do not matter. They may differ in when they
 * may start: if A starts its first stage later than B, the exchange must leave both within their bounds. Let s be that
 * stage and d(s, t) the longest path of lags from s to t. A can have what B had if no bound of A is tighter below,
 * earliest A ≤ earliest B, and above, for every stage t, latest A ≥ min(latest B, latest A(s) − d(t, s)); B can have
 * what A had if earliest B ≤ max(earliest A, earliest B(s) + d(s, t)) and latest A ≤ latest B. A chain of neighbours for which this holds is sorted
 * by exchanging neighbours. Components with a previous plan, or tied to something that cannot move, are left alone.
 * @param paths of the network's own lags, nothing added
 */
export function symmetryOrders(p: Problem, net: Network, paths: LagPaths): SymmetryOrder[] {
  const components = componentsOf(p);
  if (components.length < 2) return [];
  const classes = new Map<string, number[][]>();
  const names = new Map(p.stages.map(({ id }, i) => [id, i]));
  const deliveries = deliveriesOf(p);
  for (const component of components) {
    const key = structureOf(p, net, component, names, deliveries);
    if (key === null) continue;
    const alike = classes.get(key);
    if (alike) alike.push(component);
    else classes.set(key, [component]);
  }
  const earliest = (i: number): number => Math.max(p.from, p.stages[i]!.earliest ?? -Infinity);
  const latest = (i: number): number => Math.min(p.until, p.stages[i]!.latest ?? Infinity);
  return [...classes.values()].flatMap((alike) => {
    const inOrder = [...alike].sort(
      (a, b) => earliest(a[0]!) - earliest(b[0]!) || latest(a[0]!) - latest(b[0]!) || a[0]! - b[0]!,
    );
    return inOrder.slice(1).flatMap((b, k) => {
      const a = inOrder[k]!;
      return canExchange(a, b) ? [{ before: a[0]!, after: b[0]! }] : [];
    });
  });

  function canExchange(a: readonly number[], b: readonly number[]): boolean {
    const distance = (from: number, to: number): number => {
      const d = from === to ? 0 : paths.far(from, to);
      return d === NO_PATH ? -Infinity : d;
    };
    return a.every((i, k) => {
      const j = b[k]!;
      return (
        earliest(i) <= earliest(j) &&
        earliest(j) <= Math.max(earliest(i), earliest(b[0]!) + distance(a[0]!, i)) &&
        latest(i) <= latest(j) &&
        latest(i) >= Math.min(latest(j), latest(a[0]!) - distance(i, a[0]!))
      );
    });
  }
}

/** What makes components alike, as text; null where one is tied to what cannot move, or has a previous plan. */
function structureOf(
  p: Problem,
  net: Network,
  component: readonly number[],
  names: ReadonlyMap<string, number>,
  deliveries: readonly (readonly number[])[],
): string | null {
  const place = new Map(component.map((i, k) => [i, k]));
  if (component.some((i) => p.stages[i]!.previous !== undefined)) return null;
  const edges: string[] = [];
  for (const i of component) {
    for (const e of net.out[i]!) {
      const to = place.get(net.to[e]!);
      if (to === undefined) return null;
      edges.push(`${place.get(i)} ${to} ${net.weight[e]}`);
    }
  }
  for (const { from, to } of p.lags) {
    if (place.has(names.get(from)!) !== place.has(names.get(to)!)) return null;
  }
  const holds: string[] = [];
  for (const { resource, amount, from, to } of p.holds) {
    const [first, last] = [place.get(names.get(from)!), place.get(names.get(to)!)];
    if (first === undefined && last === undefined) continue;
    if (first === undefined || last === undefined) return null;
    holds.push(`${first} ${last} ${amount} ${resource}`);
  }
  const delivered = deliveries.map((stages) => {
    const inside = stages.flatMap((i) => place.get(i) ?? []).sort((a, b) => a - b);
    // What is handed over together with stages of others makes them differ, unless everything is.
    if (inside.length > 0 && inside.length < stages.length && deliveries.length > 1) return null;
    return inside.join(' ');
  });
  if (delivered.includes(null)) return null;
  const together: string[] = delivered.flatMap((each) => each ?? []).filter((each) => each !== '');
  const stages = component.map((i) => {
    const { duration, calendar = '', uses } = p.stages[i]!;
    return [duration, calendar, ...uses.map(({ resource, amount }) => `${amount} ${resource}`).sort()];
  });
  return JSON.stringify([stages, edges.sort(), holds.sort(), together.sort()]);
}
