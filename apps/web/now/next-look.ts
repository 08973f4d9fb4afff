import type { PlannedStage, StageForecast } from '#contract';
import { timesOf } from '../look/forecast-times.js';

type Forecasts = Pick<PlannedStage, 'forecasts'>;

/** Those of what a stage waits for; what closes it comes later and is no reason to look. */
function awaited({ forecasts = [] }: Forecasts): readonly StageForecast[] {
  return forecasts.filter(({ closes }) => !closes);
}

/**
 * Chance that all that a stage waits for has come at an instant: the share of its equally likely times up to then. What varies
 * together decides together, so the slowest does.
 * @param at in milliseconds since 1970
 * @returns undefined where the plan does not tell
 */
export function chanceAt(stage: Forecasts, at: number): number | undefined {
  const shares = awaited(stage).map((forecast) => {
    const times = timesOf(forecast);
    return times.filter((time) => time <= at).length / times.length;
  });
  return shares.length === 0 ? undefined : Math.min(...shares);
}

/**
 * When to look again at what has not come yet: when half of the times that are left have passed.
 * @param now in milliseconds since 1970
 * @returns an instant of that kind; undefined where the plan does not tell, or no time is left
 */
export function lookAgain(stage: Forecasts, now: number): number | undefined {
  const looks = awaited(stage).map((forecast) => {
    const left = timesOf(forecast).filter((time) => time > now);
    return left[Math.ceil(left.length / 2) - 1];
  });
  const found = looks.filter((look) => look !== undefined);
  return found.length === 0 ? undefined : Math.max(...found);
}
