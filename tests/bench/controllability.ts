import { controllability, schedule, type Problem, type Stnu } from '#planner';
import { seededRandom } from '#units';
import { labelledNetworks } from '../literature/planner/stnu-networks.js';
import {
  publishedMethods,
  stochasticProjects,
  type Published,
} from '../literature/planner/stochastic-projects.js';
import { type Figure, median } from '../support/figure.js';
import { projectFaults } from '../support/project-faults.js';
import { executePolicy } from './partial-order/execute-policy.js';
import { chooseOrder } from './partial-order/choose-order.js';
import type { UncertainProject } from './partial-order/uncertain-project.js';

const SEED = 2014;

/** Are networks told apart rightly and fast, and do orders carry projects through as well as published methods do? */
export async function figures(): Promise<Figure[]> {
  return [
    labels('stnu-examples.json', 24),
    labels('stnu-random.json', 8),
    ...[
      { points: 500, bar: 0.1 },
      { points: 1000, bar: 0.6 },
      { points: 2000, bar: 4 },
    ].flatMap(({ points, bar }) => secondsFor(points, bar)),
    ...executionFigures(1),
    ...executionFigures(2),
  ];
}

function labels(file: Parameters<typeof labelledNetworks>[0], bar: number): Figure {
  const right = labelledNetworks(file).filter(
    ({ stnu, controllable }) => controllability(stnu).controllable === controllable,
  );
  return { name: `labels of ${file}`, value: right.length, unit: 'right', bar, better: 'higher' };
}

/** Median of five networks after a warm-up, controllable ones and others apart. */
function secondsFor(points: number, bar: number): Figure[] {
  const random = seededRandom(SEED + points);
  return [true, false].map((wanted) => {
    const seconds: number[] = [];
    for (let run = 0; run < 6; run++) {
      const stnu = randomNetwork(points, () => random.next(), wanted);
      const started = performance.now();
      const { controllable } = controllability(stnu);
      seconds.push((performance.now() - started) / 1000);
      if (controllable !== wanted) throw new Error('the network is not what it was made to be');
    }
    return {
      ...{ name: `${points} points, ${wanted ? '' : 'not '}controllable`, value: median(seconds.slice(1)) },
      ...{ unit: 's', bar, better: 'lower' },
    };
  });
}

/**
 * The kind of stnu-random.json: n points at or after an origin, a tenth of them the ends of contingent links of 1 to
 * 19 with a spread of up to 10; four or five upper bounds leave each point, from a few negative ones up to about 90.
 * Bounds are drawn and then loosened or tightened by one amount, the least that makes the network controllable, or
 * one less. The generator itself is not at hand; its kind is guessed from these eight files.
 */
function randomNetwork(points: number, random: () => number, controllable: boolean): Stnu {
  const below = (limit: number): number => Math.floor(random() * limit);
  const links = points / 10;
  // Ends are the points 1 to k, what sets them off the points k + 1 to 2k; the origin is the last.
  const contingents = Array.from({ length: links }, (_, c) => {
    const min = 1 + below(15);
    return { from: links + 1 + c, to: 1 + c, min, max: min + 1 + below(9) };
  });
  const drawn = Array.from({ length: 4 * points + below(points / 2) }, () => {
    const [from, to] = [below(points), below(points)];
    return { from, to, max: below(90) };
  }).filter(({ from, to }) => from !== to);
  const origin = Array.from({ length: points - 1 }, (_, at) => ({ from: points - 1, to: at, min: 0 }));
  const shiftedBy = (amount: number): Stnu => ({
    points,
    contingents,
    requirements: [...origin, ...drawn.map((each) => ({ ...each, max: each.max + amount }))],
  });
  let [fails, holds] = [-100, 100];
  while (holds - fails > 1) {
    const middle = Math.floor((fails + holds) / 2);
    if (controllability(shiftedBy(middle)).controllable) holds = middle;
    else fails = middle;
  }
  return shiftedBy(controllable ? holds : fails);
}

/**
 * The protocol of the published comparison: one order for each project, chosen before any sample is seen, then carried
 * through on each sample that a schedule exists for.
 */
function executionFigures(noise: 1 | 2): Figure[] {
  const carried: { makespan: number | null; published: Published }[] = [];
  for (const { project, samples, noise: its } of stochasticProjects()) {
    if (its !== noise) continue;
    const order = chooseOrder(project, (durations) => startsFor(project, durations), {
      ...{ seed: SEED, drawnSchedules: 20, trials: 100 },
    });
    for (const { dur, published } of samples) {
      if (published === undefined) continue;
      const outcome = order && executePolicy(project, order.links, dur);
      if (outcome?.status === 'done') {
        const [fault] = projectFaults({ ...project, dur }, outcome.starts);
        if (fault !== undefined) throw new Error(`what was carried through is no schedule: ${fault}`);
      }
      carried.push({ makespan: outcome?.status === 'done' ? outcome.makespan : null, published });
    }
  }
  const share = (of: readonly (number | null)[]): number =>
    (100 * of.filter((each) => each !== null).length) / of.length;
  const best = Math.max(
    ...publishedMethods.map((method) => share(carried.map(({ published }) => published[method]))),
  );
  return [
    {
      ...{ name: `noise ${noise}: carried through`, value: share(carried.map(({ makespan }) => makespan)) },
      ...{ unit: '%', bar: Math.floor(100 * best) / 100, better: 'higher' },
    },
    ...publishedMethods.map((method): Figure => {
      const both = carried.flatMap(({ makespan, published }) => {
        const theirs = published[method];
        return makespan === null || theirs === null ? [] : [{ ours: makespan, theirs }];
      });
      const sum = (of: 'ours' | 'theirs'): number => both.reduce((total, each) => total + each[of], 0);
      return {
        ...{
          name: `noise ${noise}: makespan of that of ${method}`,
          value: (100 * sum('ours')) / sum('theirs'),
        },
        ...{ unit: '%', bar: method === 'stnu' ? 100 : null, better: 'lower' },
      };
    }),
  ];
}

function startsFor({ cap, req, lags }: UncertainProject, dur: readonly number[]): number[] | null {
  const sink = dur.length - 1;
  const known = (minutes: number): { kind: 'known'; minutes: number } => ({ kind: 'known', minutes });
  const problem: Problem = {
    stages: dur.map((duration, i) => ({
      ...{ id: `${i}`, duration, ...(i === 0 && { fixed: 0 }) },
      uses: cap.map((_, r) => ({ resource: `${r}`, amount: req[i]![r]! })),
    })),
    lags: [
      ...lags.map(([i, j, w], k) => ({
        ...{ id: `l${k}`, from: `${i}`, to: `${j}`, point: 'start' as const, atLeast: known(w) },
      })),
      ...[...dur.keys()].slice(0, sink).map((i) => ({
        ...{ id: `end${i}`, from: `${i}`, to: `${sink}`, point: 'end' as const, atLeast: known(0) },
      })),
    ],
    ...{ holds: [], calendars: {}, draws: {}, from: 0 },
    resources: cap.map((capacity, r) => ({ id: `${r}`, capacity, busy: [] })),
    until: lags.reduce((sum, [, , w]) => sum + Math.max(w, 0), 0) + dur.reduce((sum, d) => sum + d, 0),
  };
  const outcome = schedule(problem, { certainty: 0.5, seed: SEED, limit: 20_000 });
  if (outcome.status !== 'planned') return null;
  return dur.map((_, i) => outcome.schedule.starts.get(`${i}`)!);
}
