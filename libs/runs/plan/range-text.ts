import { localDateOf, localText, localTimeOf } from '#hours';
import { minute } from '#units';

/** `Tue 1 Dec 02:10–06:40`; both days where they differ; open-ended where nothing closes it. */
export function rangeText(from: number, to: number, zone: string): string {
  const first = minute(from);
  if (!Number.isFinite(to)) return `from ${localText(first, zone)} on`;
  if (from === to) return `${localText(first, zone)} only`;
  const last = minute(to);
  const sameDay = localDateOf(first, zone) === localDateOf(last, zone);
  // Where the clock goes back between the two, the same time of day can come twice.
  const plain = sameDay && localTimeOf(first, zone) < localTimeOf(last, zone);
  return `${localText(first, zone)}–${plain ? localTimeOf(last, zone) : localText(last, zone)}`;
}
