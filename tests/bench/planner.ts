import { atLeast, atMost, type Figure, median, watched } from '../support/figure.js';
import { projectFaults } from '../support/project-faults.js';
import { readProjects } from '../support/read-projects.js';
import type { ProjectResult } from '../support/solve-project.js';
import { type Solved, solveTimed, warmedUpProjects } from '../support/solve-timed.js';
import { demoRun } from './makers/demo-run.js';
import { likeRuns } from './makers/like-runs.js';
import { tenRuns, thirtyRuns } from './makers/ten-runs.js';
import { chuffedOnJ60, chuffedWithMaximumLags } from './chuffed/against-chuffed.js';

const parts: Readonly<Record<string, () => Figure[] | Promise<Figure[]>>> = {
  'rcpsp-max': withMaximumLags,
  rcpsp: classic,
  chuffed: chuffedWithMaximumLags,
  'chuffed-j60': chuffedOnJ60,
  'demo-run': demoRun,
  'ten-runs': tenRuns,
  'thirty-runs': thirtyRuns,
  'like-runs': likeRuns,
};

/**
 * Projects of the literature against their optima (tests/literature/planner/CITATION.md) and against the constraint
 * solver Chuffed, and a maker's plans, on one thread. Without arguments all parts, else those named. `--file F --seconds N` solves the
 * instances of a file instead and prints a line of JSON for each.
 */
export async function figures(args: readonly string[] = []): Promise<Figure[]> {
  const file = option(args, '--file');
  if (file !== undefined) {
    printAnswers(file, Number(option(args, '--seconds') ?? 2));
    return [];
  }
  const unknown = args.find((arg) => !Object.hasOwn(parts, arg));
  if (unknown !== undefined) {
    throw new RangeError(`There is no part “${unknown}”; there are: ${Object.keys(parts).join(', ')}.`);
  }
  const figures: Figure[] = [];
  for (const [name, run] of Object.entries(parts)) {
    if (args.length === 0 || args.includes(name)) figures.push(...(await run()));
  }
  return figures;
}

function option(args: readonly string[], name: string): string | undefined {
  const at = args.indexOf(name);
  return at < 0 ? undefined : args[at + 1];
}

function printAnswers(file: string, seconds: number): void {
  if (!(seconds > 0)) throw new RangeError('--seconds takes a number above 0');
  for (const instance of readProjects(file)) {
    const { result } = solveTimed(instance, seconds);
    const found = 'starts' in result ? result : null;
    const { name } = instance;
    const starts = found && [...found.starts];
    console.log(JSON.stringify({ name, status: result.status, makespan: found?.makespan ?? null, starts }));
  }
}

function withMaximumLags(): Figure[] {
  const all = solveSet('rcpsp-max.json', 2);
  const infeasible = all.filter(({ instance }) => instance.expected?.status === 'infeasible');
  const feasible = all.filter(({ instance }) => instance.expected?.status === 'optimal');
  const count = (set: readonly Solved[], ...statuses: ProjectResult['status'][]): number =>
    set.filter(({ result }) => statuses.includes(result.status)).length;
  const of = 'with maximum lags, 2 s';
  return [
    atLeast(`feasible projects solved, ${of}`, count(feasible, 'optimal', 'feasible'), feasible.length),
    atLeast(`optimum reached, ${of}`, feasible.filter((each) => gap(each) === 0).length, 29),
    atMost(`mean gap to the optimum, ${of}`, meanGap(feasible), '%', 0.3),
    atMost(`infeasible projects “solved”, ${of}`, count(infeasible, 'optimal', 'feasible'), '', 0),
    atLeast(`infeasible projects proved so, ${of}`, count(infeasible, 'infeasible'), 8),
    atLeast(`optimality or infeasibility proved, ${of}`, count(all, 'optimal', 'infeasible'), 32),
    ...common(all, of),
  ];
}

function classic(): Figure[] {
  const all = solveSet('rcpsp.json', 5);
  const j30 = all.filter(({ instance }) => instance.n === 30);
  const j60 = all.filter(({ instance }) => instance.n === 60);
  return [
    atLeast('optimum reached, j30, 5 s', j30.filter((each) => gap(each) === 0).length, 24),
    ...common(j30, 'j30, 5 s'),
    atMost('mean gap to the optimum, j60, 5 s', meanGap(j60), '%', 0.5),
    ...common(j60, 'j60, 5 s'),
  ];
}

function solveSet(file: string, seconds: number): Solved[] {
  return warmedUpProjects(file).map((instance) => solveTimed(instance, seconds));
}

function common(set: readonly Solved[], of: string): Figure[] {
  const rejected = set.filter(
    ({ instance, result }) => 'starts' in result && projectFaults(instance, result.starts).length > 0,
  );
  const wrong = set.filter(({ instance: { expected }, result }) =>
    result.status === 'optimal'
      ? result.makespan !== expected?.makespan
      : result.status === 'infeasible' && expected?.status !== 'infeasible',
  );
  const times = set.map(({ ms }) => ms);
  return [
    atMost(`schedules that the checker rejects, ${of}`, rejected.length, '', 0),
    atMost(`proofs that contradict the literature, ${of}`, wrong.length, '', 0),
    watched(`median time, ${of}`, median(times), 'ms', 'lower'),
    watched(`longest time, ${of}`, Math.max(...times), 'ms', 'lower'),
  ];
}

/** As a share of the optimum; a project left without a schedule counts as one of twice the length. */
function gap({ instance: { expected }, result }: Solved): number {
  const optimum = expected?.makespan ?? NaN;
  return 'makespan' in result ? (result.makespan - optimum) / optimum : 1;
}

function meanGap(set: readonly Solved[]): number {
  return (100 * set.reduce((sum, each) => sum + gap(each), 0)) / set.length;
}
