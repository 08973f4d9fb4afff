import { beforeEach, describe, expect, it } from 'vitest';
import { HandClock } from '../../tests/nudges/support/hand-clock.js';
import { MemoryStore } from '../../tests/nudges/support/memory-store.js';
import { QueueInMemory } from '../../tests/nudges/support/queue-in-memory.js';
import { QuietLog } from '../../tests/nudges/support/quiet-log.js';
import { alarmId, alarmJob } from './jobs.js';
import type { WaitingNudge } from './nudge-store.js';
import { addJobs } from './queue.js';
import { sweepOnce } from './sweep.js';

const HORIZON_MS = 10 * 60_000;

let store: MemoryStore;
let queue: QueueInMemory;
let clock: HandClock;
let log: QuietLog;
beforeEach(() => {
  store = new MemoryStore();
  queue = new QueueInMemory();
  clock = new HandClock('2026-11-27T18:00:00Z');
  log = new QuietLog();
});

const sweep = () => sweepOnce({ store, producer: queue.asProducer(), clock, log, horizonMs: HORIZON_MS });
/** Whether the alarm is set for later; undefined: there is none. */
const isDelayed = (nudge: WaitingNudge) => queue.jobs.get(alarmId(nudge))?.delayed;
/** An alarm as the queue has it from before the clock was put on. */
const alarmSetBefore = async (minutes: number): Promise<WaitingNudge> => {
  const nudge = store.add(clock.in(minutes));
  await addJobs(queue.asProducer(), [alarmJob(nudge, clock.now())]);
  return nudge;
};

describe('a sweep', () => {
  it('sets alarms for what is overdue, due now or due within the horizon, and counts them', async () => {
    const nudges = [-60, 0, 5, 9.99, 10, 11].map((minutes) => store.add(clock.in(minutes)));
    expect(await sweep()).toEqual({ waiting: 4, overdue: 2 });
    expect(nudges.map(isDelayed)).toEqual([false, false, true, true, undefined, undefined]);
    expect(log.lines).toEqual([]);
  });

  it('rings now what fell due while its alarm was set for later, and nothing else', async () => {
    const [due, later] = [await alarmSetBefore(3), await alarmSetBefore(8)];
    clock.advance(3);
    await sweep();
    expect([due, later].map(isDelayed)).toEqual([false, true]);
  });

  it('is content when a worker takes the job between the look and the promotion', async () => {
    await alarmSetBefore(3);
    clock.advance(3);
    queue.beforePromotion = (job) => {
      job.delayed = false;
    };
    expect(await sweep()).toEqual({ waiting: 1, overdue: 1 });
  });

  it('fails when a job cannot be promoted though it is still there, so that the next sweep is told of', async () => {
    await alarmSetBefore(3);
    clock.advance(3);
    queue.beforePromotion = () => {
      throw new Error('connection reset');
    };
    await expect(sweep()).rejects.toThrow('connection reset');
  });

  it('is content with an alarm that was taken and is gone by now', async () => {
    const nudge = await alarmSetBefore(3);
    clock.advance(3);
    store.due = async () => [nudge];
    queue.getJob = async () => undefined;
    expect(await sweep()).toEqual({ waiting: 1, overdue: 1 });
  });

  it('lets come again what a clock that was ahead has told, before it looks at what is due, and says so', async () => {
    const early: Date[] = [];
    store.undoEarly = async (now: Date) => {
      early.push(now);
      store.add(clock.in(2));
      return 1;
    };
    expect(await sweep()).toEqual({ waiting: 1, overdue: 0 });
    expect(early).toEqual([clock.now()]);
    expect(log.lines).toEqual([
      {
        level: 'warn',
        message: 'A clock was ahead and has come back: what it told too early comes again',
        details: { count: 1 },
      },
    ]);
  });

  it('says when there was more than one sweep reads', async () => {
    const add = (count: number) => {
      for (let i = 0; i < count; i += 1) store.add(clock.in(1));
    };
    add(4_999);
    expect(await sweep()).toEqual({ waiting: 4_999, overdue: 0 });
    expect(log.lines).toEqual([]);
    add(2);
    expect(await sweep()).toEqual({ waiting: 5_000, overdue: 0 });
    expect(log.lines).toMatchObject([{ level: 'warn', details: { limit: 5_000 } }]);
  });
});
