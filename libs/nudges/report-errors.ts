import type { Consumer, Producer } from './backend.js';
import type { Clock } from './clock.js';
import { reasonOf, type Log } from './log.js';

const SAME_AGAIN_AFTER_MS = 60_000;

/**
 * Logs an end's connection errors. Without a listener the first one would end the process; without the pause an
 * outage would fill the log, since every reconnect fails with the same words.
 */
export function reportErrors(end: Producer | Consumer, name: string, log: Log, clock: Clock): void {
  const saidAt = new Map<string, number>();
  const onError = (error: Error): void => {
    const reason = reasonOf(error);
    const now = clock.now().getTime();
    const last = saidAt.get(reason);
    if (last !== undefined && now - last < SAME_AGAIN_AFTER_MS) return;
    saidAt.set(reason, now);
    log.warn(`Trouble with the nudge ${name}`, { reason });
  };
  end.on('error', onError);
}
