import { BAND_SHARE, forecastFrom, judge, type LogForecast } from '#clocks';
import type { ForecastRecord, RunTeachings } from '#contract';

type Observation = RunTeachings['observations'][number];

/** So many are told. More would tell of forecasts of long ago. */
const TOLD = 30;

/**
 * How forecasts came true, each as it stood before its batch: learned only from what was seen before the day on which its clock began.
 * Batches count once they were found ready. Of one whose clock began on an unknown day it cannot be said what was known then.
 * @returns the latest, oldest first; undefined where there is none
 */
export function forecastRecord(teachings: readonly RunTeachings[]): ForecastRecord | undefined {
  const all = teachings.flatMap((run) => run.observations);
  const latest = all
    .filter((each) => each.fromDay !== undefined && isReady(each))
    .sort(inTime)
    .slice(-TOLD);
  if (latest.length === 0) return undefined;
  const known = new Map<string, LogForecast>();
  const forecastOf = ({ pace, recipe, sigma, doubt, fromDay = 0 }: Observation): LogForecast => {
    const name = JSON.stringify([pace, recipe, sigma, doubt, fromDay]);
    let found = known.get(name);
    if (found === undefined) {
      const earlier = all.filter((each) => each.pace === pace && each.day < fromDay);
      known.set(name, (found = forecastFrom(earlier, { recipe, sigma, doubt })));
    }
    return found;
  };
  const forecasts = latest.map((each) => ({
    ...{ pace: each.pace, recipe: each.recipe, day: each.day },
    verdict: judge(each, forecastOf(each)),
  }));
  return {
    bandPercent: Math.round(BAND_SHARE * 100),
    expectedInside: Math.round(BAND_SHARE * forecasts.length * 10) / 10,
    forecasts,
  };
}

function isReady({ exact, below }: Observation): boolean {
  return exact !== undefined || below !== undefined;
}

function inTime(a: Observation, b: Observation): number {
  return a.day - b.day || (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1);
}
