import { nextIn } from './domains.js';
import type { Network, Scratch } from './network.js';

/** The first start of every node's own domain; NaN where it has none. */
export function firstStarts(net: Network): Float64Array {
  return Float64Array.from(net.domains, (domain) => nextIn(domain, -Infinity));
}

/**
 * Raises `x` in place to the least solution of the network that is nowhere below it.
 *
 * Label correcting, first in first out. A chain of updates in which no domain had a gap to jump and which
 * is as long as the network has nodes visits some node twice: a cycle of positive length, and no solution.
 * Every other update jumps a gap, and gaps are few; so the work does not grow with the length of the
 * horizon in minutes.
 *
 * @param x starts, each within its domain
 * @param seeds the nodes whose edges may be violated; null for all
 * @param frozen nodes to leave alone even where an edge is violated
 * @returns -1, or a node for which no start is left (`x` is then of no use); the scratch tells what was touched
 */
export function raise(
  net: Network,
  x: Float64Array,
  seeds: readonly number[] | null,
  frozen: Uint8Array | null = null,
): number {
  const { scratch } = net;
  const { queue, queued, depth, by, touched, isTouched } = scratch;
  const size = queue.length;
  // The work must follow what changes, not the size of the network.
  for (let k = 0; k < scratch.touchedCount; k++) {
    const node = touched[k]!;
    isTouched[node] = queued[node] = depth[node] = 0;
  }
  scratch.touchedCount = 0;
  let head = 0;
  let tail = 0;
  const seedCount = seeds === null ? net.count : seeds.length;
  for (let k = 0; k < seedCount; k++) {
    const node = seeds === null ? k : seeds[k]!;
    touch(scratch, node, x);
    if (queued[node] === 1) continue;
    queued[node] = 1;
    queue[tail++] = node;
  }
  while (head !== tail) {
    const i = queue[head]!;
    head = head + 1 === size ? 0 : head + 1;
    queued[i] = 0;
    const out = net.out[i]!;
    for (let k = 0; k < out.length; k++) {
      const e = out[k]!;
      const j = net.to[e]!;
      const bound = x[i]! + net.weight[e]!;
      if (bound <= x[j]! || frozen?.[j] === 1) continue;
      const at = nextIn(net.domains[j]!, bound);
      by[j] = e;
      if (Number.isNaN(at)) return j;
      touch(scratch, j, x);
      x[j] = at;
      if (at > bound) {
        by[j] = -1;
        depth[j] = 0;
      } else {
        depth[j] = depth[i]! + 1;
        if (depth[j] >= net.count) return j;
      }
      if (queued[j] === 1) continue;
      queued[j] = 1;
      queue[tail] = j;
      tail = tail + 1 === size ? 0 : tail + 1;
    }
  }
  return -1;
}

function touch(scratch: Scratch, node: number, x: Float64Array): void {
  if (scratch.isTouched[node] === 1) return;
  scratch.isTouched[node] = 1;
  scratch.touched[scratch.touchedCount++] = node;
  scratch.before[node] = x[node]!;
}

/** The least solution of the network, or null when there is none. */
export function leastSolution(net: Network): Float64Array | null {
  const x = firstStarts(net);
  net.scratch.by.fill(-1);
  return x.some(Number.isNaN) || raise(net, x, null) >= 0 ? null : x;
}
