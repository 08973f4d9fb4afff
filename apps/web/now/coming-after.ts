import type { BenchSitting, BenchStage } from './bench-view.js';
import { isSameDay } from '../look/wall-clock.js';

/** What is open on one day of the clock on the wall. */
export interface ComingDay {
  readonly day: 'today' | 'tomorrow' | 'later';
  /** Start of the first stage, in milliseconds since 1970. */
  readonly at: number;
  readonly stages: readonly BenchStage[];
}

/**
 * What comes after the sitting that is shown: today and tomorrow; where those are empty, the next sitting there is.
 * @param now in milliseconds since 1970
 * @param zone IANA name
 */
export function comingAfter(
  sittings: readonly BenchSitting[],
  shown: BenchSitting,
  now: number,
  zone: string,
): ComingDay[] {
  const later = sittings
    .filter((sitting) => sitting !== shown && sitting.startAt >= shown.startAt)
    .map(({ stages, ...rest }) => ({ ...rest, stages: stages.filter(({ state }) => state === 'open') }))
    .filter(({ stages }) => stages.length > 0);
  const onDay = (day: 'today' | 'tomorrow', when: number): ComingDay[] => {
    const stages = later.filter(({ startAt }) => isSameDay(startAt, when, zone)).flatMap((s) => s.stages);
    const [first] = stages;
    return first === undefined ? [] : [{ day, at: Date.parse(first.stage.startAt), stages }];
  };
  const soon = [...onDay('today', now), ...onDay('tomorrow', dayAfter(now, zone))];
  const [next] = later;
  if (soon.length > 0 || next === undefined) return soon;
  return [{ day: 'later', at: next.startAt, stages: next.stages }];
}

/** An instant on the next day. Days have 23 to 25 hours, so the first whole hour that is on another. */
function dayAfter(now: number, zone: string): number {
  let at = now;
  while (isSameDay(at, now, zone)) at += 3_600_000;
  return at;
}
