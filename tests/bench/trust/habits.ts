import type { Random } from '#units';

/** One entry about the soap in its mould, in minutes from the end of the pour. */
export interface Look {
  readonly saw: 'not-yet' | 'done';
  readonly atMin: number;
}

/** What a maker knows when deciding when to look, in minutes from the end of the pour. */
export interface Batch {
  readonly readyMin: number;
  /** When the forecast of this run says that it is likely to be ready. */
  readonly forecastMin: number;
  /** The pour ends at this time of the day. */
  readonly pouredAtMin: number;
}

/** How somebody looks after soap and what of it they log; always ends with `done`. */
export type Habit = (batch: Batch, random: Random) => Look[];

const HOUR = 60;
const DAY = 24 * HOUR;

/** The evening of a day after the pour, between 18 and 21 o'clock. */
function evening({ pouredAtMin }: Batch, day: number, random: Random): number {
  return day * DAY - pouredAtMin + (18 + 3 * random.next()) * HOUR;
}

/** Looks in the evenings from the first that the forecast allows, until it is ready. */
function eveningsFromForecast(batch: Batch, random: Random): Look[] {
  const looks: Look[] = [];
  for (let day = 0; ; day += 1) {
    const atMin = evening(batch, day, random);
    if (atMin < Math.max(batch.forecastMin, 1)) continue;
    if (atMin >= batch.readyMin) return [...looks, { saw: 'done', atMin }];
    looks.push({ saw: 'not-yet', atMin });
  }
}

const done = (looks: readonly Look[]): Look[] => looks.filter(({ saw }) => saw === 'done');

/** Looks after gaps of such lengths, from a day after the pour on. */
function lookAfter(gap: (random: Random) => number): Habit {
  return ({ readyMin }, random) => {
    const looks: Look[] = [];
    for (let atMin = DAY; ; atMin += gap(random)) {
      if (atMin >= readyMin) return [...looks, { saw: 'done', atMin }];
      looks.push({ saw: 'not-yet', atMin });
    }
  };
}

/** Between -1 and 1, evenly. */
const either = (random: Random): number => 2 * random.next() - 1;

/** Logged at other times than it was, but never before the pour. */
const shifted = (looks: readonly Look[], byMin: () => number): Look[] =>
  looks
    .map((look) => ({ ...look, atMin: Math.max(HOUR, look.atMin + byMin()) }))
    .sort((a, b) => a.atMin - b.atMin);

/** What people do, by a name for the figures. */
export const habits: Readonly<Record<string, Habit>> = {
  'not yet and done': eveningsFromForecast,
  'done only': (batch, random) => done(eveningsFromForecast(batch, random)),
  'first look after work, done only': (batch, random) =>
    done(eveningsFromForecast({ ...batch, forecastMin: 0 }, random)),
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
    eveningsFromForecast(batch, random).filter(({ saw }) => saw === 'done' || random.next() < 0.2),
  'mornings, before the forecast': ({ readyMin, forecastMin, pouredAtMin }, random) => {
    const looks: Look[] = [];
    for (let day = 0; ; day += 1) {
      const atMin = day * DAY - pouredAtMin + (7 + 1.5 * random.next()) * HOUR;
      if (atMin < Math.max(0.8 * forecastMin, 1)) continue;
      if (atMin >= readyMin) return [...looks, { saw: 'done', atMin }];
      looks.push({ saw: 'not-yet', atMin });
    }
  },
};
