import { DelayedError, UnrecoverableError, type Job, type Processor } from 'bullmq';
import { parseWith } from '#contract';
import { pathText } from '#units';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import type { Channel } from './channels/channel.js';
import { deliverToInbox } from './channels/inbox.js';
import type { Clock } from './clock.js';
import { describeNudge } from './describe-nudge.js';
import { payloads, sendJob, type JobName, type NewJob, type Payload } from './jobs.js';
import type { Log } from './log.js';
import type { NudgeStore } from './nudge-store.js';

export interface ProcessorParts {
  readonly store: NudgeStore;
  readonly channels: readonly Channel[];
  readonly clock: Clock;
  readonly log: Log;
  /** Queues the jobs that follow from a delivery. */
  readonly queueJobs: (jobs: readonly NewJob[]) => Promise<void>;
}

/**
 * What the worker does with a job. One whose name this version does not know, or whose payload it cannot read, fails
 * for good instead of passing for done.
 */
export function processorFor(parts: ProcessorParts): Processor {
  const handlers: Record<JobName, Processor> = {
    deliver: (job, token) => deliver(parts, read('deliver', job), job, token),
    send: (job) => send(parts, read('send', job)),
  };
  return (job, token) => {
    if (!Object.hasOwn(handlers, job.name)) {
      throw new UnrecoverableError(`There is no handler for the job “${job.name}”.`);
    }
    return handlers[job.name as JobName](job, token);
  };
}

async function deliver(
  { store, channels, clock, log, queueJobs }: ProcessorParts,
  { id, version, dueAt }: Payload<'deliver'>,
  job: Job,
  token: string | undefined,
): Promise<void> {
  const now = clock.now();
  const early = dueAt.getTime() - now.getTime();
  if (early > 0) {
    // The queue times its jobs by the machine's clock, which is not always the one that counts here.
    await job.moveToDelayed(Date.now() + early, token);
    throw new DelayedError();
  }
  const nudge = await deliverToInbox(store, id, version, now);
  if (nudge === null) {
    log.debug('Nothing to deliver: done before, cancelled or moved', { id, version });
    return;
  }
  await queueJobs(channels.map(({ name }) => sendJob(name, nudge)));
}

async function send(
  { channels, clock, store }: ProcessorParts,
  { channel, nudge }: Payload<'send'>,
): Promise<void> {
  const known = channels.find(({ name }) => name === channel);
  if (known === undefined) throw new UnrecoverableError(`There is no channel “${channel}” here.`);
  const reader = await store.readerOf(nudge.workshopId);
  const texts = textsFor(reader, wordsOf[reader.language]);
  const text = texts.of(describeNudge(nudge, clock.now()));
  await known.send({ ...nudge, heading: nudge.runTitle, text });
}

function read<Name extends JobName>(name: Name, job: Job): Payload<Name> {
  const parsed = parseWith(payloads[name], job.data);
  if (parsed.ok) return parsed.value as Payload<Name>;
  const issues = parsed.issues.map(({ path, code }) => `${pathText(path)}: ${code}.`);
  throw new UnrecoverableError(`The job “${name}” cannot be read. ${issues.join(' ')}`);
}
