import { controllability } from '#planner';
import { seededRandom } from '#units';
import { executePolicy } from './execute-policy.js';
import { orderNetwork } from './order-network.js';
import { partialOrder } from './partial-order.js';
import type { OrderLink, UncertainProject } from './uncertain-project.js';

export interface OrderOptions {
  readonly seed: number;
  /** Durations drawn to make schedules for, 0 or more. */
  readonly drawnSchedules: number;
  /** Durations drawn to try the orders on, 1 or more. */
  readonly trials: number;
}

export interface ChosenOrder {
  readonly links: readonly OrderLink[];
  /** Whether it can be carried through whatever the durations. */
  readonly controllable: boolean;
  /** Share of the trials carried through, and their mean makespan. */
  readonly share: number;
  readonly makespan: number;
}

/** Levels between the shortest and the longest durations that schedules are made for. */
const LEVELS = [1, 0.95, 0.9, 0.8, 0.7, 0.6, 0.5, 0.25, 0];

/**
 * An order to carry the project through by. Orders are taken from schedules for durations at several levels and for
 * some drawn evenly between the bounds; of those that hold whatever happens, or else carry most trials through, the
 * one with the smallest mean makespan.
 * @param solve start times for known durations, or null when there are none
 * @returns null when no schedule was found
 */
export function chooseOrder(
  project: UncertainProject,
  solve: (durations: readonly number[]) => ArrayLike<number> | null,
  { seed, drawnSchedules, trials }: OrderOptions,
): ChosenOrder | null {
  const random = seededRandom(seed);
  const { shortest, longest } = project;
  const draw = (): number[] =>
    shortest.map((low, i) => low + Math.floor(random.next() * (longest[i]! + 1 - low)));
  const scheduled = [
    ...LEVELS.map((level) => shortest.map((low, i) => Math.round(low + level * (longest[i]! - low)))),
    ...Array.from({ length: drawnSchedules }, draw),
  ];
  const samples = Array.from({ length: trials }, draw);
  const orders = new Map<string, ChosenOrder>();
  for (const dur of scheduled) {
    const starts = solve(dur);
    if (starts === null) continue;
    const links = partialOrder({ ...project, dur }, starts);
    const key = links.toSorted(([a, b], [c, d]) => a - c || b - d).join(' ');
    if (!orders.has(key)) orders.set(key, tried(project, links, samples));
  }
  return [...orders.values()].toSorted(byWorth)[0] ?? null;
}

function tried(
  project: UncertainProject,
  links: readonly OrderLink[],
  samples: readonly (readonly number[])[],
): ChosenOrder {
  const makespans = samples.flatMap((durations) => {
    const outcome = executePolicy(project, links, durations);
    return outcome.status === 'done' ? [outcome.makespan] : [];
  });
  return {
    links,
    controllable: controllability(orderNetwork(project, links)).controllable,
    share: makespans.length / samples.length,
    makespan: makespans.reduce((sum, each) => sum + each, 0) / makespans.length,
  };
}

function byWorth(a: ChosenOrder, b: ChosenOrder): number {
  return Number(b.controllable) - Number(a.controllable) || b.share - a.share || a.makespan - b.makespan;
}
