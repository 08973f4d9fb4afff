import type { Answerer } from './lane.js';
import type { Ask, Base, FromWorker, ToWorker } from './messages.js';

/** An ask with the number of scenarios behind the odds. */
export interface WorkerAsk extends Ask {
  readonly scenarios: number;
}

/** The planner and the clocks in a worker of their own. It starts with the first ask. */
export class PlannerWorker implements Answerer<WorkerAsk, FromWorker> {
  private worker: Worker | undefined;
  private readonly waiting: ((answer: FromWorker) => void)[] = [];
  private sent: Base | undefined;
  private name = 0;

  ask({ base, wish, nowMin, scenarios }: WorkerAsk, done: (answer: FromWorker) => void): void {
    this.waiting.push(done);
    if (this.sent?.input !== base.input || this.sent.previous !== base.previous) {
      this.sent = base;
      this.post({ kind: 'base', name: ++this.name, base });
    }
    this.post({ kind: 'ask', base: this.name, wish, nowMin, scenarios });
  }

  /** Ends the worker; whoever waits gets no answer any more. */
  end(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.sent = undefined;
    this.waiting.length = 0;
  }

  private post(message: ToWorker): void {
    this.worker ??= this.started();
    this.worker.postMessage(message);
  }

  private started(): Worker {
    const worker = new Worker(new URL('./whatif-worker.ts', import.meta.url), { type: 'module' });
    worker.addEventListener('message', ({ data }: MessageEvent<FromWorker>) => this.waiting.shift()?.(data));
    worker.addEventListener('error', ({ message }) => {
      // It could not be loaded or broke for good; the next ask starts another.
      const all = this.waiting.splice(0);
      this.end();
      for (const done of all) done({ kind: 'broken', message });
    });
    return worker;
  }
}
