import type { RunFile } from '#contract';
import { setTimeout as pause } from 'node:timers/promises';
import { atMost, watched, type Figure } from '../../support/figure.js';
import { loadRunFile } from '../../support/run-files.js';
import { fillPast } from './copied-runs.js';
import { logger, plannedRun } from './finished-runs.js';
import { openWorkshopProgram, type Answer, type WorkshopProgram } from './workshop-program.js';

const FINISHED = 500;
const AT_ONCE = 8;
const PREVIEW_RUNS = 50;
const LOG_ENTRIES = 40;
const HEALTH_EVERY_MS = 20;
const HEALTH_P99_MS = 100;
const LOCK_P99_MS = 50;
const STOP_MS = 10_000;
/** Requests that are still under way after so long are as good as lost to whoever asked. */
const GIVE_UP_MS = 180_000;

/** How the program fares while eight remedies, eight latest starts and a preview of fifty runs are asked at once. */
export async function underLoad(folder: string): Promise<Figure[]> {
  const program = await openWorkshopProgram(folder);
  try {
    await fillPast(program.databaseUrl, FINISHED);
    const run = await plannedRun(program);
    const first = await firstUse(program, run);
    const before = locksHeld(program).length;
    const health: number[] = [];
    const watching = watchHealth(program, health);
    const heavy = ask(program, run);
    const logged = await logMeanwhile(program, run);
    const answers = await heavy;
    watching.stop();
    await watching.ended;
    const shed = answers.filter(({ status }) => status === 503).length;
    const wrong = answers.filter(({ status }) => status >= 300 && status !== 503);
    if (wrong[0] !== undefined) throw new Error(`${String(wrong[0].status)} ${wrong[0].text.slice(0, 300)}`);
    const locks = locksHeld(program).slice(before);
    const stopMs = await stoppedInTheMiddle(program, run);
    return [
      ...first,
      atMost('health under load, p99', quantile(health, 0.99), 'ms', HEALTH_P99_MS),
      watched('health under load, longest', Math.max(...health), 'ms', 'lower'),
      watched('health asked under load', health.length, 'times', 'higher'),
      watched(
        'log entry under load, median',
        quantile(
          logged.map(({ ms }) => ms),
          0.5,
        ),
        'ms',
        'lower',
      ),
      watched('log entry under load, longest', Math.max(...logged.map(({ ms }) => ms)), 'ms', 'lower'),
      atMost('log entries refused under load', logged.filter(({ status }) => status !== 201).length, '', 0),
      watched('heavy requests told to come again', shed, `of ${String(answers.length)}`, 'lower'),
      watched('longest heavy request', Math.max(...answers.map(({ ms }) => ms)), 'ms', 'lower'),
      ...(locks.length === 0
        ? []
        : [
            atMost('lock of the workshop held, p99', quantile(locks, 0.99), 'ms', LOCK_P99_MS),
            watched('lock of the workshop held, times', locks.length, '', 'higher'),
          ]),
      atMost('SIGTERM in the middle of them, until ended', stopMs, 'ms', STOP_MS),
    ];
  } finally {
    await program.close();
  }
}

function ask(program: WorkshopProgram, run: string): Promise<Answer[]> {
  const [order] = loadRunFile('demo', 'rockpool-tiles').runs;
  const orders = Array.from({ length: AT_ONCE }, (_, i) => ({
    order: { ...order, key: `asked-${String(i)}`, count: 12 + i },
    odds: 0.4,
  }));
  const requests = [
    program.call('POST', 'plan-preview', manyRuns(PREVIEW_RUNS)),
    ...orders.map((body) => program.call('POST', 'latest-start', body)),
    ...orders.map(() => program.call('GET', `runs/${run}/remedies`)),
  ];
  const late = pause(GIVE_UP_MS, undefined, { ref: false }).then((): Answer => {
    return { status: 599, text: 'no answer', ms: GIVE_UP_MS };
  });
  return Promise.all(requests.map((request) => Promise.race([request, late])));
}

/** The demo's order so many times over, as one run file. */
function manyRuns(count: number): Omit<RunFile, 'earlier'> {
  const { runs, earlier: _past, ...file } = loadRunFile('demo', 'rockpool-tiles');
  const [first] = runs;
  if (first === undefined) throw new Error('the demo has no run');
  const { readyBy: _day, ...order } = first;
  return {
    ...file,
    runs: Array.from({ length: count }, (_, i) => ({
      ...order,
      key: `run-${String(i)}`,
      title: `Run ${String(i)}`,
    })),
  };
}

/** The first request, by which what the copied runs teach is worked out, as after an update of the rules. */
async function firstUse(program: WorkshopProgram, run: string): Promise<Figure[]> {
  const health: number[] = [];
  const watching = watchHealth(program, health);
  const { ms } = await program.call('GET', `runs/${run}/plan-input`);
  watching.stop();
  await watching.ended;
  const locks = locksHeld(program);
  return [
    watched(`first request, ${String(FINISHED)} runs not yet known to teach`, ms, 'ms', 'lower'),
    watched('… health meanwhile, p99', quantile(health, 0.99), 'ms', 'lower'),
    ...(locks.length === 0 ? [] : [watched('… lock held, longest', Math.max(...locks), 'ms', 'lower')]),
  ];
}

async function logMeanwhile(program: WorkshopProgram, run: string): Promise<Answer[]> {
  const answers: Answer[] = [];
  const log = logger(program, run);
  for (let k = 0; k < LOG_ENTRIES; k++) answers.push(await log());
  return answers;
}

function watchHealth(program: WorkshopProgram, times: number[]): { stop(): void; ended: Promise<void> } {
  let watching = true;
  const ended = (async () => {
    while (watching) {
      const { ms } = await program.call('GET', 'health');
      times.push(ms);
      await pause(HEALTH_EVERY_MS);
    }
  })();
  return { stop: () => (watching = false), ended };
}

async function stoppedInTheMiddle(program: WorkshopProgram, run: string): Promise<number> {
  ask(program, run).catch(() => undefined);
  await pause(1500);
  const begun = performance.now();
  program.child.kill('SIGTERM');
  await Promise.race([
    new Promise((done) => program.child.once('close', done)),
    pause(6 * STOP_MS, undefined, { ref: false }),
  ]);
  return performance.now() - begun;
}

/** How long the workshop was held for each change, in milliseconds; a program that does not say so has none. */
function locksHeld(program: WorkshopProgram): number[] {
  return [...program.printed().matchAll(/A workshop was held milliseconds=([\d.]+)/g)].map(([, ms]) =>
    Number(ms),
  );
}

function quantile(values: readonly number[], q: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? NaN;
}
