import { DelayedError, UnrecoverableError, type Job } from 'bullmq';
import { describe, expect, it } from 'vitest';
import type { NewJob } from './jobs.js';
import type { WrittenNudge } from './channels/channel.js';
import type { DeliveredNudge } from './nudge-store.js';
import { processorFor } from './process-job.js';

const id = '01939a3e-7c00-7000-8000-000000000001';
const at = new Date('2026-11-27T18:00:00Z');
const nudge: DeliveredNudge = {
  id,
  workshopId: '01939a3e-7c00-7000-8000-000000000002',
  runId: '01939a3e-7c00-7000-8000-000000000003',
  runTitle: 'Tiles',
  stage: 'unmould',
  attempt: 1,
  kind: 'window-opens',
  title: 'Unmould',
  startAt: new Date('2026-11-27T19:00:00Z'),
  lastCallAt: null,
  dueAt: at,
  deliveredAt: at,
  sequence: 7,
};

/** What a processor does with one job as it comes out of a queue, that is, after a trip through JSON. */
async function run(name: string, data: unknown, claimed: DeliveredNudge | null = nudge, now = at) {
  const queued: NewJob[] = [];
  const sent: WrittenNudge[] = [];
  const claims: unknown[] = [];
  const delays: number[] = [];
  const silent = () => undefined;
  const process = processorFor({
    store: {
      due: async () => [],
      undoEarly: async () => 0,
      readerOf: async () => ({ language: 'de', units: 'metric', timeZone: 'Europe/Berlin' }),
      claim: async (...args) => {
        claims.push(args);
        return claimed;
      },
    },
    channels: [{ name: 'bell', send: async (got) => void sent.push(got) }],
    clock: { now: () => now },
    log: { debug: silent, info: silent, warn: silent, error: silent },
    queueJobs: async (jobs) => void queued.push(...jobs),
  });
  const moveToDelayed = async (until: number) => void delays.push(until);
  const job = { name, data: JSON.parse(JSON.stringify(data)) as unknown, moveToDelayed };
  const delayed = await Promise.resolve(process(job as unknown as Job)).then(
    () => false,
    (error: unknown) => {
      if (!(error instanceof DelayedError)) throw error;
      return true;
    },
  );
  return { queued, sent, claims, delays, delayed };
}

describe('a job from the queue', () => {
  it('claims the nudge at the version it was queued with and hands it to each channel', async () => {
    const { claims, queued } = await run('deliver', { id, version: 3, dueAt: at });
    expect(claims).toEqual([[id, 3, at]]);
    expect(queued.map(({ name, data }) => ({ name, data }))).toEqual([
      { name: 'send', data: { channel: 'bell', nudge } },
    ]);
  });

  it('hands over no more than the next job can read, written for the workshop', async () => {
    const generous = { ...nudge, run: 'first-tide', status: 'delivered' };
    const { queued } = await run('deliver', { id, version: 1, dueAt: at }, generous);
    const { sent } = await run('send', queued[0]?.data);
    const text = 'Unmould: ab jetzt möglich. Am besten 20:00.';
    expect(sent).toEqual([{ ...nudge, heading: 'Tiles', text }]);
  });

  it('says at the moment of sending that it comes late, when an outage has kept it', async () => {
    const later = new Date('2026-11-27T21:00:00Z');
    const { sent } = await run('send', { channel: 'bell', nudge }, nudge, later);
    expect(sent.map(({ text }) => text)).toEqual(['Unmould war für 20:00 geplant.']);
  });

  it('is put off for as long as the nudge is not due, be it a second', async () => {
    const before = Date.now();
    const dueAt = new Date(at.getTime() + 1000);
    const { claims, delays, delayed } = await run('deliver', { id, version: 3, dueAt });
    expect({ claims, delayed }).toEqual({ claims: [], delayed: true });
    expect(delays).toHaveLength(1);
    expect(delays[0]).toBeGreaterThanOrEqual(before + 1000);
    expect(delays[0]).toBeLessThanOrEqual(Date.now() + 1000);
  });

  it('does nothing more when there is nothing to claim', async () => {
    expect((await run('deliver', { id, version: 1, dueAt: at }, null)).queued).toEqual([]);
  });

  it.each([
    ['an unknown name', 'constructor', {}, /no handler for the job “constructor”/],
    ['no version', 'deliver', { id, dueAt: at }, /version: input.missing/],
    ['a version of nought', 'deliver', { id, version: 0, dueAt: at }, /version: input.too-small/],
    [
      'a field of a later program',
      'deliver',
      { id, version: 1, dueAt: at, colour: 1 },
      /colour: input.unknown-field/,
    ],
    ['a channel that is not here', 'send', { channel: 'pigeon', nudge }, /no channel “pigeon”/],
  ])('fails for good with %s', async (_, name, data, message) => {
    const failure = run(name, data);
    await expect(failure).rejects.toThrow(message);
    await expect(failure).rejects.toBeInstanceOf(UnrecoverableError);
  });
});
