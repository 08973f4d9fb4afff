import { stageIndex } from './compile-problem.js';
import type { Problem } from './problem.js';

/** A resource in use from the start of node `first` to the end of node `last`: a stage, a hold, a busy interval. */
export interface Load {
  readonly first: number;
  readonly last: number;
  readonly amount: number;
  /** Neither end can move. */
  readonly constant: boolean;
}

/** All loads of one resource. */
export interface ResourceLoads {
  readonly resource: string;
  readonly capacity: number;
  readonly loads: readonly Load[];
}

/** The loads of each resource, with nodes numbered as in the compiled network. */
export function loadsOf(p: Problem): ResourceLoads[] {
  const index = stageIndex(p);
  const isFixed = (i: number): boolean => p.stages[i]!.fixed !== undefined;
  let busyNode = p.stages.length;
  return p.resources.map(({ id, capacity, busy }) => {
    const loads: Load[] = [];
    const add = (first: number, last: number, amount: number, constant: boolean): void => {
      if (amount > 0) loads.push({ first, last, amount, constant });
    };
    p.stages.forEach((stage, i) => {
      if (stage.duration === 0) return;
      for (const use of stage.uses) if (use.resource === id) add(i, i, use.amount, isFixed(i));
    });
    for (const hold of p.holds) {
      if (hold.resource !== id) continue;
      const [first, last] = [index(hold.from), index(hold.to)];
      add(first, last, hold.amount, isFixed(first) && isFixed(last));
    }
    for (const { amount } of busy) {
      add(busyNode, busyNode, amount, true);
      busyNode++;
    }
    return { resource: id, capacity, loads };
  });
}

/**
 * The first overload in time at the given starts: loads of one resource that overlap and together exceed its
 * capacity, as few as will do. Loads that cannot move may exceed it among themselves: that is history.
 * @returns undefined when every resource suffices
 */
export function firstOverload(
  all: readonly ResourceLoads[],
  starts: Float64Array,
  duration: Float64Array,
): readonly Load[] | undefined {
  let firstAt = Infinity;
  let found: readonly Load[] | undefined;
  for (const { capacity, loads } of all) {
    for (const load of loads) {
      const at = starts[load.first]!;
      if (at >= firstAt) continue;
      const present = loads.filter(
        (other) => starts[other.first]! <= at && starts[other.last]! + duration[other.last]! > at,
      );
      const excess = overload(present, capacity);
      if (excess === undefined) continue;
      firstAt = at;
      found = excess;
    }
  }
  return found;
}

function overload(present: readonly Load[], capacity: number): readonly Load[] | undefined {
  const amount = (loads: readonly Load[]): number => loads.reduce((sum, load) => sum + load.amount, 0);
  if (amount(present) <= capacity) return undefined;
  const constant = present.filter((load) => load.constant);
  if (constant.length > 0 && amount(constant) >= capacity) {
    const intruder = present.find((load) => !load.constant);
    return intruder && [...constant, intruder];
  }
  const largestFirst = [...present].sort((a, b) => b.amount - a.amount);
  let sum = 0;
  const needed = largestFirst.findIndex((load) => (sum += load.amount) > capacity);
  return largestFirst.slice(0, needed + 1);
}
