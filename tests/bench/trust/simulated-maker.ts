import type { Forecast } from '#clocks';
import type { PieceDesign, Recipe, RunTeachings, WorkshopFacts, Mould } from '#contract';
import { learnedFrom, nothingLearned, teachingsOf, type LogLine, type PastRun } from '#runs';
import { normalCdf, normalQuantile, type Random } from '#units';
import { clocksOf } from '../../../libs/runs/clocks/forecast-clocks.js';
import { taughtClocks } from '../../../libs/runs/clocks/taught-clocks.js';
import { resolveRuns } from '../../../libs/runs/input/resolve-run.js';
import type { Habit } from './habits.js';

/** What a maker makes again and again: one part from a mould. */
export interface Making {
  readonly workshop: WorkshopFacts;
  readonly recipe: Recipe;
  readonly mould: Mould;
  readonly design: PieceDesign;
  /** Stages of the design. */
  readonly pour: string;
  readonly unmould: string;
  readonly part: string;
}

/** How it really goes at this maker's. */
export interface Truth {
  /** True median over that of a workshop like any other. */
  readonly pace: number;
  /** Standard deviation of the logarithm from batch to batch. */
  readonly batchSigma: number;
  readonly habit: Habit;
}

/** How well a forecast of the next run would do, after so many runs. */
export interface Judged {
  readonly runs: number;
  /** Probability that the next batch is ready within the band of 80 %. */
  readonly coverage: number;
  /** Likely time over the true median. */
  readonly ratio: number;
  /** High over low end of the band. */
  readonly width: number;
  /** Likely time and width over those of a maker who has logged nothing. */
  readonly moved: number;
  readonly widened: number;
  /** Whether the log has ever told that the soap was not ready: else it says when the maker had time, and nothing of the soap. */
  readonly isTold: boolean;
  /** Minutes by which a plan may ask for it sooner than it was ever done, 0 or less where it does not. */
  readonly tooEarlyMin: number;
}

const MINUTE_MS = 60_000;
const WEEK_MS = 7 * 24 * 60 * MINUTE_MS;
const FIRST = Date.parse('2026-01-02T19:00:00Z');
const Z90 = normalQuantile(0.9);

/**
 * Lets a maker make runs, log them by habit, and be forecast by what the log has taught, as programs do it.
 * @param after numbers of runs after which to judge, rising
 */
export function simulateMaker(
  making: Making,
  truth: Truth,
  after: readonly number[],
  random: Random,
): Judged[] {
  const untaught = untaughtForecast(making);
  const trueMedian = untaught.medianMin * truth.pace;
  const judged: Judged[] = [];
  let learned = nothingLearned;
  let isTold = false;
  let earliest = Infinity;
  const [last = 0] = after.slice(-1);
  for (let i = 0; i <= last; i += 1) {
    const forecast = taughtForecast(making, learned);
    if (after.includes(i)) {
      const start = judge(untaught, trueMedian, truth.batchSigma);
      const now = judge(forecast, trueMedian, truth.batchSigma);
      const opens = Math.max(forecast.medianMin, forecast.earliestMin ?? 0);
      judged.push({
        ...{ runs: i, ...now, isTold },
        ...{ moved: now.ratio / start.ratio, widened: now.width / start.width },
        tooEarlyMin: isTold ? 0 : Math.max(0, Math.min(earliest, 1e9) - opens),
      });
    }
    const readyMin = trueMedian * Math.exp(truth.batchSigma * normalQuantile(inside(random.next())));
    const startMs = FIRST + i * WEEK_MS + Math.round(3 * 60 * random.next()) * MINUTE_MS;
    const pouredAtMin = (startMs / MINUTE_MS) % (24 * 60);
    const looks = truth.habit({ readyMin, forecastMin: forecast.medianMin, pouredAtMin }, random);
    isTold ||= looks.some(({ saw }) => saw === 'not-yet');
    for (const { saw, atMin } of looks) if (saw === 'done') earliest = Math.min(earliest, Math.round(atMin));
    const log: LogLine[] = [
      {
        entry: {
          kind: 'done',
          stage: making.pour,
          startedAt: iso(startMs - 30 * MINUTE_MS),
          at: iso(startMs),
        },
      },
      ...looks.map(({ saw, atMin }): LogLine => {
        const at = startMs + Math.round(atMin) * MINUTE_MS;
        return saw === 'not-yet'
          ? { entry: { kind: 'not-yet', stage: making.unmould, at: iso(at) } }
          : {
              entry: {
                kind: 'done',
                stage: making.unmould,
                startedAt: iso(at),
                at: iso(at + 10 * MINUTE_MS),
              },
            };
      }),
    ];
    learned = learnedFrom([teachOf(making, i, log)], learned);
  }
  return judged;
}

function judge(
  forecast: Forecast,
  trueMedian: number,
  sigma: number,
): Pick<Judged, 'coverage' | 'ratio' | 'width'> {
  const shift = Math.log(forecast.medianMin / trueMedian);
  const half = Z90 * forecast.sigma;
  return {
    coverage: normalCdf((shift + half) / sigma) - normalCdf((shift - half) / sigma),
    ratio: Math.exp(shift),
    width: Math.exp(2 * half),
  };
}

function teachOf(making: Making, i: number, log: readonly LogLine[]): RunTeachings {
  const { teachings, issues } = teachingsOf({ ...pastRun(making, i), log }, making.workshop);
  if (issues.length > 0) throw new Error(JSON.stringify(issues));
  return teachings;
}

function pastRun({ recipe, mould, design }: Making, i: number): PastRun {
  return {
    order: {
      key: `run-${String(i)}`,
      title: 'Run',
      design: design.key,
      count: 12,
      startAfter: '2026-01-02T18:00',
      certaintyPercent: 95,
    },
    design,
    recipes: [recipe],
    fats: [],
    moulds: [mould],
    log: [],
  };
}

function untaughtForecast(making: Making): Forecast {
  return firmOf(making, clocksOf(resolved(making), making.workshop));
}

function taughtForecast(making: Making, learned: typeof nothingLearned): Forecast {
  const run = resolved(making);
  return firmOf(
    making,
    taughtClocks(run, clocksOf(run, making.workshop), () => learned),
  );
}

const resolvedOf = new WeakMap<Making, ReturnType<typeof resolveRuns>[number]>();

function resolved(making: Making): ReturnType<typeof resolveRuns>[number] {
  let run = resolvedOf.get(making);
  if (run === undefined) {
    const { order, design, recipes, fats, moulds } = pastRun(making, 0);
    const input = {
      workshop: making.workshop,
      recipes,
      fats,
      moulds,
      designs: [design],
      runs: [order],
      log: [],
    };
    [run] = resolveRuns(input);
    if (run === undefined) throw new Error('one run has one resolution');
    resolvedOf.set(making, run);
  }
  return run;
}

function firmOf({ part }: Making, clocks: ReturnType<typeof clocksOf>): Forecast {
  const found = clocks.get(part)?.get('firm');
  if (found === undefined) throw new Error('no clock');
  return found;
}

const iso = (ms: number): string => new Date(ms).toISOString();
const inside = (u: number): number => Math.min(1 - 1e-9, Math.max(1e-9, u));
