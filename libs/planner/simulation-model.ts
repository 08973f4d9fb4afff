import { chain } from './chain.js';
import { compileProblem, stageIndex } from './compile-problem.js';
import { loadsOf } from './loads.js';
import { addEdge, type Network } from './network.js';
import type { Length, Problem, Requirement, Schedule } from './problem.js';

/** A plan laid out for simulation: numbered, with all that does not change between scenarios. */
export interface SimulationModel {
  readonly p: Problem;
  /** Lags at likely values: what the maker expects of the rest of the plan. */
  readonly likely: Network;
  /** Known lags only: what holds whatever the soap does. */
  readonly certain: Network;
  /** Planned starts, busy nodes included. */
  readonly starts: Float64Array;
  /** Position of each stage in the order of the plan, which decides between equal times. */
  readonly rank: Int32Array;
  readonly uncertain: readonly UncertainLag[];
  /** By stage: the uncertain lags from it or to it. */
  readonly touching: readonly (readonly number[])[];
}

/** One side of a lag that only shows when it has come about. */
export interface UncertainLag {
  readonly from: number;
  readonly to: number;
  /** Minutes from the start of `from` to the point the lag counts from, less those that `to` itself must be done in. */
  readonly offset: number;
  readonly median: number;
  readonly sigma: number;
  readonly draw: string;
  /** The draw is known to be below this. */
  readonly below: number;
  readonly side: 'at-least' | 'at-most';
  /** What it is likely to come to after so many minutes without having come about, as far as that was asked. */
  readonly likely: Map<number, number>;
  readonly requirement: Requirement;
}

/** Lays out a schedule of the problem, its precedences and the order with busy intervals included. */
export function compileSimulation(p: Problem, s: Schedule): SimulationModel {
  const likely = compileProblem(p, 0.5, s.precedences);
  const certain = compileProblem(p, 0.5, s.precedences, true);
  const starts = Float64Array.from(likely.domains, (domain) => domain.from[0] ?? 0);
  p.stages.forEach(({ id, fixed }, i) => {
    const start = fixed ?? s.starts.get(id);
    if (start === undefined) throw new RangeError(`the schedule has no start for "${id}"`);
    starts[i] = start;
  });
  for (const { before, after, resource } of chain(loadsOf(p), starts, likely.duration)) {
    // Between stages the schedule's own precedences speak.
    if (before < p.stages.length && after < p.stages.length) continue;
    const stage = p.stages[Math.min(before, after)]!.id;
    const tag: Requirement = { kind: 'resource', resource, stages: [stage] };
    for (const net of [likely, certain]) addEdge(net, before, after, net.duration[before]!, tag);
  }
  const uncertain = uncertainLags(p);
  const touching = p.stages.map((): number[] => []);
  uncertain.forEach(({ from, to }, k) => {
    for (const i of new Set([from, to])) touching[i]!.push(k);
  });
  return {
    ...{ p, likely, certain, starts, rank: ranks(certain, starts), uncertain },
    touching,
  };
}

function uncertainLags(p: Problem): UncertainLag[] {
  const index = stageIndex(p);
  return p.lags.flatMap((lag) => {
    const [from, to] = [index(lag.from), index(lag.to)];
    const [first, second] = [p.stages[from]!, p.stages[to]!];
    if (first.fixed !== undefined && second.fixed !== undefined) return [];
    const offset = lag.point === 'end' ? first.duration : 0;
    const last = lag.until === 'end' ? second.duration : 0;
    const side = (
      length: Length | undefined,
      name: 'at-least' | 'at-most',
      offset: number,
    ): UncertainLag[] => {
      if (length?.kind !== 'uncertain') return [];
      const below = p.draws[length.draw]?.below ?? Infinity;
      const { median, sigma, draw } = length;
      const requirement: Requirement = { kind: `lag-${name}`, lag: lag.id };
      return [{ from, to, offset, median, sigma, draw, below, side: name, requirement, likely: new Map() }];
    };
    return [...side(lag.atLeast, 'at-least', offset), ...side(lag.atMost, 'at-most', offset - last)];
  });
}

/** By planned start; at equal starts, what must come first first. */
function ranks(net: Network, starts: Float64Array): Int32Array {
  const rank = new Int32Array(net.stageCount).fill(-1);
  let next = 0;
  const visiting = new Set<number>();
  const visit = (i: number): void => {
    if (i >= net.stageCount || rank[i] !== -1 || visiting.has(i)) return;
    visiting.add(i);
    for (let e = 0; e < net.from.length; e++) {
      const j = net.from[e]!;
      if (net.to[e] === i && net.weight[e]! >= 0 && starts[j] === starts[i]) visit(j);
    }
    rank[i] = next++;
  };
  const byStart = Array.from({ length: net.stageCount }, (_, i) => i).sort((a, b) => starts[a]! - starts[b]!);
  byStart.forEach(visit);
  return rank;
}
