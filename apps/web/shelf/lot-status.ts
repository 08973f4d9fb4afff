/** When a lot is ready, as instants. */
export interface ReadyBand {
  readonly low: string;
  readonly likely: string;
  readonly high: string;
}

/**
 * How far a lot has come: `curing` before its band, `perhaps` in the first half of it, `likely` in the second, `ready`
 * after it.
 */
export type LotStage = 'curing' | 'perhaps' | 'likely' | 'ready';

export interface LotStatus {
  readonly stage: LotStage;
  /** Whole days on the calendar to the day on which it is most likely ready; negative when that is over. */
  readonly days: number;
}

/** @param now in milliseconds; @param timeZone whose calendar counts the days */
export function lotStatus(ready: ReadyBand, now: number, timeZone: string): LotStatus {
  const days = dayNumber(Date.parse(ready.likely), timeZone) - dayNumber(now, timeZone);
  return { stage: stageOf(ready, now), days };
}

function stageOf(ready: ReadyBand, now: number): LotStage {
  if (now < Date.parse(ready.low)) return 'curing';
  if (now < Date.parse(ready.likely)) return 'perhaps';
  return now < Date.parse(ready.high) ? 'likely' : 'ready';
}

/** Days since 1970 on the calendar of a time zone, so that days of 23 or 25 hours count as one. */
export function dayNumber(ms: number, timeZone: string): number {
  const parts = new Intl.DateTimeFormat('en-CA', { timeZone, dateStyle: 'short' }).format(new Date(ms));
  return Date.parse(`${parts}T00:00:00Z`) / 86_400_000;
}
