const formats = new Map<string, Intl.DateTimeFormat>();

/**
 * What a clock on the wall shows, as fields for date and time want it: `2026-11-27T18:10`.
 * @param at milliseconds since 1970
 * @param zone IANA name
 */
export function wallClock(at: number, zone: string): string {
  let format = formats.get(zone);
  if (format === undefined) {
    // Sweden writes dates as ISO 8601 does.
    const options = { dateStyle: 'short', timeStyle: 'short', hourCycle: 'h23', timeZone: zone } as const;
    formats.set(zone, (format = new Intl.DateTimeFormat('sv-SE', options)));
  }
  return format.format(at).replace(' ', 'T');
}

/**
 * The instant at which that clock shows `text`. Where it does so twice, as the clock goes back, the first; where it
 * never does, as the clock goes forward, the instant after the same length of day.
 * @param text `2026-11-27T18:10`
 * @returns milliseconds since 1970; undefined when the text is no date and time
 */
export function instantOf(text: string, zone: string): number | undefined {
  const asUtc = Date.parse(`${text}:00Z`);
  if (Number.isNaN(asUtc) || text.length !== 16) return undefined;
  const offsetAt = (at: number): number => Date.parse(`${wallClock(at, zone)}:00Z`) - at;
  // The offsets of the day before and after cover both sides of any change.
  const day = 86_400_000;
  const tries = [offsetAt(asUtc - day), offsetAt(asUtc + day)].map((offset) => asUtc - offset);
  return tries.find((at) => wallClock(at, zone) === text) ?? tries[0];
}

/** Whether two instants lie on the same day of that clock. */
export function isSameDay(a: number, b: number, zone: string): boolean {
  return wallClock(a, zone).slice(0, 10) === wallClock(b, zone).slice(0, 10);
}

/**
 * Whether an instant lies in quiet hours.
 * @param quiet may run over midnight; its end is not included
 */
export function isQuiet(
  at: number,
  quiet: { readonly from: string; readonly to: string } | undefined,
  zone: string,
): boolean {
  if (quiet === undefined || quiet.from === quiet.to) return false;
  const time = wallClock(at, zone).slice(11);
  if (quiet.from < quiet.to) return time >= quiet.from && time < quiet.to;
  return time >= quiet.from || time < quiet.to;
}
