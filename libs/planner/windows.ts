import { compileProblem } from './compile-problem.js';
import { minimalConflict } from './conflict.js';
import { firstStarts, leastSolution, raise } from './fixed-point.js';
import { mirror, type Network } from './network.js';
import type {
  Binding,
  Certainty,
  Precedence,
  Problem,
  Requirement,
  Stage,
  Window,
  WindowsOutcome,
} from './problem.js';
import { requirementsOf, restrict, restrictPrecedences } from './requirements.js';

/**
 * The earliest and the latest start of every stage that honour all lags and calendars at once; resources only
 * through `extra`. Constraints of the form x[j] ≥ x[i] + a, x[j] in a closed set, are kept by the pointwise
 * minimum and maximum of two solutions, so a least and a greatest solution exist and the bounds are exact.
 * @param certainty 0.5 (likely) up to below 1
 * @param extra precedences to honour besides
 * @returns windows by stage id, each bound with the constraint that set it; or a minimal set of
 *   requirements in conflict: leave out any one of them and the others can be met
 */
export function windows(p: Problem, certainty: Certainty, extra: readonly Precedence[] = []): WindowsOutcome {
  const net = compileProblem(p, certainty, extra);
  const back = mirror(net);
  const least = leastSolution(net);
  if (least === null) return { status: 'conflict', requirements: lagConflict(p, certainty, extra) };
  // What can be met forwards in time can be met backwards.
  const greatest = leastSolution(back)!;
  const windowOf = windowReader(p, net, back);
  const found = new Map(p.stages.map((stage, i) => [stage.id, windowOf(i, least[i]!, -greatest[i]!)]));
  return { status: 'windows', windows: found };
}

/**
 * The window of each stage that is still open, given that all stages which start earlier are done at their planned
 * times and all others are free.
 * @param starts by stage id
 * @returns by stage id; undefined where the stage cannot be done so
 */
export function windowsAlong(
  p: Problem,
  certainty: Certainty,
  starts: ReadonlyMap<string, number>,
): Map<string, Window | undefined> {
  const net = compileProblem(p, certainty);
  const back = mirror(net);
  const windowOf = windowReader(p, net, back);
  const startOf = (i: number): number => p.stages[i]!.fixed ?? starts.get(p.stages[i]!.id)!;
  const inOrder = [...p.stages.keys()].sort((a, b) => startOf(a) - startOf(b));
  const [ahead, behind] = [solutionsAlong(net), solutionsAlong(back)];
  const found = new Map<string, Window | undefined>();
  for (const i of inOrder) {
    if (net.fixed[i] === 0) {
      const least = ahead.least();
      found.set(p.stages[i]!.id, least ? windowOf(i, least[i]!, -behind.least()![i]!) : undefined);
    }
    ahead.settle(i, startOf(i));
    behind.settle(i, -startOf(i));
  }
  return found;
}

/** Least solutions while one node after the other is settled, each from the one before where that is possible. */
function solutionsAlong(net: Network): {
  readonly settle: (node: number, at: number) => void;
  readonly least: () => Float64Array | null;
} {
  const settled = Uint8Array.from(net.fixed);
  const x = firstStarts(net);
  let state: 'open' | 'solved' | 'stuck' = 'open';
  let seeds: number[] | null = null;
  const solve = (): void => {
    if (seeds === null) net.scratch.by.fill(-1);
    // Where a node has no start of its own, there is nothing to raise.
    const isStuck =
      x.some(Number.isNaN) || raise(net, x, seeds, settled) >= 0 || breaksSettled(net, x, settled);
    state = isStuck ? 'stuck' : 'solved';
    seeds = [];
  };
  return {
    settle(node, at) {
      settled[node] = 1;
      if (state === 'solved' && at >= x[node]!) {
        x[node] = at;
        seeds?.push(node);
      } else {
        // What was found may lie too high now.
        const fresh = firstStarts(net);
        for (let i = 0; i < net.count; i++) if (settled[i] === 0) x[i] = fresh[i]!;
        x[node] = at;
        seeds = null;
      }
      state = 'open';
    },
    least() {
      if (state === 'open') solve();
      return state === 'stuck' ? null : x;
    },
  };
}

/**
 * Whether a settled node would have to be later; between two settled ones a lag is history.
 * @param x as high as the others have to be
 */
function breaksSettled(net: Network, x: Float64Array, settled: Uint8Array): boolean {
  return net.from.some((from, e) => settled[from] === 0 && x[from]! + net.weight[e]! > x[net.to[e]!]!);
}

/**
 * A minimal set of requirements, resources aside, that cannot be met together. There must be one. Once `stop` says true,
 * all that are left are kept.
 */
export function lagConflict(
  p: Problem,
  certainty: Certainty,
  extra: readonly Precedence[] = [],
  stop: () => boolean = () => false,
): Requirement[] {
  const posted = extra.map(({ before, after, resource }): Requirement => ({
    kind: 'resource',
    resource,
    stages: [before, after],
  }));
  const candidates = [...requirementsOf(p).filter((r) => r.kind !== 'resource'), ...posted];
  return minimalConflict(candidates, (part) => {
    if (stop()) return false;
    const net = compileProblem(restrict(p, part), certainty, restrictPrecedences(extra, part));
    return leastSolution(net) === null;
  });
}

/** Reads the constraints that set a bound off the networks that were just solved. */
function windowReader(
  p: Problem,
  net: Network,
  back: Network,
): (i: number, earliest: number, latest: number) => Window {
  const lasts = firstStarts(back);
  return (i, earliest, latest) => {
    const stage = p.stages[i]!;
    return {
      earliest,
      latest,
      slack: latest - earliest,
      earliestBy: edgeOf(net, i) ?? lowBinding(p, stage, earliest),
      latestBy: edgeOf(back, i) ?? highBinding(p, stage, latest, -lasts[i]!),
    };
  };
}

function edgeOf(net: Network, node: number): Requirement | undefined {
  return net.tags[net.scratch.by[node]!] ?? undefined;
}

function lowBinding(p: Problem, stage: Stage, at: number): Binding {
  if (stage.fixed !== undefined) return { kind: 'fixed', stage: stage.id };
  if (at === stage.earliest) return { kind: 'earliest', stage: stage.id };
  return at === p.from ? { kind: 'origin' } : { kind: 'calendar', stage: stage.id };
}

/** @param last the last start that its calendar, `latest` and the horizon leave it */
function highBinding(p: Problem, stage: Stage, at: number, last: number): Binding {
  if (stage.fixed !== undefined) return { kind: 'fixed', stage: stage.id };
  if (at < last) return { kind: 'calendar', stage: stage.id };
  return (stage.latest ?? Infinity) <= p.until ? { kind: 'latest', stage: stage.id } : { kind: 'horizon' };
}
