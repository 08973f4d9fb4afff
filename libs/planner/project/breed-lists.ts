import type { Random } from '#units';
import type { Best } from './best.js';
import type { ListSchedules } from './list-schedules.js';

/** Lists alive at a time. */
const POPULATION = 40;

/** How strongly the lists at first follow what comes after. */
const STRONGEST_PULL = 6;

interface Parent {
  readonly list: Int32Array;
  readonly starts: Int32Array;
  readonly makespan: number;
}

export interface BreedingOptions {
  /** Children in a row without improvement after which it ends. */
  readonly patience: number;
  /** What is good enough. */
  readonly lowerBound: number;
  readonly stop: () => boolean;
}

/**
 * A genetic algorithm over lists, each child pushed to and fro (Valls, Ballestín and Quintanilla, "A hybrid genetic
 * algorithm for the resource-constrained project scheduling problem", EJOR 185, 2008).
 */
export function breedLists(lists: ListSchedules, best: Best, random: Random, options: BreedingOptions): void {
  const { patience, lowerBound, stop } = options;
  const parents: Parent[] = [];
  let idle = 0;
  const grown = (list: Int32Array): Parent => {
    const starts = new Int32Array(lists.count);
    lists.early(list, starts);
    const makespan = lists.toAndFro(starts, list);
    idle = makespan < best.makespan ? 0 : idle + 1;
    best.improve(starts);
    return { list, starts, makespan };
  };
  const pick = (): Parent => {
    const [a, b] = [pickFrom(parents, random), pickFrom(parents, random)];
    return a.makespan <= b.makespan ? a : b;
  };
  while (idle < patience && best.makespan > lowerBound && !stop()) {
    const count = parents.length;
    if (count < POPULATION) parents.push(grown(lists.sample(random, 1 + (count % STRONGEST_PULL))));
    else replaceWorst(parents, grown(lists.shake(crossed(pick().list, pick().list, random), random)));
  }
}

function pickFrom(parents: readonly Parent[], random: Random): Parent {
  return parents[Math.floor(random.next() * parents.length)]!;
}

/** Unless the child is longer still or there already. */
function replaceWorst(parents: Parent[], child: Parent): void {
  let worst = 0;
  for (const [k, { makespan, starts }] of parents.entries()) {
    if (makespan >= parents[worst]!.makespan) worst = k;
    if (makespan === child.makespan && starts.every((at, i) => at === child.starts[i])) return;
  }
  if (child.makespan <= parents[worst]!.makespan) parents[worst] = child;
}

/** The mother's list, but what is in its middle in the father's order (Hartmann, Naval Research Logistics 45, 1998). */
function crossed(mother: Int32Array, father: Int32Array, random: Random): Int32Array {
  const a = Math.floor(random.next() * mother.length);
  const b = Math.floor(random.next() * mother.length);
  const [from, to] = a < b ? [a, b] : [b, a];
  const child = mother.slice();
  const isInside = new Uint8Array(mother.length);
  for (const i of mother.subarray(from, to)) isInside[i] = 1;
  let k = from;
  for (const i of father) if (isInside[i] === 1) child[k++] = i;
  return child;
}
