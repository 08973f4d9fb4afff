import { DateTime, IANAZone } from 'luxon';
import { minuteOf, type Minute } from '#units';

/** True when the zone is in the IANA database of this machine. */
export function isTimeZone(zone: string): boolean {
  return IANAZone.isValidZone(zone);
}

/**
 * The instant of a local date and time.
 * A time that the clock skips in spring is moved on by the length of the gap; of a time that comes twice in
 * autumn the first is taken (RFC 5545, section 3.3.5, asks for the same).
 * @param local `YYYY-MM-DDTHH:MM` or `YYYY-MM-DD` (start of that day)
 * @returns undefined when it is no date, or the zone is none
 */
export function instantOf(local: string, zone: string): Minute | undefined {
  const at = DateTime.fromISO(local, { zone });
  return at.isValid ? firstOf(at) : undefined;
}

/** The local date of an instant, `YYYY-MM-DD`. */
export function localDateOf(at: Minute, zone: string): string {
  return local(at, zone).toFormat('yyyy-MM-dd');
}

/** The local time of day, `HH:MM`. */
export function localTimeOf(at: Minute, zone: string): string {
  return local(at, zone).toFormat('HH:mm');
}

/** `Fri 27 Nov 18:10`: short, unmistakable, in English whatever the machine's locale. */
export function localText(at: Minute, zone: string): string {
  return local(at, zone).setLocale('en-GB').toFormat('ccc d LLL HH:mm');
}

/** The instant of a time of day on a day; `24:00` is the start of the next day. @param day any moment of it */
export function timeOnDay(day: DateTime, time: string): Minute {
  const [hour, min] = time.split(':').map(Number);
  return firstOf(day.startOf('day').set({ hour: hour ?? 0, minute: min ?? 0 }));
}

/** Of a wall-clock time that comes twice, the first; luxon alone may take either. */
function firstOf(at: DateTime): Minute {
  return minuteOf(Math.min(...at.getPossibleOffsets().map((possible) => possible.toMillis())));
}

function local(at: Minute, zone: string): DateTime {
  return DateTime.fromMillis(at * 60_000, { zone });
}
