import type { Producer } from '../../../libs/nudges/backend.js';
import type { NewJob } from '../../../libs/nudges/jobs.js';

interface HeldJob extends NewJob {
  delayed: boolean;
}

/**
 * The producing end of a queue, for a test of what no real store does when it is asked to: not to answer, to fail at one
 * call, to have a job taken between two calls. Keeps the first of two jobs of one id, as queues do.
 */
export class QueueInMemory {
  readonly jobs = new Map<string, HeldJob>();
  /** How many jobs each bulk add brought. */
  readonly bulks: number[] = [];
  readonly closings: ('close' | 'disconnect')[] = [];
  /** What a call does instead of being answered. */
  instead: Partial<
    Record<
      'addBulk' | 'remove' | 'close' | 'disconnect' | 'getJobCounts' | 'waitUntilReady',
      () => Promise<never>
    >
  > = {};
  /** What happens between the look at a job and its promotion. */
  beforePromotion: (job: HeldJob) => void = () => undefined;
  #listener: (error: Error) => void = () => undefined;

  asProducer(): Producer {
    return this as unknown as Producer;
  }

  on(_: 'error', listener: (error: Error) => void): void {
    this.#listener = listener;
  }

  fail(error: Error): void {
    this.#listener(error);
  }

  async waitUntilReady(): Promise<void> {
    await this.instead.waitUntilReady?.();
  }

  async addBulk(jobs: readonly NewJob[]): Promise<void> {
    this.bulks.push(jobs.length);
    await this.instead.addBulk?.();
    for (const job of jobs) {
      const id = job.opts.jobId ?? '';
      if (!this.jobs.has(id)) this.jobs.set(id, { ...job, delayed: (job.opts.delay ?? 0) > 0 });
    }
  }

  async remove(id: string): Promise<void> {
    await this.instead.remove?.();
    this.jobs.delete(id);
  }

  async getJobCounts(): Promise<Record<string, number>> {
    await this.instead.getJobCounts?.();
    return { active: 0 };
  }

  async close(): Promise<void> {
    this.closings.push('close');
    await this.instead.close?.();
  }

  async disconnect(): Promise<void> {
    this.closings.push('disconnect');
    await this.instead.disconnect?.();
  }

  async getJob(id: string): Promise<unknown> {
    const job = this.jobs.get(id);
    return (
      job && {
        isDelayed: async () => job.delayed,
        promote: async () => {
          this.beforePromotion(job);
          if (!job.delayed) throw new Error('Job is not in the delayed state');
          job.delayed = false;
        },
      }
    );
  }
}

/** A store that does not answer. */
export const neverAnswers = (): Promise<never> => new Promise(() => undefined);
