import { startNudges, type NudgeStore } from '#nudges';
import { HandClock } from './hand-clock.js';
import { QuietLog } from './quiet-log.js';
import type { Claim, WorkerSettings } from './remote-worker.js';

/** A worker that tells of its claim and then waits for an answer that never comes. */
const { now, nudge, target, lockMs } = JSON.parse(process.argv[2] ?? '') as WorkerSettings;
const store: NudgeStore = {
  // The sweep at the start sets the alarm, so that no other worker can come first.
  due: async () => [{ ...nudge, dueAt: new Date(nudge.dueAt) }],
  undoEarly: async () => 0,
  readerOf: async () => ({ language: 'en', units: 'metric', timeZone: 'UTC' }),
  claim: (id, version) =>
    new Promise(() => {
      const claim: Claim = { id, version };
      process.send?.(claim);
    }),
};

await startNudges({
  store,
  ...target,
  clock: new HandClock(now),
  log: new QuietLog(),
  channels: [],
  concurrency: 1,
  sweepEveryMs: 60 * 60_000,
  lockMs,
});
