/** A stretch of one local day as the contract has it; `24:00` ends it with the day. */
export interface Span {
  readonly from: string;
  readonly to: string;
}

export const MINUTES_OF_DAY = 1440;
/** What a handle moves by; finer times are typed. */
export const STEP_MIN = 15;

/** `18:30` as 1110. */
export function minutesOf(time: string): number {
  return 60 * Number(time.slice(0, 2)) + Number(time.slice(3, 5));
}

/** 1110 as `18:30`, 1440 as `24:00`. */
export function timeOf(minutes: number): string {
  const [hour, minute] = [Math.floor(minutes / 60), minutes % 60];
  return `${String(hour).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
}

/**
 * A time of day as a person types it: `9`, `930`, `9:30`, `9.30`, `21h`.
 * @param isEnd midnight is the end of the day, `24:00`
 * @returns `HH:MM`; undefined when it is none, or may still become one
 */
export function readTime(text: string, isEnd: boolean): string | undefined {
  const [, hour = '', minute = '00'] = /^\s*(\d{1,2})(?:[:.h]?(\d{2}))?\s*h?\s*$/.exec(text) ?? [];
  if (hour === '') return undefined;
  const minutes = 60 * Number(hour) + Number(minute);
  if (Number(minute) > 59 || minutes > MINUTES_OF_DAY || (minutes === MINUTES_OF_DAY && !isEnd))
    return undefined;
  return timeOf(isEnd && minutes === 0 ? MINUTES_OF_DAY : minutes);
}

/** Sorted, and joined where they touch or overlap; those that end before they begin are left as they are. */
export function joined(spans: readonly Span[]): Span[] {
  const result: Span[] = [];
  for (const span of [...spans].sort((a, b) => a.from.localeCompare(b.from))) {
    const last = result.at(-1);
    const meets = last !== undefined && last.from < last.to && span.from < span.to && span.from <= last.to;
    if (!meets) result.push(span);
    else if (span.to > last.to) result[result.length - 1] = { from: last.from, to: span.to };
  }
  return result;
}

/**
 * One edge of a span moved, to the next quarter of an hour; it stops before its other edge and at its neighbours.
 * @param spans sorted and disjoint
 */
export function withEdge(spans: readonly Span[], index: number, edge: keyof Span, minutes: number): Span[] {
  const span = spans[index];
  if (span === undefined) return [...spans];
  const before = index === 0 ? 0 : minutesOf(spans[index - 1]?.to ?? '00:00');
  const after = index === spans.length - 1 ? MINUTES_OF_DAY : minutesOf(spans[index + 1]?.from ?? '24:00');
  const [low, high] =
    edge === 'from' ? [before, minutesOf(span.to) - STEP_MIN] : [minutesOf(span.from) + STEP_MIN, after];
  const snapped = Math.round(minutes / STEP_MIN) * STEP_MIN;
  const moved = Math.max(low, Math.min(high, snapped));
  return spans.map((each, i) => (i === index ? { ...each, [edge]: timeOf(moved) } : each));
}

/** Evenings, when most people have time; where they are taken, the middle of the longest stretch that is free. */
export function freeSpan(spans: readonly Span[]): Span | undefined {
  const evening = { from: '18:00', to: '21:00' };
  if (spans.every(({ from, to }) => to <= evening.from || from >= evening.to)) return evening;
  const edges = [
    0,
    ...joined(spans).flatMap(({ from, to }) => [minutesOf(from), minutesOf(to)]),
    MINUTES_OF_DAY,
  ];
  const gaps = edges.flatMap((from, i) => (i % 2 === 0 ? [{ from, to: edges[i + 1] ?? from }] : []));
  const longest = gaps.reduce((best, gap) => (gap.to - gap.from > best.to - best.from ? gap : best));
  const length = Math.min(120, longest.to - longest.from);
  if (length < STEP_MIN) return undefined;
  const from = Math.round((longest.from + longest.to - length) / 2 / STEP_MIN) * STEP_MIN;
  const start = Math.max(longest.from, Math.min(from, longest.to - length));
  return { from: timeOf(start), to: timeOf(start + length) };
}

/** A night that was written as one span, as the two that the contract wants: to midnight, and from it. */
export function overMidnight({ from, to }: Span): { readonly today: Span; readonly tomorrow: Span } {
  return { today: { from, to: '24:00' }, tomorrow: { from: '00:00', to } };
}

/** Minutes of all spans together. */
export function lengthOf(spans: readonly Span[]): number {
  return joined(spans).reduce((sum, { from, to }) => sum + Math.max(0, minutesOf(to) - minutesOf(from)), 0);
}
