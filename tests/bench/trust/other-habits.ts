import { daily, DAY, eveningsFromForecast, habits, lookAt, shifted, written, type Habit } from './habits.js';
import type { Truth } from './simulated-maker.js';

const HOUR = 60;

/** A habit with what else is unlike the makers of the main table. */
export type OtherMaker = Pick<Truth, 'habit' | 'change' | 'otherTimes'>;

const share =
  (of: number): Habit =>
  (batch, random) =>
    written(eveningsFromForecast(batch, random), () => random.next() < of);

/** Poured on a Friday evening, looked at on Saturdays and Sundays about noon. */
const weekends: Habit = (batch, random) =>
  lookAt(batch, (day) =>
    day % 7 === 1 || day % 7 === 2
      ? day * DAY - batch.pouredAtMin + (10 + 4 * random.next()) * HOUR
      : undefined,
  );

/** One of three on each run. */
const mixed: Habit = (batch, random) => {
  const u = random.next();
  const name = u < 0.4 ? 'not yet and done' : u < 0.7 ? 'twice a day' : 'when convenient';
  return habits[name]!(batch, random);
};

/**
 * Makers that no figure of the model was chosen by. They have no bars of their own: those of the main table are shown for them, too.
 */
export const otherMakers: Readonly<Record<string, OtherMaker>> = {
  'late: first look up to two days after the forecast': {
    habit: (batch, random) => daily(batch, batch.forecastMin + 2 * DAY * random.next(), [18, 21], random),
  },
  'careless: skips days, half written, off by up to 6 h': {
    habit: (batch, random) =>
      written(
        shifted(
          lookAt(batch, (day) => {
            const atMin = day * DAY - batch.pouredAtMin + (17 + 5 * random.next()) * HOUR;
            return atMin < batch.forecastMin || random.next() < 0.3 ? undefined : atMin;
          }),
          () => 6 * HOUR * (2 * random.next() - 1),
        ),
        () => random.next() < 0.5,
      ),
  },
  'weekends only': { habit: weekends },
  'always logged the next morning': {
    habit: (batch, random) =>
      eveningsFromForecast(batch, random).map((look) => ({
        ...look,
        wasAtMin: look.atMin,
        atMin: look.atMin + (11 + 2 * random.next()) * HOUR,
      })),
  },
  'every other evening': {
    habit: (batch, random) =>
      lookAt(batch, (i) => (1 + 2 * i) * DAY - batch.pouredAtMin + (18 + 3 * random.next()) * HOUR),
  },
  'one of three habits each time': { habit: mixed },
  'writes all looks, from the 15th run on one in four': {
    habit: (batch, random) => (batch.run < 15 ? share(1) : share(0.25))(batch, random),
  },
  'writes one look in four, from the 15th run on all': {
    habit: (batch, random) => (batch.run < 15 ? share(0.25) : share(1))(batch, random),
  },
  'one look in ten written': { habit: share(0.1) },
  'three looks in ten written': { habit: share(0.3) },
  'slower by a quarter from the 15th run on': {
    habit: eveningsFromForecast,
    change: { after: 15, times: 1.25 },
  },
  'two recipes in turn': { habit: eveningsFromForecast, otherTimes: 1.2 },
};
