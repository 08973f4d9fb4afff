import { instantOf } from '#hours';
import { latestStart, type LatestStartOptions, type Problem } from '#planner';
import { buildNetwork } from '../../libs/runs/plan/build-network.js';
import { findLatestStart, runFileInput } from '#runs';
import { assessRuns } from '../../libs/runs/assess-runs.js';
import { atMost, median, watched, type Figure } from '../support/figure.js';
import { loadRunFile } from '../support/run-files.js';

const CASES = [
  { demo: 'rockpool-tiles', readyBy: '2027-03-16', odds: 0.75 },
  { demo: 'orchard-loaves', readyBy: '2027-02-20', odds: 0.8 },
  { demo: 'honeycomb-tartlets', readyBy: '2027-02-20', odds: 0.8 },
];
const ROUNDS = 5;

/**
 * Does counting back answer while one waits? And how much later a start would trying every minute have found: with
 * `every-minute`, as that takes minutes.
 */
export function figures(args: readonly string[] = []): Figure[] {
  return CASES.flatMap(({ demo, readyBy, odds }) => {
    const input = runFileInput(loadRunFile('demo', demo));
    const now = instantOf('2026-11-27T18:00', 'Europe/Dublin');
    if (!input.ok || now === undefined) throw new Error(demo);
    const times = Array.from({ length: ROUNDS }, () => {
      const begun = performance.now();
      const answer = findLatestStart(input.value, { readyBy, odds }, { now });
      if (!answer.ok) throw new Error(JSON.stringify(answer.issues));
      return performance.now() - begun;
    });
    const figures = [atMost(demo, median(times), 'ms', 1500)];
    if (!args.includes('every-minute')) return figures;
    const runs = input.value.runs.map((run) => ({ ...run, readyBy }));
    const taken = assessRuns({ ...input.value, runs });
    if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
    const { problem } = buildNetwork(
      { ...input.value, runs },
      taken.value.map(({ assessed }) => assessed),
      { now },
    );
    const options = { level: odds, seed: 1, scenarios: 2000 };
    const later =
      beginOf(problem, { ...options, stepMin: 1, mostTried: Infinity }) - beginOf(problem, options);
    return [...figures, watched(`${demo}: overlooked`, later, 'min', 'lower')];
  });
}

function beginOf(problem: Problem, options: LatestStartOptions): number {
  const answer = latestStart(problem, options);
  if (answer.status !== 'found') throw new Error(answer.status);
  return answer.found.begin;
}
