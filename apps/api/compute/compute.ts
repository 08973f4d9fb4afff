import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { Piscina } from 'piscina';
import { ApiProblem } from '../problems/api-problem.js';
import { FairQueue } from './fair-queue.js';
import { SEARCH, urgencyOf, usualLimits, type ComputeLimits, type Urgency } from './limits.js';
import { tasks, type TaskAnswer, type TaskInput, type TaskName } from './tasks.js';

/** For whom something is computed. */
export interface Asker {
  readonly workshopId: string;
  /** Aborted when the answer is not wanted any more. */
  readonly leaving?: AbortSignal | undefined;
}

/** What takes time is computed here, beside the event loop. */
export interface Compute {
  /**
   * @throws ApiProblem 503 when too much waits already (`busy`), the time for the task is over (`took-too-long`) or its
   * thread ran out of memory (`took-too-much-memory`); what the task itself finds wrong is its answer
   */
  run<Name extends TaskName>(name: Name, input: TaskInput<Name>, asker: Asker): Promise<TaskAnswer<Name>>;
  /** Ends what runs, and refuses what waits. */
  close(): Promise<void>;
}

interface Task {
  readonly name: TaskName;
  readonly input: unknown;
  readonly urgency: Urgency;
  readonly leaving: AbortSignal | undefined;
  readonly settle: (answer: Promise<unknown>) => void;
}

/** Seconds after which it is worth asking again. */
const WHEN_BUSY_S = 5;
const WHEN_TOO_LONG_S = 60;
/** Below the event loop and the database, so that these answer while every thread is at work. */
const NICE = 5;
/** A thread that had nothing to do for so long is given back; one stays. */
const IDLE_MS = 5 * 60_000;

/** Of the time of a task: what a search may take of it, before odds and reasons are worked out. */
const SEARCH_SHARE = 0.5;

/** In this very thread, for a start that serves nobody yet. */
export const computeHere: Compute = {
  run: async (name, input) => tasks[name](input as never) as TaskAnswer<typeof name>,
  close: async () => undefined,
};

export interface ComputeOptions extends Partial<ComputeLimits> {
  /** File of the compiled `worker.ts`; the one beside this file if not given. */
  readonly worker?: string;
}

/**
 * Opens a pool of threads. Tasks are handed to it one for each free thread; what waits, waits here, where workshops
 * take turns and the urgent goes first. The last free thread is kept for what is urgent.
 */
export function openCompute({ worker = ownWorker(), ...given }: ComputeOptions = {}): Compute {
  const limits = { threads: availableParallelism(), ...usualLimits, ...given };
  const threads = Math.max(2, limits.threads);
  const pool = new Piscina<unknown, unknown>({
    filename: worker,
    minThreads: 1,
    maxThreads: threads,
    idleTimeout: IDLE_MS,
    niceIncrement: NICE,
    recordTiming: false,
    workerHistogram: false,
    resourceLimits: { maxOldGenerationSizeMb: limits.memoryMb },
  });
  // A thread that ends by itself is replaced; whose task it had is told by that task's own promise.
  pool.on('error', () => undefined);
  const queue = new FairQueue<Task>();
  const closing = new AbortController();
  let running = 0;
  let searching = 0;

  const start = (task: Task): void => {
    const search = task.urgency >= SEARCH ? 1 : 0;
    running += 1;
    searching += search;
    task.settle(
      onThread(pool, task, limits, closing.signal).finally(() => {
        running -= 1;
        searching -= search;
        startNext();
      }),
    );
  };
  const startNext = (): void => {
    while (running < threads) {
      const next = queue.next(searching < threads - 1 ? undefined : SEARCH - 1);
      if (next === undefined) return;
      start(next);
    }
  };

  return {
    run: <Name extends TaskName>(name: Name, input: TaskInput<Name>, { workshopId, leaving }: Asker) =>
      new Promise<TaskAnswer<Name>>((resolve, reject) => {
        const urgency = urgencyOf[name];
        if (closing.signal.aborted) throw stopping();
        if (leaving?.aborted === true) throw left();
        if (queue.size() >= limits.waiting || queue.size(workshopId, urgency) >= limits.waitingOfOne)
          throw busy(name);
        const onLeave = (): void => {
          if (queue.remove(task)) reject(left());
        };
        const settle = (answer: Promise<unknown>): void => {
          leaving?.removeEventListener('abort', onLeave);
          resolve(answer as Promise<TaskAnswer<Name>>);
        };
        const task: Task = { name, input, urgency, leaving, settle };
        leaving?.addEventListener('abort', onLeave, { once: true });
        queue.push(task, workshopId, urgency);
        startNext();
      }),
    async close() {
      closing.abort();
      for (let task = queue.next(); task !== undefined; task = queue.next())
        task.settle(Promise.reject(stopping()));
      await pool.destroy();
    },
  };
}

async function onThread(
  pool: Piscina<unknown, unknown>,
  { name, input, leaving }: Task,
  { planS, searchS, memoryMb }: ComputeLimits,
  closing: AbortSignal,
): Promise<unknown> {
  const seconds = urgencyOf[name] === 0 ? planS : searchS;
  const late = AbortSignal.timeout(seconds * 1000);
  const signal = AbortSignal.any([late, closing, ...(leaving === undefined ? [] : [leaving])]);
  try {
    const withinMs = seconds * 1000 * SEARCH_SHARE;
    return await pool.run({ name, input, withinMs }, { signal });
  } catch (error) {
    if (closing.aborted) throw stopping();
    if (leaving?.aborted === true) throw left();
    if (late.aborted) throw tookTooLong(name, seconds);
    if (isOutOfMemory(error)) throw tooMuchMemory(name, memoryMb);
    throw error;
  }
}

function isOutOfMemory(error: unknown): boolean {
  return error instanceof Error && 'code' in error && error.code === 'ERR_WORKER_OUT_OF_MEMORY';
}

function busy(name: TaskName): ApiProblem {
  return new ApiProblem(503, 'busy', { says: 'task-not-begun', task: name }, {}, WHEN_BUSY_S);
}

function tookTooLong(name: TaskName, seconds: number): ApiProblem {
  const limit = { task: name, seconds };
  const told = { says: 'task-took-too-long', ...limit } as const;
  return new ApiProblem(503, 'took-too-long', told, { limit }, WHEN_TOO_LONG_S);
}

function tooMuchMemory(name: TaskName, megabytes: number): ApiProblem {
  const limit = { task: name, megabytes };
  const told = { says: 'task-took-too-much-memory', ...limit } as const;
  return new ApiProblem(503, 'took-too-much-memory', told, { limit }, WHEN_TOO_LONG_S);
}

function stopping(): ApiProblem {
  return new ApiProblem(503, 'stopping', { says: 'stopping' });
}

/** Nobody reads it; nginx logs the same number for the same thing. */
function left(): ApiProblem {
  return new ApiProblem(499, 'client-left', { says: 'client-left' });
}

function ownWorker(): string {
  const file = fileURLToPath(new URL('worker.js', import.meta.url));
  if (!existsSync(file)) throw new Error(`${file} is missing: the program has not been built.`);
  return file;
}
