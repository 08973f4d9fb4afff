import type { Random } from '#units';
import type { Network } from '../network.js';

/** Chooses which nodes are freed: about so many of those that can move. */
export type Destroy = (starts: Float64Array, size: number, random: Random) => Uint8Array;

/** How likely the next node is reached over a lag and not by its time. */
const OVER_LAG = 0.5;

/** Nodes around a moment of the schedule. */
export function aroundMoment(net: Network): Destroy {
  const { movable, blur } = movableOf(net);
  return (starts, size, random) => {
    const isFree = new Uint8Array(net.count);
    const from = movable.reduce((least, i) => Math.min(least, starts[i]!), Infinity);
    const to = movable.reduce((most, i) => Math.max(most, starts[i]! + net.duration[i]!), -Infinity);
    const moment = from + random.next() * (to - from);
    const far = new Float64Array(net.count);
    for (const i of movable) {
      far[i] = Math.abs(starts[i]! + net.duration[i]! / 2 - moment) + random.next() * blur;
    }
    for (const i of [...movable].sort((a, b) => far[a]! - far[b]!).slice(0, size)) isFree[i] = 1;
    return isFree;
  };
}

/**
 * Nodes that hang together: from one to another over a lag, or to one at about the same time. What maximum lags tie
 * together can only move together, however long it takes.
 */
export function alongLags(net: Network): Destroy {
  const { movable, blur } = movableOf(net);
  const isMovable = new Uint8Array(net.count);
  for (const i of movable) isMovable[i] = 1;
  const neighbours: number[][] = net.domains.map(() => []);
  // What everything is tied to ties nothing together.
  const degree = new Int32Array(net.count);
  net.from.forEach((from, e) => {
    degree[from]!++;
    degree[net.to[e]!]!++;
  });
  const isHub = (i: number): boolean => degree[i]! > movable.length;
  net.from.forEach((from, e) => {
    const to = net.to[e]!;
    if (isMovable[from] === 0 || isMovable[to] === 0 || isHub(from) || isHub(to)) return;
    neighbours[from]!.push(to);
    neighbours[to]!.push(from);
  });
  return (starts, size, random) => {
    const pick = <T>(from: readonly T[]): T => from[Math.floor(random.next() * from.length)]!;
    const isFree = new Uint8Array(net.count);
    const freed = [pick(movable)];
    isFree[freed[0]!] = 1;
    const isApart = (i: number, j: number): boolean => starts[j]! >= starts[i]! + net.duration[i]! + blur;
    for (let tries = 20 * movable.length; freed.length < size && tries > 0; tries--) {
      const i = pick(freed);
      const near = neighbours[i]!;
      const overLag = near.length > 0 && random.next() < OVER_LAG;
      const j = overLag ? pick(near) : pick(movable);
      if (isFree[j] === 1 || (!overLag && (isApart(i, j) || isApart(j, i)))) continue;
      isFree[j] = 1;
      freed.push(j);
    }
    return isFree;
  };
}

/** The nodes that can move, and by how much the edges of what is freed are blurred: half of what they last on average. */
function movableOf(net: Network): { readonly movable: number[]; readonly blur: number } {
  const movable = [...net.domains.keys()].filter((i) => net.fixed[i] === 0);
  const length = movable.reduce((sum, i) => sum + net.duration[i]!, 0);
  return { movable, blur: Math.max(1, length / movable.length / 2) };
}
