import type { Evidence, SeenBatch } from './evidence.js';

/**
 * How somebody looks after soap. On each day on which they may look, they look with the chance `looks` and then, if it is
 * not ready, write so in `writes / looks` of the cases; that it is ready shows in any case, as the stage is done.
 */
export interface LookingHabit {
  /** Chance that “not yet” is written on a day on which the soap is not ready. */
  readonly writes: number;
  /** Chance that somebody looks on a day. */
  readonly looks: number;
  /** How likely the habit is before any log. */
  readonly prior: number;
}

/**
 * Writes down every look. Likeliest by far, and must be: a log with one look in five written can be told from that of somebody
 * who looked that much later only by when the plan asked for it, which not every log says.
 */
const honest = 0.8;
const mostly = 0.07;
const seldom = 0.07;
const hardlyEver = 0.06;

/** From writing all that is looked at to a tenth of it, on all days to few. A choice; how often, from memory. */
export const lookingHabits: readonly LookingHabit[] = [
  { writes: 0.92, looks: 0.92, prior: honest / 4 },
  { writes: 0.6, looks: 0.6, prior: honest / 4 },
  { writes: 0.3, looks: 0.3, prior: honest / 4 },
  { writes: 0.1, looks: 0.1, prior: honest / 4 },
  { writes: 0.55, looks: 0.92, prior: mostly / 3 },
  { writes: 0.3, looks: 0.5, prior: mostly / 3 },
  { writes: 0.1, looks: 0.17, prior: mostly / 3 },
  { writes: 0.28, looks: 0.93, prior: seldom / 2 },
  { writes: 0.1, looks: 0.33, prior: seldom / 2 },
  { writes: 0.09, looks: 0.9, prior: hardlyEver },
];

/** Stretches of time, one a day, in which a batch may have become ready, and how likely a habit makes each. */
export interface Stretches {
  /** Logarithms of observed / forecast median, falling: the stretch i lies between `ends[i + 1]` and `ends[i]`. */
  readonly ends: readonly number[];
  /** By habit, then by stretch. */
  readonly weights: readonly (readonly number[])[];
}

/** What is known of when a maker looks at all. */
export interface LookingDays {
  /** Whether soap is ever looked at on a day. @param day since 1970 */
  readonly mayLook: (day: number) => boolean;
  /** ln(time / forecast median) from which on soap is usually looked at; undefined where nobody has written “not yet”. */
  readonly from: number | undefined;
}

/** Until so many days with an entry are known, any day of the week will do. A choice. */
const ENOUGH_DAYS = 8;
/** Within such a share of the soonest looks. A choice. */
const SOON = 0.25;

/** When a maker looks, from all batches of a pace. */
export function lookingDaysOf(evidence: Evidence): LookingDays {
  const all = [...evidence.values()].flatMap(({ seen }) => seen);
  const weekdays = new Set<number>();
  let known = 0;
  const firsts: number[] = [];
  for (const batch of all) {
    weekdays.add(weekdayOf(batch.day));
    known += 1;
    if (batch.above === undefined || batch.looks === 0) continue;
    firsts.push(batch.above);
    const between = daysBetween(batch);
    if (between === undefined) continue;
    weekdays.add(weekdayOf(batch.day - Math.round(between)));
    known += 1;
  }
  firsts.sort((a, b) => a - b);
  return {
    mayLook: (day) => known < ENOUGH_DAYS || weekdays.has(weekdayOf(day)),
    from: firsts[Math.floor(SOON * firsts.length)],
  };
}

function weekdayOf(day: number): number {
  return ((day % 7) + 7) % 7;
}

/** Days from the last “not yet” to when it was found ready. */
function daysBetween({ above, below, readyAfterDays }: SeenBatch): number | undefined {
  if (above === undefined || below === undefined || readyAfterDays === undefined) return undefined;
  return readyAfterDays * (1 - Math.exp(above - below));
}

/** Nearer than this to the look before, in days, nobody has looked in between. */
const SAME_LOOK = 0.25;
/** Further back nobody looks daily for what is ready long since. */
const MOST_STRETCHES = 12;

/**
 * Where a batch may have become ready that was found so, given when its maker may have looked before and not written it down.
 * With “not yet” at a and “ready” at b, each day on which they may have looked in between ends a stretch. It became ready in
 * the stretch i, counted back from b, if on the i later days nobody looked and on the m − 1 − i earlier ones nobody wrote:
 *
 *     weight_i = looks · (1 − looks)^i · (1 − writes)^(m − 1 − i)
 *
 * With no “not yet” they may have looked since the plan asked for it, or since they usually begin, whichever is sooner. For who writes down
 * every look all weights are the same, which is the plain interval (a, b).
 */
export function stretchesOf(
  batch: SeenBatch,
  { mayLook, from }: LookingDays,
  habits: readonly LookingHabit[],
): Stretches {
  const { above = -Infinity, below = Infinity, readyAfterDays, looks, missed, opened, day } = batch;
  // Ages of looks and days without any tell of the habit, whatever becomes of the batch.
  const unprompted = opened === undefined || above < opened ? 1 : 0;
  const written = habits.map(
    ({ writes }) => writes ** Math.max(0, looks - unprompted) * (1 - writes) ** missed,
  );
  if (readyAfterDays === undefined || below === Infinity) {
    return { ends: [below, above], weights: written.map((chance) => [chance]) };
  }
  const asked = opened !== undefined && opened < below ? opened : undefined;
  const unasked = asked === undefined || (from !== undefined && from < asked);
  const since = above > -Infinity ? above : unasked ? from : asked;
  const soonest =
    since === undefined
      ? Infinity
      : readyAfterDays * Math.exp(since - below) + (since === asked ? 0 : SAME_LOOK);
  const ends = [below];
  for (let back = 1; readyAfterDays - back > soonest && ends.length < MOST_STRETCHES; back += 1) {
    if (mayLook(day - back)) ends.push(below + Math.log(1 - back / readyAfterDays));
  }
  const m = ends.length;
  return {
    ends: [...ends, above],
    weights: habits.map(({ writes, looks: rate }, h) =>
      ends.map((_, i) => (written[h] ?? 0) * rate * (1 - rate) ** i * (1 - writes) ** (m - 1 - i)),
    ),
  };
}
