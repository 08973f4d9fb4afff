import { setTimeout as pause } from 'node:timers/promises';
import { atMost, watched, type Figure } from '../../support/figure.js';
import { fillPast } from './copied-runs.js';
import { openWorkshopProgram, type Answer, type WorkshopProgram } from './workshop-program.js';

const WORKSHOPS = [5, 100, 500];
/** Times that each request is asked, after once that is not counted. */
const REPEATS = { plan: 12, 'log entry': 12, amounts: 24, remedies: 4 };
const MOST_GROWTH = 1.5;
const PLAN_INPUT_KB = 60;

type Cost = Readonly<Record<keyof typeof REPEATS, number>> & {
  readonly planInputKb: number;
  readonly firstMs: number;
};

/** What the usual requests cost in workshops that have finished so many runs. */
export async function finishedRuns(folder: string): Promise<Figure[]> {
  const costs: Cost[] = [];
  for (const finished of WORKSHOPS) costs.push(await costOf(folder, finished));
  const first = costs[0]!;
  return costs.flatMap((cost, i) => {
    const of = `${String(WORKSHOPS[i])} finished runs`;
    return [
      ...Object.keys(REPEATS).flatMap((name) => {
        const what = name as keyof typeof REPEATS;
        const figures = [watched(`CPU of ${what}, ${of}`, cost[what], 'ms', 'lower')];
        if (i > 0)
          figures.push(atMost(`… as a multiple of that at 5`, cost[what] / first[what], '×', MOST_GROWTH));
        return figures;
      }),
      watched(`first request, what each taught not yet worked out, ${of}`, cost.firstMs, 'ms', 'lower'),
      atMost(`plan-input, ${of}`, cost.planInputKb, 'kB', PLAN_INPUT_KB),
    ];
  });
}

async function costOf(folder: string, finished: number): Promise<Cost> {
  const program = await openWorkshopProgram(folder);
  try {
    await fillPast(program.databaseUrl, finished);
    const run = await plannedRun(program);
    const { text: planInput, ms: firstMs } = await program.call('GET', `runs/${run}/plan-input`);
    const amounts = await meanCpu(program, REPEATS.amounts, () =>
      asked(program, 'GET', `runs/${run}/amounts`),
    );
    const plan = await meanCpu(program, REPEATS.plan, () => asked(program, 'POST', `runs/${run}/plan`, {}));
    const remedies = await meanCpu(program, REPEATS.remedies, () =>
      asked(program, 'GET', `runs/${run}/remedies`),
    );
    const log = await meanCpu(program, REPEATS['log entry'], logger(program, run));
    return { amounts, plan, remedies, 'log entry': log, planInputKb: planInput.length / 1000, firstMs };
  } finally {
    await program.close();
  }
}

/** The id of the demo run that is planned and not begun. */
export async function plannedRun(program: WorkshopProgram, key = 'harbour-market'): Promise<string> {
  const runs = JSON.parse(await asked(program, 'GET', 'runs')) as { id: string; key: string }[];
  const run = runs.find((each) => each.key === key);
  if (run === undefined) throw new Error(`the demo has no run ${key}`);
  return run.id;
}

/** Logs that the shells are pressed, and takes it back the next time: entries that a run not begun can have for ever. */
export function logger(program: WorkshopProgram, run: string): () => Promise<Answer> {
  let entry: string | undefined;
  return async () => {
    const at = new Date().toISOString();
    const body =
      entry === undefined ? { kind: 'done', stage: 'press-shells', at } : { kind: 'take-back', entry, at };
    const answer = await program.call('POST', `runs/${run}/log`, body);
    if (answer.status !== 201) throw new Error(`${String(answer.status)} ${answer.text.slice(0, 500)}`);
    entry = entry === undefined ? (JSON.parse(answer.text) as { entry: { id: string } }).entry.id : undefined;
    return answer;
  };
}

async function asked(
  program: WorkshopProgram,
  method: string,
  path: string,
  body?: unknown,
): Promise<string> {
  const { status, text } = await program.call(method, path, body);
  if (status >= 300) throw new Error(`${method} ${path}: ${String(status)} ${text.slice(0, 500)}`);
  return text;
}

async function meanCpu(
  program: WorkshopProgram,
  times: number,
  ask: () => Promise<unknown>,
): Promise<number> {
  await ask();
  await ask();
  await pause(200);
  const before = program.cpuMs();
  for (let k = 0; k < times; k++) await ask();
  return (program.cpuMs() - before) / times;
}
