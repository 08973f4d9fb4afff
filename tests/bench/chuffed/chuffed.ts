import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import type { Project } from '../../support/project.js';
import type { Answer, Request } from './minizinc-worker.js';

const { resolve } = createRequire(import.meta.url);
const model = readFileSync(new URL('../../../../tests/bench/chuffed/project.mzn', import.meta.url), 'utf8');

/**
 * Free search alternates between the annotation of the model and activities. On rcpsp-max.json it finishes as many
 * projects as the annotation alone and the slow ones sooner, on j60 one more; without the annotation, or flattened
 * with -O0, both are slower, and -O2 takes seconds to flatten.
 */
export const FREE = ['-f'];

/** Trying the values of the best schedule first as well: on j60 shorter schedules, on rcpsp-max.json no difference. */
export const FREE_AROUND_THE_BEST = ['-f', '--sbps'];

export interface ChuffedResult {
  /** As in ProjectResult. */
  readonly status: 'optimal' | 'feasible' | 'infeasible' | 'undecided';
  /** Of the best schedule, if there is one. */
  readonly starts?: readonly number[];
  readonly makespan?: number;
  /** From the question to the end of the answer; the program has been loaded before. */
  readonly ms: number;
  /** Of these, searching: without flattening the model or setting up the solver. */
  readonly searchMs: number;
}

/**
 * The constraint solver Chuffed in MiniZinc's WebAssembly build (npm `minizinc`, MPL-2.0, unchanged and only for this
 * bench), on one thread.
 */
export class Chuffed {
  private constructor(private readonly warm: Worker) {}

  /**
   * Solves `projects` to warm up. The worker of the first stays, since threads of a process share compiled WebAssembly
   * for as long as one of them has it.
   */
  static async warmedUpOn(projects: readonly Project[]): Promise<Chuffed> {
    const chuffed = new Chuffed(await load());
    for (const project of projects) await chuffed.solve(project, { seconds: 2, flags: FREE });
    return chuffed;
  }

  /** Each project gets an instance of the program of its own, as in the package's own `solve`: it leaves state behind. */
  async solve(
    project: Project,
    { seconds, flags }: { seconds: number; flags: readonly string[] },
  ): Promise<ChuffedResult> {
    const worker = await load();
    try {
      return await ask(worker, {
        jsonStream: true,
        files: { 'project.mzn': model, 'data.json': JSON.stringify(dataOf(project)) },
        args: [
          ...[
            '--solver',
            'org.minizinc.chuffed',
            '--time-limit',
            String(1000 * seconds),
            '-r',
            '1',
            ...flags,
          ],
          ...['-i', '-s', '--output-mode', 'json', 'project.mzn', 'data.json'],
        ],
      });
    } finally {
      await worker.terminate();
    }
  }

  async close(): Promise<void> {
    await this.warm.terminate();
  }
}

async function load(): Promise<Worker> {
  const worker = new Worker(new URL('./minizinc-worker.js', import.meta.url));
  const places = { wasmURL: resolve('minizinc/minizinc.wasm'), dataURL: resolve('minizinc/minizinc.data') };
  worker.postMessage(places satisfies Request);
  await once(worker, 'message');
  return worker;
}

function ask(worker: Worker, request: Request): Promise<ChuffedResult> {
  const begun = performance.now();
  let starts: readonly number[] | undefined;
  let word: string | undefined;
  let searchMs = 0;
  return new Promise((done, fail) => {
    worker.once('error', fail);
    worker.on('message', (answer: Answer) => {
      if (answer.type === 'solution') starts = answer.output.json.start;
      if (answer.type === 'statistics')
        searchMs = 1000 * Number(answer.statistics.solveTime ?? searchMs / 1000);
      if (answer.type === 'status') word = answer.status;
      if (answer.type === 'error') fail(new Error(`${answer.what}: ${answer.message}`));
      if (answer.type !== 'exit') return;
      if (answer.code !== 0) fail(new Error(`MiniZinc ended with ${answer.code}`));
      const times = { ms: performance.now() - begun, searchMs };
      if (starts) {
        const status = word === 'OPTIMAL_SOLUTION' ? 'optimal' : 'feasible';
        done({ status, starts, makespan: starts.at(-1)!, ...times });
      } else {
        done({ status: word === 'UNSATISFIABLE' ? 'infeasible' : 'undecided', ...times });
      }
    });
    worker.postMessage(request);
  });
}

function dataOf({ dur, cap, req, lags }: Project): object {
  const longest = [...dur];
  for (const [i, , w] of lags) longest[i] = Math.max(longest[i]!, w);
  return {
    activities: dur.length,
    resources: cap.length,
    horizon: longest.reduce((sum, d) => sum + d, 0),
    ...{ dur, cap, req },
    from: lags.map(([i]) => i + 1),
    to: lags.map(([, j]) => j + 1),
    least: lags.map(([, , w]) => w),
  };
}
