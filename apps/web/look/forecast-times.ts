import type { StageForecast } from '#contract';

/** The equally likely times of a forecast, in milliseconds since 1970, ascending. */
export function timesOf({ fromAt, minutes }: Pick<StageForecast, 'fromAt' | 'minutes'>): readonly number[] {
  return minutes.map((each) => Date.parse(fromAt) + each * 60_000);
}
