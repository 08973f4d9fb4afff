import { chain } from './chain.js';
import { compileProblem, stageIndex } from './compile-problem.js';
import { loadsOf } from './loads.js';
import { addEdge, type Network } from './network.js';
import { withoutDueDates, withoutPreferences } from './preferences.js';
import type { Length, Problem, Requirement, Schedule, Stage } from './problem.js';

/** A plan laid out for simulation: numbered, with all that does not change between scenarios. */
export interface SimulationModel {
  readonly p: Problem;
  /** Lags at likely values: what the maker expects of the rest of the plan. Due dates are left out of all networks. */
  readonly likely: Network;
  /**
   * What the rest of the plan follows when a stage moves, the first that can be met: all lags at likely values, those
   * among them that must hold, and the known ones among these, which hold whatever the soap does.
   */
  readonly expected: readonly Network[];
  /** The last of `expected`. */
  readonly certain: Network;
  readonly due: readonly DueStage[];
  readonly unattended: readonly UnattendedStage[];
  /** Planned starts, busy nodes included. */
  readonly starts: Float64Array;
  /** Position of each stage in the order of the plan, which decides between equal times. */
  readonly rank: Int32Array;
  readonly uncertain: readonly UncertainLag[];
  /** The ends of these once more, side by side: a scenario looks them up some hundred times. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly offset: Float64Array;
  /** By stage: the uncertain lags from it or to it. */
  readonly touching: readonly (readonly number[])[];
  /** By stage: those among them that it waits for, and those that others wait for since it. */
  readonly waitsFor: readonly (readonly number[])[];
  readonly begins: readonly (readonly number[])[];
}

/** A stage with a due date. */
export interface DueStage {
  readonly stage: number;
  readonly latest: number;
}

/**
 * A stage that nobody does and nothing waits for, as soap that cures: it comes about as soon as all that it waits for has
 * passed, whenever a plan expects it.
 */
export interface UnattendedStage {
  readonly stage: number;
  readonly earliest: number;
  readonly after: readonly {
    readonly from: number;
    /** Minutes from the start of `from`, without those of the uncertain lag. */
    readonly minutes: number;
    /** Which of the uncertain lags; absent: all is known. */
    readonly lag?: number;
  }[];
}

/** One side of a lag that only shows when it has come about; or a preference, which is looked at in the same way. */
export interface UncertainLag {
  readonly from: number;
  readonly to: number;
  /** Minutes from the start of `from` to the point the lag counts from, less those that `to` itself must be done in. */
  readonly offset: number;
  readonly median: number;
  /** 0 for a preference of known length. */
  readonly sigma: number;
  readonly draw: string;
  /** The draw is known to be below this. */
  readonly below: number;
  readonly side: 'at-least' | 'at-most';
  readonly isPreference: boolean;
  /** What it is likely to come to after so many minutes without having come about, as far as that was asked. */
  readonly likely: Map<number, number>;
  readonly requirement: Requirement;
}

/** Lays out a schedule of the problem, its precedences and the order with busy intervals included. */
export function compileSimulation(p: Problem, s: Schedule): SimulationModel {
  const undated = withoutDueDates(p);
  const required = withoutPreferences(undated);
  const likely = compileProblem(undated, 0.5, s.precedences);
  const certain = compileProblem(required, 0.5, s.precedences, true);
  const expected =
    required === undated
      ? [likely, certain]
      : [likely, compileProblem(required, 0.5, s.precedences), certain];
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
    for (const net of expected) addEdge(net, before, after, net.duration[before]!, tag);
  }
  const uncertain = uncertainLags(p);
  const byStage = (belongs: (lag: UncertainLag, i: number) => boolean): number[][] =>
    p.stages.map((_, i) => uncertain.flatMap((lag, k) => (belongs(lag, i) ? [k] : [])));
  return {
    ...{ p, likely, expected, certain, starts, rank: ranks(certain, starts), uncertain },
    from: Int32Array.from(uncertain, ({ from }) => from),
    to: Int32Array.from(uncertain, ({ to }) => to),
    offset: Float64Array.from(uncertain, ({ offset }) => offset),
    due: dueStages(p),
    unattended: unattendedStages(p, uncertain),
    touching: byStage(({ from, to }, i) => from === i || to === i),
    waitsFor: byStage(({ to, side }, i) => to === i && side === 'at-least'),
    begins: byStage(({ from, side }, i) => from === i && side === 'at-least'),
  };
}

function dueStages({ stages }: Problem): DueStage[] {
  return stages.flatMap(({ isDue, latest, fixed }, stage): DueStage[] =>
    isDue === true && latest !== undefined && fixed === undefined ? [{ stage, latest }] : [],
  );
}

function unattendedStages(p: Problem, uncertain: readonly UncertainLag[]): UnattendedStage[] {
  const index = stageIndex(p);
  return p.stages.flatMap((each, stage): UnattendedStage[] => {
    if (!isUnattended(p, each)) return [];
    const { id, earliest = p.from } = each;
    const known = p.lags.flatMap(({ from, to, point, atLeast }) => {
      if (to !== id || atLeast?.kind !== 'known') return [];
      const offset = point === 'end' ? p.stages[index(from)]!.duration : 0;
      return [{ from: index(from), minutes: offset + atLeast.minutes }];
    });
    const rest = uncertain.flatMap(({ from, to, offset }, lag) =>
      to === stage ? [{ from, minutes: offset, lag }] : [],
    );
    return [{ stage, earliest, after: [...known, ...rest] }];
  });
}

/** Whether nobody does a stage and nothing waits for it: see `UnattendedStage`. */
export function isUnattended(
  { lags }: Problem,
  { id, fixed, duration, uses, calendar, latest, isDue }: Stage,
): boolean {
  const takesNobody = duration === 0 && uses.length === 0 && calendar === undefined;
  const isFree = fixed === undefined && (latest === undefined || isDue === true);
  return (
    takesNobody &&
    isFree &&
    lags.every(({ from, to, atMost }) => from !== id && (to !== id || atMost === undefined))
  );
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
      const isPreference = lag.isPreference === true && name === 'at-most';
      const requirement: Requirement = { kind: `lag-${name}`, lag: lag.id };
      const of = {
        from,
        to,
        offset,
        side: name,
        isPreference,
        requirement,
        likely: new Map<number, number>(),
      };
      if (length?.kind === 'uncertain') {
        const { median, sigma, draw } = length;
        return [{ ...of, median, sigma, draw, below: p.draws[draw]?.below ?? Infinity }];
      }
      if (length === undefined || !isPreference) return [];
      return [{ ...of, median: length.minutes, sigma: 0, draw: '', below: Infinity }];
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
