import type { Random } from '#units';
import type { Budget } from './budget.js';
import type { ListSchedule, ListSchedules } from './list-schedules.js';

/** Lists alive at a time. */
const POPULATION = 40;

/** How strongly the lists at first follow what comes after. */
const STRONGEST_PULL = 6;

/** Lists in a row without a schedule after which there is no point in more, while there is none at all. */
const HOPELESS = 20;

/** Children in a row without improvement after which it ends. */
const PATIENCE = 2000;

/** What a child costs, in conflicts. */
const COST = 1;

/** Children between two yields. */
const PAUSE = 20;

/**
 * A genetic algorithm over activity lists, each child pushed forward and backward (Valls, Ballestín and Quintanilla, "A hybrid
 * genetic algorithm for the resource-constrained project scheduling problem", EJOR 185, 2008).
 * @param best what is to be improved on: the least total so far, infinite where there is none
 * @param least what is good enough
 * @yields better schedules, or null now and then
 */
export function* geneticSearch(
  lists: ListSchedules,
  best: number,
  least: number,
  random: Random,
  budget: Budget,
): Generator<ListSchedule | null, void> {
  const parents: ListSchedule[] = [];
  const pick = (): ListSchedule => {
    const [a, b] = [pickFrom(parents, random), pickFrom(parents, random)];
    return a.total <= b.total ? a : b;
  };
  let lost = 0;
  for (let idle = 0, born = 1; idle < PATIENCE && best > least; idle++, born++) {
    if (budget.left <= 0 || budget.stop()) return;
    budget.left -= COST;
    const isFirst = parents.length < POPULATION;
    const list = isFirst
      ? lists.sample(random, 1 + (born % STRONGEST_PULL))
      : lists.mutate(crossover(pick().list, pick().list, random), random);
    const early = lists.early(list);
    if (early === null) {
      if (parents.length === 0 && ++lost >= HOPELESS) return;
    } else {
      const child = lists.forwardBackward(early);
      if (isFirst) parents.push(child);
      else replaceWorst(parents, child);
      if (child.total < best) {
        best = child.total;
        idle = 0;
        yield child;
      }
    }
    if (born % PAUSE === 0) yield null;
  }
}

function pickFrom(parents: readonly ListSchedule[], random: Random): ListSchedule {
  return parents[Math.floor(random.next() * parents.length)]!;
}

/** Unless the child is later still or there already. */
function replaceWorst(parents: ListSchedule[], child: ListSchedule): void {
  let worst = 0;
  for (const [k, { total, starts }] of parents.entries()) {
    if (total >= parents[worst]!.total) worst = k;
    if (total === child.total && starts.every((at, i) => at === child.starts[i])) return;
  }
  if (child.total <= parents[worst]!.total) parents[worst] = child;
}

/** The mother's list, but what is in its middle in the father's order (Hartmann, Naval Research Logistics 45, 1998). */
function crossover(mother: Int32Array, father: Int32Array, random: Random): Int32Array {
  const a = Math.floor(random.next() * mother.length);
  const b = Math.floor(random.next() * mother.length);
  const [from, to] = a < b ? [a, b] : [b, a];
  const child = mother.slice();
  let most = 0;
  for (let k = 0; k < mother.length; k++) most = Math.max(most, mother[k]!);
  const isInside = new Uint8Array(most + 1);
  for (let k = from; k < to; k++) isInside[mother[k]!] = 1;
  let place = from;
  for (let k = 0; k < father.length; k++) if (isInside[father[k]!] === 1) child[place++] = father[k]!;
  return child;
}
