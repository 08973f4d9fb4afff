import type { Job } from 'bullmq';

/** The consuming end of a queue, of which the test says when it is ready, runs and closes. */
export class ConsumerByHand {
  readonly calls: string[] = [];
  readonly ready = byHand();
  readonly running = byHand();
  close = async (): Promise<void> => void this.calls.push('close');
  disconnect = async (): Promise<void> => void this.calls.push('disconnect');
  #failed: (job: Job | undefined, error: Error) => void = () => undefined;
  #error: (error: Error) => void = () => undefined;

  waitUntilReady(): Promise<void> {
    return this.ready.promise;
  }

  run(): Promise<void> {
    this.calls.push('run');
    return this.running.promise;
  }

  on(event: 'error' | 'failed', listener: (...args: never[]) => void): void {
    if (event === 'error') this.#error = listener as never;
    else this.#failed = listener as never;
  }

  fail(job: Partial<Job> | undefined, error: Error): void {
    this.#failed(job as Job | undefined, error);
  }

  lose(error: Error): void {
    this.#error(error);
  }
}

/** A promise that the test settles. */
export function byHand(): { promise: Promise<void>; resolve(): void; reject(error: Error): void } {
  let settle: Pick<ReturnType<typeof byHand>, 'resolve' | 'reject'> = {
    resolve: () => undefined,
    reject: () => undefined,
  };
  const promise = new Promise<void>((resolve, reject) => (settle = { resolve, reject }));
  return { promise, ...settle };
}
