import type { Random } from '#units';
import type { Project } from './project.js';

/** By how much the edges of what is freed are blurred, in time. */
const BLUR = 3;

/** Activities around a moment of the schedule. */
export function aroundMoment(
  starts: Int32Array,
  size: number,
  dur: readonly number[],
  random: Random,
): Uint8Array {
  const isFree = new Uint8Array(starts.length);
  const moment = random.next() * starts.at(-1)!;
  const far = dur.map((d, i) => Math.abs(starts[i]! + d / 2 - moment) + random.next() * BLUR);
  const near = [...dur.keys()].sort((i, j) => far[i]! - far[j]!);
  for (const i of near.slice(0, size)) isFree[i] = 1;
  return isFree;
}

/**
 * Activities that hang together: from one to another over a lag, or to one that runs at about the same time. What maximum
 * lags tie together can only move together, however long it takes.
 */
export function alongLags(
  starts: Int32Array,
  size: number,
  dur: readonly number[],
  neighbours: readonly (readonly number[])[],
  random: Random,
): Uint8Array {
  const count = dur.length;
  const pick = (end: number): number => Math.floor(random.next() * end);
  const isFree = new Uint8Array(count);
  const freed = [pick(count)];
  isFree[freed[0]!] = 1;
  for (let tries = 20 * count; freed.length < size && tries > 0; tries--) {
    const i = freed[pick(freed.length)]!;
    const near = neighbours[i]!;
    const overLag = near.length > 0 && random.next() < 0.5;
    const j = overLag ? near[pick(near.length)]! : pick(count);
    const isApart = starts[j]! >= starts[i]! + dur[i]! + BLUR || starts[i]! >= starts[j]! + dur[j]! + BLUR;
    if (isFree[j] === 1 || (!overLag && isApart)) continue;
    isFree[j] = 1;
    freed.push(j);
  }
  return isFree;
}

/** Who is tied to whom by a lag, source and sink aside. */
export function neighboursOf({ dur, lags }: Project): number[][] {
  const neighbours: number[][] = dur.map(() => []);
  const isInner = (i: number): boolean => i > 0 && i < dur.length - 1;
  for (const [i, j] of lags) {
    if (!isInner(i) || !isInner(j)) continue;
    neighbours[i]!.push(j);
    neighbours[j]!.push(i);
  }
  return neighbours;
}
