import { minute, type Minute } from './quantities.js';

const MS_PER_MINUTE = 60_000;

/** The whole minute that contains an instant. @param epochMs milliseconds since 1970-01-01T00:00Z */
export function minuteOf(epochMs: number): Minute {
  return minute(Math.floor(epochMs / MS_PER_MINUTE));
}

/** Milliseconds since 1970-01-01T00:00Z at which the minute begins. */
export function epochMs(at: Minute): number {
  return at * MS_PER_MINUTE;
}

/** The minute as an ISO 8601 instant in UTC, for example `2026-11-27T18:00:00.000Z`. */
export function isoInstant(at: Minute): string {
  return new Date(epochMs(at)).toISOString();
}

/** The whole minute of an ISO 8601 instant that was checked before. @throws RangeError when it is none after all */
export function minuteOfIso(text: string): Minute {
  const at = parseIsoInstant(text);
  if (at === undefined) throw new RangeError(`“${text}” is no instant`);
  return at;
}

/** Reads an ISO 8601 instant that states its offset. @returns undefined when it is none */
export function parseIsoInstant(text: string): Minute | undefined {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:\d{2})$/.test(text)) return undefined;
  const ms = Date.parse(text);
  return Number.isNaN(ms) ? undefined : minuteOf(ms);
}
