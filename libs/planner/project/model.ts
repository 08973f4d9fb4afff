import type { Edge } from '../learning/lag-edges.js';
import { longestPaths, tighten, tightestLags, type Distances } from './longest-paths.js';
import type { Project } from './project.js';

/**
 * A project as bounds and lags. Variables are the starts in their order, then one choice for each pair of activities
 * that together overload a resource and may still come in either order: 1 when the first of the pair goes first.
 */
export interface Model {
  readonly starts: number;
  /** Two for each variable, as on the trail. */
  readonly bounds: Int32Array;
  readonly edges: readonly Edge[];
  /** No activity ends after this. */
  readonly horizon: number;
  /** No schedule ends before this. */
  readonly lowerBound: number;
}

/** All that follows from the lags and from pairs that cannot overlap. @returns null when no schedule exists */
export function distancesOf(project: Project): Distances | null {
  const distances = longestPaths(project);
  if (distances === null) return null;
  const { count, at } = distances;
  const pairs = pairsApart(project);
  for (let found = true; found;) {
    found = false;
    for (const [i, j] of pairs) {
      for (const [a, b] of [
        [i, j],
        [j, i],
      ] as const) {
        const isOrdered = at[a * count + b]! >= project.dur[a]!;
        // b cannot end before a starts.
        if (isOrdered || at[a * count + b]! <= -project.dur[b]!) continue;
        if (!tighten(distances, a, b, project.dur[a]!)) return null;
        found = true;
      }
    }
  }
  return distances;
}

/** @param horizon no schedule that ends later is of interest; null when that leaves none */
export function modelOf(project: Project, distances: Distances, horizon: number): Model | null {
  const { count, at } = distances;
  const far = (i: number, j: number): number => at[i * count + j]!;
  const pairs = pairsApart(project).filter(
    ([i, j]) => far(i, j) < project.dur[i]! && far(j, i) < project.dur[j]!,
  );
  const bounds = new Int32Array(2 * (count + pairs.length));
  for (let i = 0; i < count; i++) {
    const latest = Math.min(horizon - far(i, count - 1), -far(i, 0));
    bounds[2 * i] = far(0, i);
    bounds[2 * i + 1] = -latest;
    if (far(0, i) > latest) return null;
  }
  const edges: Edge[] = tightestLags(distances).map(([i, j, w]) => ({
    ...{ from: 2 * i, to: 2 * j, weight: w, choice: -1 },
  }));
  pairs.forEach(([i, j], k) => {
    const choice = 2 * (count + k);
    bounds[choice + 1] = -1;
    edges.push({ from: 2 * i, to: 2 * j, weight: project.dur[i]!, choice });
    edges.push({ from: 2 * j, to: 2 * i, weight: project.dur[j]!, choice: choice + 1 });
  });
  return { starts: count, bounds, edges, horizon, lowerBound: far(0, count - 1) };
}

/** All values of a schedule: its starts and, at the choices, which of two comes first. */
export function guideOf(model: Model, starts: Int32Array): Int32Array {
  const guide = new Int32Array(model.bounds.length >> 1);
  guide.set(starts);
  for (const { from, to, choice } of model.edges) {
    if (choice >= 0 && (choice & 1) === 0 && starts[from >> 1]! < starts[to >> 1]!) guide[choice >> 1] = 1;
  }
  return guide;
}

/** Pairs of activities that together need more of a resource than there is. */
function pairsApart({ dur, cap, req }: Project): [number, number][] {
  const pairs: [number, number][] = [];
  for (let j = 0; j < dur.length; j++) {
    for (let i = 0; i < j; i++) {
      if (dur[i] === 0 || dur[j] === 0) continue;
      if (cap.some((capacity, r) => req[i]![r]! + req[j]![r]! > capacity)) pairs.push([i, j]);
    }
  }
  return pairs;
}
