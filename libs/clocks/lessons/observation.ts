import { conditioned } from '../engine/conditioned.js';

/** What one batch has shown of one pace, relative to its own unlearned forecast. Logarithms of observed / forecast median. */
export interface Observation {
  readonly recipe: string;
  /** Known exactly: came at this. Bounds beside it are not read. */
  readonly exact?: number | undefined;
  /** Not yet at / already by: lies above, below or between. */
  readonly above?: number | undefined;
  readonly below?: number | undefined;
  /** batchSigma of that forecast. */
  readonly sigma: number;
  /** What the rules may have wrong about the recipe, of that forecast. */
  readonly doubt: number;
  /** How long after its clock began it was found ready, in days; absent where it never was. */
  readonly readyAfterDays?: number | undefined;
  /** How often somebody looked and wrote “not yet”. */
  readonly looks: number;
  /** On how many days between the first and the last of these looks nothing was written. */
  readonly missed: number;
  /** When a plan first asked for it; absent where none did, or where that is not known. */
  readonly opened?: number | undefined;
  /** When it was last seen, in days since 1970. */
  readonly day: number;
  /** When its clock began, in days since 1970; absent: it was not noted. */
  readonly fromDay?: number | undefined;
  /** Log entries it came from, so that a lesson can be traced and forgotten. */
  readonly entries: readonly string[];
}

/** One line of the log about one batch. */
export interface Sighting {
  readonly kind: 'exact' | 'not-yet' | 'already';
  /** Whether somebody looked for it, or it follows from a stage that was done. */
  readonly by: 'look' | 'done';
  /** ln(time seen / forecast median). */
  readonly logRatio: number;
  /** As in `Observation`. */
  readonly sigma: number;
  readonly doubt: number;
  /** From the start of the state's clock. */
  readonly minutes: number;
  /** Minutes since 1970. */
  readonly at: number;
  /** As in `Observation`, of the plan before this line. */
  readonly opened?: number | undefined;
  readonly entry: string;
}

const DAY = 1440;

/**
 * Makes one observation of all that was seen of one batch: its sightings share the batch's luck, and counted one
 * by one they would teach the same luck several times.
 *
 * Exact sightings are averaged and then outweigh every bound, but for those that a later look contradicts by more than
 * one σ: the maker has looked again. Otherwise the bounds are intersected in the order
 * given; where two contradict each other the later counts, as in `conditioned`. Where σ differs among the
 * sightings used the largest is taken: the batch is no surer than the least sure of them.
 *
 * @param recipe key under which batches share an offset
 * @param sightings in the order in which they were seen
 * @returns `entries` lists only the sightings that the observation rests on; undefined when nothing was learned,
 *   as from “not yet” at the very start
 * @throws RangeError when an exact time has no finite logarithm or a bound is not a number
 */
export function oneOf(recipe: string, sightings: readonly Sighting[]): Observation | undefined {
  const exacts = sightings.filter(
    (sighting, i) =>
      sighting.kind === 'exact' && !sightings.slice(i + 1).some((later) => contradicts(later, sighting)),
  );
  if (exacts.length > 0) {
    const exact = exacts.reduce((sum, { logRatio }) => sum + logRatio, 0) / exacts.length;
    if (!Number.isFinite(exact)) throw new RangeError(`an exact time with the logarithm ${String(exact)}`);
    return { recipe, exact, ...habitOf([], undefined), ...source(exacts) };
  }
  const looks = sightings.filter(({ kind }) => kind !== 'exact');
  const bounds = looks.map(boundOf).reduce(conditioned, {});
  const used = looks.filter(({ kind, logRatio }) =>
    kind === 'not-yet' ? logRatio === bounds.above : logRatio === bounds.below,
  );
  if (used.length === 0) return undefined;
  const ready = used.find(({ kind }) => kind === 'already');
  const before = looks.filter(
    ({ kind, by, logRatio }) =>
      kind === 'not-yet' && by === 'look' && logRatio <= (bounds.above ?? -Infinity) && logRatio > -Infinity,
  );
  const opened = firstOpened(looks);
  return {
    ...{ recipe, ...bounds, ...habitOf(before, opened), ...source(used) },
    ...(opened !== undefined && { opened: opened.opened }),
    ...(ready !== undefined && { readyAfterDays: ready.minutes / DAY }),
  };
}

/** A later look that puts the state on the other side, by more than the states of one pace differ among themselves. */
function contradicts(later: Sighting, exact: Sighting): boolean {
  const apart = later.logRatio - exact.logRatio;
  return later.kind === 'not-yet' ? apart > exact.sigma : later.kind === 'already' && apart < -exact.sigma;
}

function boundOf({ kind, logRatio }: Sighting): { above?: number; below?: number } {
  if (Number.isNaN(logRatio)) throw new RangeError('a sighting at no time');
  return kind === 'not-yet' ? { above: logRatio } : { below: logRatio };
}

/** The soonest that a plan asked for it, as looks and stages that waited for it tell. */
function firstOpened(looks: readonly Sighting[]): { opened: number; at: number } | undefined {
  let first: { opened: number; at: number } | undefined;
  for (const { opened, kind, by, logRatio, minutes, at } of looks) {
    if (opened === undefined || !(opened > -Infinity) || (kind === 'not-yet' && by === 'done')) continue;
    if (first !== undefined && opened >= first.opened) continue;
    first = { opened, at: at - minutes * (1 - Math.exp(opened - logRatio)) };
  }
  return first;
}

/** @param opened when a plan first asked for it: whoever goes by the plan may have looked from then on */
function habitOf(
  looks: readonly Sighting[],
  opened: { readonly at: number } | undefined,
): Pick<Observation, 'looks' | 'missed'> {
  const times = [...new Set(looks.map(({ at }) => at))].sort((a, b) => a - b);
  const missed = times.reduce((sum, at, i) => {
    const before = times[i - 1];
    return before === undefined ? sum : sum + Math.max(0, Math.round((at - before) / DAY) - 1);
  }, 0);
  const [first] = times;
  const before = first === undefined || opened === undefined ? 0 : Math.floor((first - opened.at) / DAY);
  return { looks: times.length, missed: missed + Math.max(0, before) };
}

function source(
  used: readonly Sighting[],
): Pick<Observation, 'sigma' | 'doubt' | 'day' | 'fromDay' | 'entries'> {
  return {
    sigma: Math.max(...used.map(({ sigma }) => sigma)),
    doubt: Math.max(...used.map(({ doubt }) => doubt)),
    day: Math.floor(Math.max(...used.map(({ at }) => at)) / DAY),
    fromDay: Math.floor(Math.min(...used.map(({ at, minutes }) => at - minutes)) / DAY),
    entries: [...new Set(used.map(({ entry }) => entry))],
  };
}
