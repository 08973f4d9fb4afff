import type { JobsOptions } from 'bullmq';
import { z } from 'zod';
import { instant, key, nudgeKinds, uuid } from '#contract';
import type { DeliveredNudge, WaitingNudge } from './nudge-store.js';

const date = instant.transform((text) => new Date(text));

/** What each job carries, as checked on arrival: jobs outlive the program version that queued them. */
export const payloads = {
  /** The alarm for one stored nudge. Deliberately without what it says: the row is read when the alarm rings. */
  deliver: z.strictObject({ id: uuid, version: z.int().min(1), dueAt: date }),
  /** An already delivered nudge on its way through one further channel. */
  send: z.strictObject({
    channel: key,
    nudge: z.strictObject({
      id: uuid,
      workshopId: uuid,
      runId: uuid,
      runTitle: z.string(),
      stage: z.string(),
      attempt: z.int(),
      kind: z.enum(nudgeKinds),
      title: z.string(),
      startAt: date.nullable(),
      lastCallAt: date.nullable(),
      dueAt: date,
      deliveredAt: date,
      sequence: z.int(),
    }),
  }),
};

export type JobName = keyof typeof payloads;
export type Payload<Name extends JobName> = z.output<(typeof payloads)[Name]>;

/** A job ready for the queue's bulk add. */
export interface NewJob {
  readonly name: JobName;
  readonly data: Payload<'deliver'> | Payload<'send'>;
  readonly opts: JobsOptions;
}

/**
 * The id of a nudge's alarm. It holds the version because a queue ignores a second job with a known id: a moved
 * nudge needs a new alarm while the old one may still be there, or even running.
 */
export function alarmId(nudge: Pick<WaitingNudge, 'id' | 'version'>): string {
  return `nudge-${nudge.id}-v${nudge.version}`;
}

/** @param now the time from which the delay counts; overdue alarms ring at once */
export function alarmJob({ id, version, dueAt }: WaitingNudge, now: Date): NewJob {
  return {
    name: 'deliver',
    data: { id, version, dueAt },
    opts: {
      jobId: alarmId({ id, version }),
      delay: Math.max(0, dueAt.getTime() - now.getTime()),
      attempts: 5,
      backoff: { type: 'exponential', delay: 1_000 },
      // A finished or failed job that is kept would make the sweep's next add of the same id a silent no-op.
      removeOnComplete: true,
      removeOnFail: true,
    },
  };
}

/** A delivered nudge is sent once more per channel, each with its own retries, so that one outage delays one channel. */
export function sendJob(channel: string, nudge: DeliveredNudge): NewJob {
  return {
    name: 'send',
    data: { channel, nudge: onlyKnown(nudge) },
    opts: {
      // With its place in the inbox, as a nudge that was told too early comes a second time.
      jobId: `send-${channel}-${nudge.id}-${nudge.sequence}`,
      // 1, 2, 4 … 256 seconds: nearly nine minutes in all.
      attempts: 10,
      backoff: { type: 'exponential', delay: 1_000 },
      removeOnComplete: true,
      // Nothing adds this id again, so what could not be sent may stay a while for whoever asks why.
      removeOnFail: { age: 14 * 24 * 60 * 60 },
    },
  };
}

/** A store may hand out more than was asked for; the payload's schema takes no more than it knows. */
function onlyKnown(nudge: DeliveredNudge): DeliveredNudge {
  const { id, workshopId, runId, runTitle, stage, attempt, kind, title, sequence } = nudge;
  const { startAt, lastCallAt, dueAt, deliveredAt } = nudge;
  return {
    ...{ id, workshopId, runId, runTitle, stage, attempt, kind, title, sequence },
    ...{ startAt, lastCallAt, dueAt, deliveredAt },
  };
}
