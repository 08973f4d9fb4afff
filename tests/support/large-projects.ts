import { seededRandom, type Random } from '#units';
import type { Project } from './project.js';
import type { Instance } from './read-projects.js';

/** What a generated project is like; the parameters carry the names of the literature. */
export interface Cell {
  readonly activities: number;
  readonly resources: number;
  /** Lags between activities, as a multiple of the activities; none follows from others. */
  readonly complexity: number;
  /** Share of the resources that an activity uses. */
  readonly factor: number;
  /** 0: an activity alone may take all there is; 1: the earliest starts never meet. */
  readonly strength: number;
  /** Maximum lags, as a multiple of the activities; 0 for precedence alone. */
  readonly maxima?: number;
  /** Spare time in the maximum lags, at most, as a multiple of the time they span. */
  readonly slack?: number;
  /** Whether the maximum lags span what a schedule takes, so that there is one, or only the longest paths. */
  readonly planted?: boolean;
}

/**
 * A project after the published descriptions of ProGen (Kolisch, Sprecher and Drexl, Management Science 41, 1995) and
 * ProGen/max (Schwindt, 1996), from memory: the same parameters and ranges, not the same numbers. Durations and requests
 * are 1 to 10; minimum lags with cycles spread around the duration.
 */
export function largeProject(cell: Cell, seed: number): Instance {
  const random = seededRandom(seed);
  const { activities: n, resources, maxima = 0 } = cell;
  const dur = Array.from({ length: n + 2 }, (_, i) => (i === 0 || i > n ? 0 : upTo(random, 10) + 1));
  const arcs = network(n, Math.round(cell.complexity * n), random);
  const lags = arcs.map(([i, j]): Lag => {
    const d = dur[i] ?? 0;
    return [i, j, maxima > 0 ? upTo(random, 3 * d + 1) : d];
  });
  for (let i = 1; i <= n; i++) lags.push([0, i, 0], [i, n + 1, dur[i] ?? 0]);
  const req = dur.map((d) =>
    Array.from({ length: resources }, () =>
      d > 0 && random.next() < cell.factor ? upTo(random, 10) + 1 : 0,
    ),
  );
  const lengths = longest(n, lags);
  const cap = Array.from({ length: resources }, (_, r) => {
    const units = req.map((row) => row[r] ?? 0);
    const least = Math.max(...units);
    const most = peak(units, dur, lengths[0] ?? []);
    return least + Math.round(cell.strength * Math.max(most - least, 0));
  });
  if (maxima > 0) {
    const instance = { dur, cap, req, lags: [...lags] };
    const starts = cell.planted === true ? inTurn(instance, random) : null;
    addMaximumLags(cell, arcs, lags, starts, random);
  }
  const name = `${maxima > 0 ? 'lags' : 'precedence'}-${n}-${cell.factor}-${cell.strength}/${seed}`;
  return { name, n, dur, cap, req, lags };
}

/**
 * Copies of a project one after the other or side by side on shared resources; side by side, the resources grow with
 * the root of the number of copies.
 */
export function copiesOf(project: Instance, copies: number, how: 'chained' | 'merged'): Instance {
  const { n, cap } = project;
  const all = [...Array(copies).keys()];
  const sink = copies * n + 1;
  const place = (copy: number, i: number): number => (i === 0 ? 0 : i > n ? sink : copy * n + i);
  const inner = <T>(rows: readonly T[]): T[] => [
    ...rows.slice(0, 1),
    ...all.flatMap(() => rows.slice(1, n + 1)),
    ...rows.slice(n + 1),
  ];
  const lags = all.flatMap((copy) =>
    project.lags
      .filter(([i, j]) => how === 'merged' || (i > 0 && j <= n))
      .map(([i, j, w]): Lag => [place(copy, i), place(copy, j), w]),
  );
  // In a chain, what ends a copy comes before what begins the next.
  const enders = ends(project, (i, j) => [i, j]);
  const beginners = ends(project, (i, j) => [j, i]);
  if (how === 'chained') {
    for (const copy of all.slice(1)) {
      for (const i of enders) {
        for (const j of beginners) lags.push([place(copy - 1, i), place(copy, j), project.dur[i] ?? 0]);
      }
    }
  }
  const grown = how === 'merged' ? cap.map((c) => Math.round(c * Math.sqrt(copies))) : cap;
  const name = `${project.name} ${how} ${copies}`;
  return { name, n: copies * n, dur: inner(project.dur), cap: grown, req: inner(project.req), lags };
}

type Lag = [number, number, number];

function upTo(random: Random, end: number): number {
  return Math.floor(random.next() * end);
}

/** Arcs i → j with i < j of which none follows from others, most of them short; at most as many as asked. */
function network(n: number, count: number, random: Random): [number, number][] {
  const reaches = Array.from({ length: n + 1 }, (_, i) => new Set([i]));
  const arcs: [number, number][] = [];
  const reach = Math.max(6, Math.round(n / 5));
  for (let tries = 0; arcs.length < count && tries < 60 * count; tries++) {
    // First everybody after the first few gets a predecessor.
    const j = tries < n - 3 ? tries + 4 : upTo(random, n - 1) + 2;
    const i = Math.max(1, j - 1 - upTo(random, reach));
    if (i >= j || reaches[i]?.has(j)) continue;
    if (arcs.some(([a, b]) => (reaches[a]?.has(i) ?? false) && (reaches[j]?.has(b) ?? false))) continue;
    arcs.push([i, j]);
    for (const from of reaches) if (from.has(i)) for (const k of reaches[j] ?? []) from.add(k);
  }
  return arcs;
}

/** Each from where a walk along a few arcs ends back to where it began; overlapping walks make the cycle structures. */
function addMaximumLags(
  cell: Cell,
  arcs: readonly [number, number][],
  lags: Lag[],
  starts: readonly number[] | null,
  random: Random,
): void {
  const { activities: n, maxima = 0, slack = 0.5 } = cell;
  let lengths = longest(n, lags);
  for (let left = Math.round(maxima * n); left > 0; left--) {
    const first = 1 + upTo(random, n);
    let last = first;
    for (let steps = 1 + upTo(random, 5); steps > 0; steps--) {
      const onward = arcs.filter(([i]) => i === last);
      if (onward.length > 0) last = onward[upTo(random, onward.length)]![1];
    }
    if (first === last) continue;
    const span = starts === null ? lengths[first]![last]! : starts[last]! - starts[first]!;
    lags.push([last, first, -Math.ceil(span + slack * random.next() * Math.max(span, 5))]);
    if (starts === null) lengths = longest(n, lags);
  }
}

/** Longest paths between all, or −∞. */
function longest(n: number, lags: readonly Lag[]): number[][] {
  const at = Array.from({ length: n + 2 }, (_, i) =>
    Array.from({ length: n + 2 }, (__, j) => (i === j ? 0 : -Infinity)),
  );
  for (const [i, j, w] of lags) at[i]![j] = Math.max(at[i]![j]!, w);
  for (const [k, onward] of at.entries()) {
    for (const row of at) {
      const first = row[k]!;
      if (first === -Infinity) continue;
      for (let j = 0; j < row.length; j++) row[j] = Math.max(row[j]!, first + onward[j]!);
    }
  }
  return at;
}

/** A schedule without maximum lags: in an order drawn by chance, each as early as lags and resources let it. */
function inTurn({ dur, cap, req, lags }: Project, random: Random): number[] {
  const n = dur.length - 2;
  const starts: number[] = [0];
  const used = cap.map((): number[] => []);
  const open = new Set([...Array(n).keys()].map((i) => i + 1));
  while (open.size > 0) {
    const ready = [...open].filter((i) => lags.every(([a, b]) => b !== i || !open.has(a)));
    const i = ready[upTo(random, Math.min(ready.length, 4))]!;
    const moments = [...Array(dur[i]).keys()];
    let at = Math.max(0, ...lags.filter(([, b]) => b === i).map(([a, , w]) => starts[a]! + w));
    while (moments.some((k) => cap.some((c, r) => (used[r]![at + k] ?? 0) + req[i]![r]! > c))) at++;
    for (const k of moments)
      cap.forEach((_, r) => (used[r]![at + k] = (used[r]![at + k] ?? 0) + req[i]![r]!));
    starts[i] = at;
    open.delete(i);
  }
  return starts;
}

function peak(units: readonly number[], dur: readonly number[], starts: readonly number[]): number {
  const uses = starts.map((t) =>
    units.reduce((sum, u, i) => (starts[i]! <= t && t < starts[i]! + dur[i]! ? sum + u : sum), 0),
  );
  return Math.max(...uses);
}

/** Activities that no lag of 0 or more leaves (or, turned, enters). */
function ends({ n, lags }: Instance, turn: (i: number, j: number) => [number, number]): number[] {
  const inner = lags.filter(([i, j, w]) => i > 0 && j <= n && w >= 0).map(([i, j]) => turn(i, j)[0]);
  return [...Array(n).keys()].map((i) => i + 1).filter((i) => !inner.includes(i));
}
