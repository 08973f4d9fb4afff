import { compileProblem, stageIndex } from '../compile-problem.js';
import type { Draws } from '../draws.js';
import { leastSolution } from '../fixed-point.js';
import { addEdge, mirror } from '../network.js';
import { withoutPreferences } from '../preferences.js';
import type { Length, Problem } from '../problem.js';

/**
 * For each scenario, the latest minute from which all that is open could still be done in its windows by somebody who
 * knew every length beforehand and had as many hands as needed; -Infinity where nobody could.
 *
 * Nobody at the bench knows more, so the share of scenarios whose value is `from` or later is at least the odds of
 * whatever plan begins at `from`: a bound that needs no plan. As the greatest solution of the network is greatest at
 * every stage at once, its earliest open stage is as late as it can be.
 * @param asked the problem; its due dates are to be kept
 * @param draws of the problem
 */
export function hindsightBegins(asked: Problem, draws: Draws, scenarios: number): Float64Array {
  // What is only preferred keeps nobody from being on time.
  const p = withoutPreferences(asked);
  const back = mirror(compileProblem(p, 0.5, [], true));
  const sides = uncertainSides(p);
  const first = back.from.length;
  for (const { from, to } of sides) addEdge(back, from, to, 0);
  const open = p.stages.flatMap((stage, i) => (stage.fixed === undefined ? [i] : []));
  return Float64Array.from({ length: scenarios }, (_, k) => {
    sides.forEach(({ length, weightOf }, e) => {
      const { median, sigma, draw } = length;
      back.weight[first + e] = weightOf(median * Math.exp(sigma * draws.get(draw)!.at(k)));
    });
    const greatest = leastSolution(back);
    return greatest === null
      ? -Infinity
      : open.reduce((least, i) => Math.min(least, -greatest[i]!), Infinity);
  });
}

interface UncertainSide {
  readonly length: Length & { readonly kind: 'uncertain' };
  /** Nodes of the edge backwards in time. */
  readonly from: number;
  readonly to: number;
  /** Its weight when the length turns out to be so many minutes; stages start on whole ones. */
  readonly weightOf: (minutes: number) => number;
}

function uncertainSides(p: Problem): UncertainSide[] {
  const index = stageIndex(p);
  return p.lags.flatMap((lag): UncertainSide[] => {
    const [i, j] = [index(lag.from), index(lag.to)];
    const [before, after] = [p.stages[i]!, p.stages[j]!];
    if (before.fixed !== undefined && after.fixed !== undefined) return [];
    const offset = lag.point === 'end' ? before.duration : 0;
    const last = lag.until === 'end' ? after.duration : 0;
    const { atLeast, atMost } = lag;
    const found: UncertainSide[] = [];
    if (atLeast?.kind === 'uncertain') {
      found.push({ length: atLeast, from: j, to: i, weightOf: (minutes) => offset + Math.ceil(minutes) });
    }
    if (atMost?.kind === 'uncertain') {
      const weightOf = (minutes: number): number => -(offset - last + Math.floor(minutes));
      found.push({ length: atMost, from: i, to: j, weightOf });
    }
    return found;
  });
}

/** The share of values that are `at` or later. */
export function shareFrom(begins: Float64Array, at: number): number {
  return begins.reduce((count, begin) => (begin >= at ? count + 1 : count), 0) / begins.length;
}
