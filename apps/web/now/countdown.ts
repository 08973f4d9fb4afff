import type { PlannedStage } from '#contract';

/** Minutes before its last call from which a stage is called urgent; nudges are given as much notice. */
export const NOTICE_MS = 30 * 60_000;

/** How a stage stands against the clock. Times in milliseconds since 1970, lengths in milliseconds. */
export type StageTiming =
  /** Its window has not opened. */
  | { readonly kind: 'ahead'; readonly opensIn: number; readonly lastCallIn: number | null }
  /** It may be begun; `null`: nothing closes it. */
  | { readonly kind: 'open'; readonly lastCallIn: number | null; readonly isUrgent: boolean }
  /** Its last call has passed. */
  | { readonly kind: 'over'; readonly since: number };

/** @param now by the server's clock, in milliseconds since 1970 */
export function timingOf(stage: Pick<PlannedStage, 'opensAt' | 'lastCallAt'>, now: number): StageTiming {
  const opensIn = Date.parse(stage.opensAt) - now;
  const lastCallIn = stage.lastCallAt === null ? null : Date.parse(stage.lastCallAt) - now;
  if (opensIn > 0) return { kind: 'ahead', opensIn, lastCallIn };
  if (lastCallIn !== null && lastCallIn < 0) return { kind: 'over', since: -lastCallIn };
  return { kind: 'open', lastCallIn, isUrgent: lastCallIn !== null && lastCallIn <= NOTICE_MS };
}

/** What is further away than this is not counted to the second: its time of day says more. */
const NEAR_MS = 3 * 60 * 60_000;

/** The length that is counted, in milliseconds; undefined where there is none, or it is too long to be counted. */
export function countedOf(timing: StageTiming): number | undefined {
  const length =
    timing.kind === 'ahead' ? timing.opensIn : timing.kind === 'over' ? timing.since : timing.lastCallIn;
  return length === null || length > NEAR_MS ? undefined : length;
}

/**
 * A length of time that is counted down: `05:09`, `1:05:09`. Within its kind it keeps its width, so that nothing moves
 * while it counts.
 * @param ms 0 or more
 */
export function countdownText(ms: number): string {
  const seconds = Math.floor(ms / 1000);
  const two = (number: number): string => String(number).padStart(2, '0');
  const hours = Math.floor(seconds / 3600);
  const rest = `${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
  return hours > 0 ? `${String(hours)}:${rest}` : rest;
}
