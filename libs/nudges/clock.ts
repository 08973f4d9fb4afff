/** What time it is. Injected, so that a test can walk through days of a run. */
export interface Clock {
  now(): Date;
}

/** The machine's own clock. */
export const systemClock: Clock = { now: () => new Date() };
