import { useEffect } from 'react';
import { serverNow } from '../api/server-time.js';
import { callOnce } from './alarm.js';
import type { BenchSitting } from './bench-view.js';
import { NOTICE_MS } from './countdown.js';
import { useMaySound } from './use-may-sound.js';

/** Longer than this no timer of a browser waits. */
const LONGEST_MS = 24 * 60 * 60_000;

/** Sounds before the last call of an open stage, also where no nudge can come because there is no connection. */
export function useLastCalls(sittings: readonly BenchSitting[]): void {
  const maySound = useMaySound();
  useEffect(() => {
    const timers = sittings
      .flatMap(({ stages }) => stages)
      .flatMap(({ state, runId, stage }) => {
        if (state !== 'open' || stage.lastCallAt === null) return [];
        const wait = Date.parse(stage.lastCallAt) - NOTICE_MS - serverNow();
        // A minute of grace, should the page be drawn anew just then; it sounds once all the same.
        if (wait < -60_000 || wait > LONGEST_MS) return [];
        const call = (): void => {
          if (maySound()) void callOnce({ runId, stage: stage.key, attempt: stage.attempt });
        };
        return [setTimeout(call, wait)];
      });
    return () => timers.forEach(clearTimeout);
  }, [sittings, maySound]);
}
