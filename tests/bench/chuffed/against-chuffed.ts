import { atMost, type Figure, median, watched } from '../../support/figure.js';
import { projectFaults } from '../../support/project-faults.js';
import type { Instance } from '../../support/read-projects.js';
import { type Solved, solveTimed, warmedUpProjects } from '../../support/solve-timed.js';
import { Chuffed, type ChuffedResult, FREE, FREE_AROUND_THE_BEST } from './chuffed.js';

const SECONDS = 10;

interface Pair {
  readonly ours: Solved;
  readonly theirs: ChuffedResult;
}

/** No schedule may be longer than Chuffed’s, and nothing proved by Chuffed alone. */
export async function chuffedWithMaximumLags(): Promise<Figure[]> {
  const [pairs] = await onBoth('rcpsp-max.json', () => true, SECONDS, [FREE]);
  const ours = median(pairs.map(({ ours: { ms } }) => ms));
  const theirs = median(pairs.map(({ theirs: { ms } }) => ms));
  const search = median(pairs.map(({ theirs: { searchMs } }) => searchMs));
  const of = 'maximum lags, 10 s';
  return [
    atMost(`worse than Chuffed, ${of}`, pairs.filter(isOursWorse).length, '', 0),
    ...proved(pairs, of),
    watched(`median time beside Chuffed, ${of}`, ours, 'ms', 'lower'),
    watched(`median time of Chuffed, ${of}`, theirs, 'ms', 'lower'),
    atMost(`ratio of the medians, ${of}`, ours / theirs, '', 0.2),
    watched(`median time of Chuffed’s search, ${of}`, search, 'ms', 'lower'),
    watched(`ratio to Chuffed’s search, ${of}`, ours / search, '', 'lower'),
    ...honest(pairs, of),
  ];
}

/** Is a project of j60 that Chuffed leaves open after 10 s answered better here after 5 s? */
export async function chuffedOnJ60(): Promise<Figure[]> {
  const isJ60 = ({ n }: Instance): boolean => n === 60;
  const [free, around] = await onBoth('rcpsp.json', isJ60, 5, [FREE, FREE_AROUND_THE_BEST]);
  return [
    ...leftOpen(free, `j60, ${FREE.join(' ')}`),
    ...leftOpen(around, `j60, ${FREE_AROUND_THE_BEST.join(' ')}`),
  ];
}

function leftOpen(pairs: readonly Pair[], of: string): Figure[] {
  const open = pairs.filter(({ theirs }) => !isProved(theirs));
  const shorter = open.filter((pair) => gain(pair) > 0).length;
  const settled = open.filter((pair) => gain(pair) === 0 && isProved(pair.ours.result)).length;
  return [
    ...proved(pairs, of),
    watched(`open for Chuffed, shorter here, ${of}`, shorter, '', 'higher'),
    watched(`open for Chuffed, as short and proved, ${of}`, settled, '', 'higher'),
    atMost(`open for Chuffed, no better here, ${of}`, open.length - shorter - settled, '', 0),
    watched(`longer than Chuffed’s, ${of}`, pairs.filter((pair) => gain(pair) < 0).length, '', 'lower'),
    ...honest(pairs, of),
  ];
}

/** In turn on each project, so that a busy machine hinders both; one list of pairs for each setting of Chuffed. */
async function onBoth<const Settings extends readonly (readonly string[])[]>(
  file: string,
  isMeant: (instance: Instance) => boolean,
  seconds: number,
  settings: Settings,
): Promise<{ [K in keyof Settings]: Pair[] }> {
  const instances = warmedUpProjects(file).filter(isMeant);
  const chuffed = await Chuffed.warmedUpOn(instances.slice(0, 4));
  const lists = settings.map((): Pair[] => []);
  for (const instance of instances) {
    const ours = solveTimed(instance, seconds);
    for (const [i, flags] of settings.entries()) {
      lists[i]!.push({ ours, theirs: await chuffed.solve(instance, { seconds: SECONDS, flags }) });
    }
  }
  await chuffed.close();
  return lists as { [K in keyof Settings]: Pair[] };
}

function proved(pairs: readonly Pair[], of: string): Figure[] {
  const here = pairs.filter(({ ours }) => isProved(ours.result)).length;
  const there = pairs.filter(({ theirs }) => isProved(theirs)).length;
  return [
    watched(`proved beside Chuffed, ${of}`, here, '', 'higher'),
    watched(`proved by Chuffed, ${of}`, there, '', 'higher'),
  ];
}

type Result = Solved['result'] | ChuffedResult;

function isProved({ status }: Result): boolean {
  return status === 'optimal' || status === 'infeasible';
}

function isOursWorse(pair: Pair): boolean {
  return gain(pair) < 0 || (isProved(pair.theirs) && !isProved(pair.ours.result));
}

/** By how much our schedule is shorter; one against none is shorter without end. */
function gain({ ours, theirs }: Pair): number {
  const [here, there] = [lengthOf(ours.result), lengthOf(theirs)];
  return here === there ? 0 : there - here;
}

function lengthOf(result: Result): number {
  return ('makespan' in result ? result.makespan : undefined) ?? Infinity;
}

/** Chuffed is held to what the search is held to. */
function honest(pairs: readonly Pair[], of: string): Figure[] {
  const answers = pairs.flatMap(({ ours: { instance, result }, theirs }) => [
    { instance, result },
    { instance, result: theirs },
  ]);
  const rejected = answers.filter(
    ({ instance, result }) =>
      'starts' in result && result.starts && projectFaults(instance, result.starts).length > 0,
  );
  const wrong = answers.filter(
    ({ instance: { expected }, result }) =>
      isProved(result) &&
      (result.status !== expected?.status || lengthOf(result) !== (expected.makespan ?? Infinity)),
  );
  return [
    atMost(`rejected schedules of either, ${of}`, rejected.length, '', 0),
    atMost(`wrong proofs of either, ${of}`, wrong.length, '', 0),
  ];
}
