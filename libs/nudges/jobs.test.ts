import { describe, expect, it } from 'vitest';
import { alarmJob, sendJob } from './jobs.js';

const at = new Date('2026-11-27T18:00:00Z');
const in5Minutes = new Date('2026-11-27T18:05:00Z');
const delivered = {
  ...{ id: 'n', workshopId: 'w', runId: 'r', runTitle: 'Tiles', stage: 'unmould', attempt: 1 },
  ...{ kind: 'time-for-it' as const, title: 'Unmould', startAt: at, lastCallAt: null, dueAt: at },
  ...{ deliveredAt: at, sequence: 7 },
};

describe('the alarm for a nudge', () => {
  it('is another one after each move, as a queue ignores a job of a known id', () => {
    const ids = [1, 2].map((version) => alarmJob({ id: 'n', version, dueAt: at }, at).opts.jobId);
    expect(ids).toEqual(['nudge-n-v1', 'nudge-n-v2']);
  });

  it('rings when the nudge is due, and at once where that has passed', () => {
    const delay = (dueAt: Date, now: Date) => alarmJob({ id: 'n', version: 1, dueAt }, now).opts.delay;
    expect([delay(in5Minutes, at), delay(at, at), delay(at, in5Minutes)]).toEqual([300_000, 0, 0]);
  });

  it('is tried again with growing pauses, and leaves nothing behind that would keep the sweep from setting it', () => {
    expect(alarmJob({ id: 'n', version: 1, dueAt: at }, at).opts).toMatchObject({
      ...{ attempts: 5, backoff: { type: 'exponential', delay: 1_000 } },
      ...{ removeOnComplete: true, removeOnFail: true },
    });
  });
});

describe('the hand-over of a delivered nudge to a channel', () => {
  it('is one for each channel and delivery, since a nudge told too early comes a second time', () => {
    const ids = [
      sendJob('bell', delivered),
      sendJob('post', delivered),
      sendJob('bell', { ...delivered, sequence: 9 }),
    ].map(({ opts }) => opts.jobId);
    expect(ids).toEqual(['send-bell-n-7', 'send-post-n-7', 'send-bell-n-9']);
  });

  // 1 + 2 + 4 + … + 256 = 511 seconds from the first try to the tenth.
  it('is tried for eight and a half minutes, and a failed one stays a fortnight for whoever asks why', () => {
    const { attempts, backoff, removeOnComplete, removeOnFail } = sendJob('bell', delivered).opts;
    expect({ attempts, backoff }).toEqual({ attempts: 10, backoff: { type: 'exponential', delay: 1_000 } });
    expect({ removeOnComplete, removeOnFail }).toEqual({
      ...{ removeOnComplete: true, removeOnFail: { age: 1_209_600 } },
    });
  });
});
