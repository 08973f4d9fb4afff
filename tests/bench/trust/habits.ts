import type { Random } from '#units';

/** One look after the soap in its mould, in minutes from the end of the pour. */
export interface Look {
  readonly saw: 'not-yet' | 'done';
  /** As it is written down. */
  readonly atMin: number;
  /** When it was, where that is not what was written. */
  readonly wasAtMin?: number;
  /** Nothing was written of it. */
  readonly unwritten?: true;
}

/** What a maker knows when deciding when to look, in minutes from the end of the pour. */
export interface Batch {
  readonly readyMin: number;
  /** When the forecast of this run says that it is likely to be ready. */
  readonly forecastMin: number;
  /** The pour ends at this time of the day. */
  readonly pouredAtMin: number;
  /** How many runs the maker has made before. */
  readonly run: number;
}

/** How somebody looks after soap and what of it they log; always ends with `done`. */
export type Habit = (batch: Batch, random: Random) => Look[];

const HOUR = 60;
export const DAY = 24 * HOUR;

/** Looks at such times, which rise, until it is ready. @param at the time of the look of that number, or undefined for none */
export function lookAt({ readyMin }: Batch, at: (look: number) => number | undefined): Look[] {
  const looks: Look[] = [];
  for (let i = 0; ; i += 1) {
    const atMin = at(i);
    if (atMin === undefined || atMin < 1) continue;
    if (atMin >= readyMin) return [...looks, { saw: 'done', atMin }];
    looks.push({ saw: 'not-yet', atMin });
  }
}

/** Looks once a day, between two hours of the day, from such a time on. */
export function daily(
  batch: Batch,
  fromMin: number,
  hours: readonly [number, number],
  random: Random,
): Look[] {
  const [first, last] = hours;
  return lookAt(batch, (day) => {
    const atMin = day * DAY - batch.pouredAtMin + (first + (last - first) * random.next()) * HOUR;
    return atMin < fromMin ? undefined : atMin;
  });
}

/** Looks in the evenings from the first that the forecast allows, until it is ready. */
export const eveningsFromForecast: Habit = (batch, random) =>
  daily(batch, batch.forecastMin, [18, 21], random);

/** Writes down only some of the looks that found it not ready. */
export const written = (looks: readonly Look[], isWritten: () => boolean): Look[] =>
  looks.map((look) => (look.saw === 'done' || isWritten() ? look : { ...look, unwritten: true }));

/** Looks after gaps of such lengths, from a day after the pour on. */
function lookAfter(gap: (random: Random) => number): Habit {
  return (batch, random) => {
    let next = DAY;
    return lookAt(batch, () => {
      const atMin = next;
      next += gap(random);
      return atMin;
    });
  };
}

/** Between -1 and 1, evenly. */
const either = (random: Random): number => 2 * random.next() - 1;

/** Logged at other times than it was, but never before the pour. */
export const shifted = (looks: readonly Look[], byMin: () => number): Look[] =>
  looks
    .map((look) => ({ ...look, wasAtMin: look.atMin, atMin: Math.max(HOUR, look.atMin + byMin()) }))
    .sort((a, b) => a.atMin - b.atMin);

/** What people do, by a name for the figures. */
export const habits: Readonly<Record<string, Habit>> = {
  'not yet and done': eveningsFromForecast,
  'done only': (batch, random) => written(eveningsFromForecast(batch, random), () => false),
  'first look after work, done only': (batch, random) =>
    written(daily(batch, 1, [18, 21], random), () => false),
  'twice a day': lookAfter(() => DAY / 2),
  'when convenient': lookAfter((random) => -Math.log(1 - random.next()) * 2 * DAY),
  'times off by up to 3 h': (batch, random) =>
    shifted(eveningsFromForecast(batch, random), () => 3 * HOUR * either(random)),
  'one slip in twenty': (batch, random) => {
    const looks = eveningsFromForecast(batch, random);
    if (random.next() >= 0.05) return looks;
    const by = 2 * DAY * either(random);
    return shifted(looks, () => by);
  },
  // Not fitted to: what the estimator takes for granted of looking and writing is no longer so.
  'one look in five written': (batch, random) =>
    written(eveningsFromForecast(batch, random), () => random.next() < 0.2),
  'mornings, before the forecast': (batch, random) => daily(batch, 0.8 * batch.forecastMin, [7, 8.5], random),
};
