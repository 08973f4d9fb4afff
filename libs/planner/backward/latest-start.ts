import { sampleDraws } from '../draws.js';
import { plan } from '../plan.js';
import type { Interval, Odds, Problem, Schedule, ScheduleOutcome } from '../problem.js';
import { hindsightBegins, shareFrom } from './hindsight-bound.js';
import { gridOf, isHandsOn, possibleBegins } from './starts.js';
import { Stop, Stopped } from './stop.js';
import { Trials } from './trials.js';

export interface LatestStartOptions {
  /** The odds that are wanted, above 0, 1 at most. */
  readonly level: number;
  readonly seed: number;
  readonly scenarios: number;
  /** Minutes from one start that is tried to the next, 1 or more. */
  readonly stepMin?: number;
  /** Starts to try at most, about, before the steps grow; 1 or more. */
  readonly mostTried?: number;
  /** How far to look back once the end of the time no longer matters, in minutes: hours repeat by the week. */
  readonly lookBackMin?: number;
  /** Asked now and then; the search ends soon after it says true, without a latest start. */
  readonly stop?: () => boolean;
}

/** A plan that begins as late as was asked. */
export interface Beginning {
  /** Nothing starts before this minute. */
  readonly from: number;
  /** The start of its first hands-on stage. */
  readonly begin: number;
  readonly schedule: Schedule;
  readonly odds: Odds;
}

export type LatestStart =
  | {
      readonly status: 'found';
      readonly found: Beginning;
      /** The next minute at which something could begin, where the odds fall short; null: there is none. */
      readonly tooLate: { readonly from: number; readonly odds: Odds | null } | null;
    }
  | {
      readonly status: 'out-of-reach';
      readonly best: Beginning;
      /** No plan has better odds than this, whatever it does and however early it begins. */
      readonly bound: number;
      /** The first start that was tried. */
      readonly lookedFrom: number;
    }
  | { readonly status: 'no-plan'; readonly outcome: ScheduleOutcome }
  /** It was stopped before. */
  | { readonly status: 'not-settled' };

const STEP_MIN = 30;
const MOST_TRIED = 200;
/** Odds that fall short by less may do a few minutes on. */
const NEARLY = 0.05;
/** Of those that fall short, the ones that are looked at closely. */
const LOOKED_AT_CLOSELY = 6;
const WEEK = 7 * 1440;
/** A share of scenarios too small to begin earlier for. */
const NEXT_TO_NOTHING = 0.005;

/**
 * The latest minute from which a run may begin so that the odds of its plan reach a level.
 *
 * The odds of what `plan` makes rise and fall with the start: an hour later, and the soap is firm at night. So starts
 * are tried one by one, the latest first, up to the bound that hindsight sets: every `stepMin` of the hours at first,
 * then around the best of those that fall just short and in the stretch in which one was found, at a sixth of the step,
 * and at last by the minute. What lies between two starts that were tried may be overlooked where it is better than
 * both; over a long time steps grow.
 * @throws RangeError when nothing is left to begin, or the options are out of range
 */
export function latestStart(p: Problem, options: LatestStartOptions): LatestStart {
  try {
    return settled(p, options, new Stop(options.stop ?? (() => false)));
  } catch (thrown) {
    if (thrown instanceof Stopped) return { status: 'not-settled' };
    throw thrown;
  }
}

function settled(p: Problem, options: LatestStartOptions, stop: Stop): LatestStart {
  const { level, seed, scenarios, stepMin = STEP_MIN, mostTried = MOST_TRIED, lookBackMin = WEEK } = options;
  if (!(level > 0 && level <= 1)) throw new RangeError(`odds of ${level} are none to ask for`);
  if (!(stepMin >= 1)) throw new RangeError(`steps of ${stepMin} minutes lead nowhere`);
  if (!p.stages.some((stage) => stage.fixed === undefined && isHandsOn(stage))) {
    throw new RangeError('nothing is left to begin');
  }
  const draws = sampleDraws(p, seed);
  const need = Math.ceil(level * scenarios - 1e-9);
  const trials = new Trials(p, draws, { seed, scenarios, need, stop });
  const from = (at: number): Beginning | undefined => {
    const made = beginningAt(p, at, { seed, scenarios, stop: stop.isAsked });
    stop.check();
    return made;
  };
  if (!trials.hasPlan(p.from)) return { status: 'no-plan', outcome: plan(p, { seed, scenarios }).outcome };

  const hindsight = hindsightBegins(p, draws, scenarios);
  const bound = shareFrom(hindsight, p.from);
  const lookedFrom = Math.max(p.from, lastWith(hindsight, bound - NEXT_TO_NOTHING) - lookBackMin);
  const all = possibleBegins(p);
  const looked = cut(all, lookedFrom, lastWith(hindsight, 0));
  const inReach = cut(looked, lookedFrom, lastWith(hindsight, level));
  const reaches = (at: number): Beginning | undefined => {
    if (trials.at(at).met === undefined) return undefined;
    const made = from(at);
    return made !== undefined && made.odds.onTime >= level ? made : undefined;
  };
  const step = stepFor(looked, stepMin, mostTried);
  const grid = gridOf(inReach, step);
  const coarse = firstOf(grid, reaches);
  const later = grid.filter((at) => at > (coarse?.from ?? -Infinity));
  const nearly = best(later, trials).filter((at) => trials.at(at).estimate > level - NEARLY);
  const good = firstOf(aroundEach(inReach, nearly, step), reaches) ?? coarse;
  if (good !== undefined) {
    const found = latestWithin(inReach, good, { step, reaches });
    return { status: 'found', found, tooLate: nextAfter(all, found.from, from) };
  }
  const rough = best([...gridOf(looked, step), all[0]!.from], trials);
  const short = best([...rough, ...aroundEach(looked, rough, step)], trials)
    .flatMap((at) => from(at) ?? [])
    .sort((a, b) => b.from - a.from);
  const most = Math.max(...short.map(({ odds }) => odds.onTime));
  const chosen = short.find(({ odds }) => odds.onTime > most - NEXT_TO_NOTHING)!;
  return { status: 'out-of-reach', best: chosen, bound, lookedFrom };
}

/** The starts with the best odds, as far as tried; of equal ones the later. */
function best(points: readonly number[], trials: Trials): number[] {
  return [...new Set(points)]
    .map((at) => ({ at, estimate: trials.at(at).estimate }))
    .sort((a, b) => b.estimate - a.estimate || b.at - a.at)
    .slice(0, LOOKED_AT_CLOSELY)
    .map(({ at }) => at);
}

/** Starts within a step of each of some, a sixth of it apart, the latest first. */
function aroundEach(stretches: readonly Interval[], points: readonly number[], step: number): number[] {
  const around = points.flatMap((at) =>
    gridOf(cut(stretches, at - step + 1, at + step - 1), finerThan(step)),
  );
  return [...new Set(around)].sort((a, b) => b - a);
}

function finerThan(step: number): number {
  return Math.max(1, Math.floor(step / 6));
}

/** The latest good start of the stretch in which a good one lies. */
function latestWithin(
  stretches: readonly Interval[],
  coarse: Beginning,
  { step, reaches }: { readonly step: number; readonly reaches: (at: number) => Beginning | undefined },
): Beginning {
  const stretch = stretches.find(({ from, to }) => from <= coarse.from && coarse.from <= to)!;
  const later = (finer: number, found: Beginning, before: number): Beginning =>
    firstOf(gridOf([{ from: found.from, to: before }], finer).slice(0, -1), reaches) ?? found;
  const finer = finerThan(step);
  const fine = later(finer, coarse, stretch.to);
  return later(1, fine, Math.min(stretch.to, fine.from + finer - 1));
}

function firstOf<T>(points: readonly number[], find: (at: number) => T | undefined): T | undefined {
  for (const at of points) {
    const found = find(at);
    if (found !== undefined) return found;
  }
  return undefined;
}

function stepFor(stretches: readonly Interval[], step: number, most: number): number {
  let wider = step;
  const tried = (): number =>
    stretches.reduce((n, { from, to }) => n + 1 + Math.ceil((to - from) / wider), 0);
  while (tried() > most && stretches.some(({ from, to }) => to - from > wider)) wider *= 2;
  return wider;
}

function beginningAt(
  p: Problem,
  from: number,
  options: { readonly seed: number; readonly scenarios: number; readonly stop: () => boolean },
): Beginning | undefined {
  const { outcome, odds } = plan({ ...p, from }, { ...options, oddsAlone: true });
  if (outcome.status !== 'planned' || odds === null) return undefined;
  const begins = p.stages.flatMap((stage) =>
    stage.fixed === undefined && isHandsOn(stage) ? [outcome.schedule.starts.get(stage.id)!] : [],
  );
  return { from, begin: Math.min(...begins), schedule: outcome.schedule, odds };
}

function nextAfter(
  begins: readonly Interval[],
  at: number,
  from: (at: number) => Beginning | undefined,
): { readonly from: number; readonly odds: Odds | null } | null {
  const stretch = begins.find(({ to }) => to > at);
  if (stretch === undefined) return null;
  const next = Math.max(stretch.from, at + 1);
  return { from: next, odds: from(next)?.odds ?? null };
}

/** The latest minute that a share of the values comes up to; -Infinity where there is none. */
function lastWith(values: Float64Array, share: number): number {
  const sorted = values.slice().sort();
  const count = Math.max(1, Math.ceil(share * values.length - 1e-9));
  return sorted[values.length - count] ?? -Infinity;
}

function cut(stretches: readonly Interval[], least: number, most: number): Interval[] {
  return stretches.flatMap(({ from, to }) => {
    const part = { from: Math.max(from, least), to: Math.min(to, most) };
    return part.from <= part.to ? [part] : [];
  });
}
