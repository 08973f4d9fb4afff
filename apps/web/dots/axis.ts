import { localDays, wallTimes, type Stretch } from '../look/local-days.js';

export interface Tick {
  readonly at: number;
  /** Whether a day begins there; else it is a time of day. */
  readonly isDay: boolean;
}

const HOUR = 3_600_000;
/** Pixels that a written day needs, and a written time. */
const ROOM_FOR_A_DAY = 78;
const ROOM_FOR_A_TIME = 52;
const steps = [1, 2, 5, 10, 15, 30, 60, 120, 180, 360] as const;

/** Where days or, of less than a day and a half, times are written, so that they have room. @param zone IANA time zone */
export function ticksOf(view: Stretch, width: number, zone: string): readonly Tick[] {
  const length = view.to - view.from;
  const perHour = (width * HOUR) / length;
  const step = steps.find((each) => (each / 60) * perHour >= ROOM_FOR_A_TIME);
  if (length < 36 * HOUR && step !== undefined) {
    return wallTimes(view, zone, step).map((at) => ({ at, isDay: false }));
  }
  const every = Math.max(1, Math.ceil(ROOM_FOR_A_DAY / (perHour * 24)));
  const begun = localDays(view, zone).filter(({ from }) => from >= view.from);
  const days = begun.filter((_, i) => i % every === 0).map(({ from }) => ({ at: from, isDay: true }));
  const before = (((days[0]?.at ?? view.to) - view.from) / HOUR) * perHour;
  // The day on which it begins has a name too, where there is room for it.
  return before >= ROOM_FOR_A_DAY ? [{ at: view.from, isDay: true }, ...days] : days;
}

/** Pixels that a day takes at least, for hours to be drawn in it: of weeks they would be a grating that says nothing. */
const NEAREST = 24;

/** The maker's hours that can be drawn. */
export function shownHours(hours: readonly Stretch[], view: Stretch, width: number): readonly Stretch[] {
  if ((width * 24 * HOUR) / (view.to - view.from) < NEAREST) return [];
  return hours.flatMap(({ from, to }) => {
    const cut = { from: Math.max(from, view.from), to: Math.min(to, view.to) };
    return cut.from < cut.to ? [cut] : [];
  });
}

/** All of the times, and what is marked where that lies not too far from them. */
export function viewOf(times: readonly number[], mark: number | undefined): Stretch {
  const [first, last] = [times[0]!, times.at(-1)!];
  const length = Math.max(last - first, HOUR / 4);
  const isNear = mark !== undefined && isNearTo(times, mark);
  const [from, to] = isNear ? [Math.min(first, mark), Math.max(last, mark)] : [first, last];
  return { from: from - length * 0.08, to: to + length * 0.08 };
}

/** Whether a moment lies among the times or not farther from them than they are apart. */
export function isNearTo(times: readonly number[], mark: number): boolean {
  const [first, last] = [times[0]!, times.at(-1)!];
  const length = Math.max(last - first, HOUR / 4);
  return mark >= first - length && mark <= last + length;
}
