import type { Forecast } from '#clocks';
import type { Learned, PieceDesign, Recipe, RunTeachings, WorkshopFacts, Mould } from '#contract';
import { learnedFrom, nothingLearned, type LogLine } from '#runs';
import { normalQuantile, type Random } from '#units';
import { clocksOf } from '../../../libs/runs/clocks/forecast-clocks.js';
import { taughtClocks } from '../../../libs/runs/clocks/taught-clocks.js';
import { resolveRuns, type ResolvedRun } from '../../../libs/runs/input/resolve-run.js';
import { runTeachings } from '../../../libs/runs/learned/run-teachings.js';
import { foldLog } from '../../../libs/runs/log/fold-log.js';
import type { Habit, Look } from './habits.js';
import { oracle, wellOf, type TrueInterval, type Well } from './oracle.js';

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
  /** Slower by such a factor once so many runs are made, as after a move; absent: never. */
  readonly change?: { readonly after: number; readonly times: number };
  /** Every other run is of a second recipe, slower by such a factor; forecasts of the first are judged. Absent: there is none. */
  readonly otherTimes?: number;
}

/** How well a forecast of the next run would do, after so many runs. */
export interface Judged extends Well {
  readonly runs: number;
  /** How well who knows all but the pace would do, from looks at the same times. */
  readonly oracle: Well;
  /** And who must learn how much batches vary as well, where all spreads that makers may have are as likely. */
  readonly oracleOfBoth: Well;
  /** Likely time and width over those of a maker who has logged nothing. */
  readonly moved: number;
  readonly widened: number;
  /** Whether the log has ever told that the soap was not ready: else it says when the maker had time, and nothing of the soap. */
  readonly isTold: boolean;
  /** Minutes by which a plan may ask for it sooner than it was ever done, 0 or less where it does not. */
  readonly tooEarlyMin: number;
}

/** From steadier than any maker of the bench to more careless, evenly in the logarithm. */
const ANY_SIGMA = Array.from({ length: 9 }, (_, i) => 0.06 * 10 ** (i / 8));

const MINUTE_MS = 60_000;
const WEEK_MS = 7 * 24 * 60 * MINUTE_MS;
const FIRST = Date.parse('2026-01-02T19:00:00Z');

/**
 * What the log has taught is worked out anew after each of the first runs and then after every third and tenth, as makers who plan several runs
 * at once have it, and as forecasts move little by then. Each run costs some milliseconds to learn from, and there are many makers.
 */
const isRenewed = (run: number): boolean => run <= 12 || (run <= 30 && run % 3 === 0) || run % 10 === 0;

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
  const { batchSigma, change, otherTimes } = truth;
  const untaught = untaughtForecast(making);
  const untaughtLog = Math.log(untaught.medianMin);
  const levelSigma = Math.hypot(untaught.sharedSigma, untaught.recipeSigma);
  const [ofPace, ofBoth] = [oracle(levelSigma, [batchSigma]), oracle(levelSigma, ANY_SIGMA)];
  const levelOf = (run: number): number =>
    Math.log(truth.pace * (change !== undefined && run >= change.after ? change.times : 1));
  const judged: Judged[] = [];
  let learned = nothingLearned;
  let taught: RunTeachings[] = [];
  let forecast = taughtForecast(making, learned);
  const renew = (): void => {
    if (taught.length === 0) return;
    learned = learnedFrom(taught, learned);
    taught = [];
    forecast = taughtForecast(making, learned);
  };
  let isTold = false;
  let earliest = Infinity;
  const [last = 0] = after.slice(-1);
  for (let i = 0; i <= last; i += 1) {
    const level = levelOf(i);
    if (after.includes(i)) {
      renew();
      const ofForecast = ({ medianMin, sigma }: Forecast): Well =>
        wellOf(Math.log(medianMin) - untaughtLog - level, sigma, batchSigma);
      const [start, now] = [ofForecast(untaught), ofForecast(forecast)];
      const opens = Math.max(forecast.medianMin, forecast.earliestMin ?? 0);
      judged.push({
        ...{ runs: i, ...now, isTold },
        ...{ oracle: ofPace.judge({ level, batchSigma }), oracleOfBoth: ofBoth.judge({ level, batchSigma }) },
        ...{ moved: now.ratio / start.ratio, widened: now.width / start.width },
        tooEarlyMin: isTold ? 0 : Math.max(0, Math.min(earliest, 1e9) - opens),
      });
    }
    const isOther = otherTimes !== undefined && i % 2 === 1;
    const luck = batchSigma * normalQuantile(inside(random.next()));
    const readyMin = untaught.medianMin * Math.exp(level + luck) * (isOther ? otherTimes : 1);
    if (isRenewed(i)) renew();
    const startMs = FIRST + i * WEEK_MS + Math.round(3 * 60 * random.next()) * MINUTE_MS;
    const looks = truth.habit(
      {
        ...{ readyMin, run: i, pouredAtMin: (startMs / MINUTE_MS) % (24 * 60) },
        forecastMin: forecast.medianMin,
      },
      random,
    );
    if (!isOther) {
      const interval = trueInterval(looks, untaughtLog);
      for (const each of [ofPace, ofBoth]) each.see(interval);
    }
    const toLog = looks.filter(({ unwritten }) => unwritten === undefined);
    isTold ||= toLog.some(({ saw }) => saw === 'not-yet');
    for (const { saw, atMin } of toLog) if (saw === 'done') earliest = Math.min(earliest, Math.round(atMin));
    taught.push(
      teachOf(isOther ? underOtherName(making) : making, logOf(making, startMs, forecast.medianMin, toLog)),
    );
  }
  return judged;
}

/** When the soap became ready, as far as the looks tell that were really had. */
function trueInterval(looks: readonly Look[], untaughtLog: number): TrueInterval {
  const at = (look: Look): number => Math.log(look.wasAtMin ?? look.atMin) - untaughtLog;
  const above = Math.max(-Infinity, ...looks.flatMap((look) => (look.saw === 'not-yet' ? [at(look)] : [])));
  const below = Math.min(Infinity, ...looks.flatMap((look) => (look.saw === 'done' ? [at(look)] : [])));
  return { above, below };
}

function logOf(
  { pour, unmould }: Making,
  startMs: number,
  openedMin: number,
  looks: readonly Look[],
): LogLine[] {
  const opened = iso(startMs + Math.round(openedMin) * MINUTE_MS);
  return [
    {
      entry: {
        kind: 'done',
        stage: pour,
        startedAt: iso(startMs - 30 * MINUTE_MS),
        at: iso(startMs),
      },
    },
    ...looks.map(({ saw, atMin }): LogLine => {
      const at = startMs + Math.round(atMin) * MINUTE_MS;
      return saw === 'not-yet'
        ? { entry: { kind: 'not-yet', stage: unmould, at: iso(at), opened } }
        : {
            entry: { kind: 'done', stage: unmould, startedAt: iso(at), at: iso(at + 10 * MINUTE_MS), opened },
          };
    }),
  ];
}

const otherNames = new WeakMap<Making, Making>();

/** The same recipe as a second one, which shares a workshop with it and no more. */
function underOtherName(making: Making): Making {
  const known = otherNames.get(making);
  if (known !== undefined) return known;
  const { recipe, design } = making;
  const key = `${recipe.key}-other`;
  const parts = design.parts.map((part) => (part.kind === 'batch' ? { ...part, recipe: key } : part));
  const other = { ...making, recipe: { ...recipe, key }, design: { ...design, parts } };
  otherNames.set(making, other);
  return other;
}

/** As `teachingsOf`, with clocks that are worked out once for all runs of a making. */
function teachOf(making: Making, log: readonly LogLine[]): RunTeachings {
  const { run, clocks } = resolved(making);
  const { progress, issues } = foldLog(run, log);
  if (issues.length > 0) throw new Error(JSON.stringify(issues));
  return runTeachings({ run, progress, clocks });
}

function untaughtForecast(making: Making): Forecast {
  return firmOf(making, resolved(making).clocks);
}

function taughtForecast(making: Making, learned: Learned): Forecast {
  const { run, clocks } = resolved(making);
  return firmOf(
    making,
    taughtClocks(run, clocks, () => learned),
  );
}

interface ResolvedMaking {
  readonly run: ResolvedRun;
  readonly clocks: ReturnType<typeof clocksOf>;
}

const resolvedOf = new WeakMap<Making, ResolvedMaking>();

function resolved(making: Making): ResolvedMaking {
  const known = resolvedOf.get(making);
  if (known !== undefined) return known;
  const { workshop, recipe, mould, design } = making;
  const [run] = resolveRuns({
    ...{ workshop, recipes: [recipe], fats: [], moulds: [mould], designs: [design], log: [] },
    runs: [
      {
        ...{ key: 'run', title: 'Run', design: design.key, count: 12 },
        ...{ startAfter: '2026-01-02T18:00', certaintyPercent: 95 },
      },
    ],
  });
  if (run === undefined) throw new Error('one run has one resolution');
  const made = { run, clocks: clocksOf(run, workshop) };
  resolvedOf.set(making, made);
  return made;
}

function firmOf({ part }: Making, clocks: ReturnType<typeof clocksOf>): Forecast {
  const found = clocks.get(part)?.get('firm');
  if (found === undefined) throw new Error('no clock');
  return found;
}

const iso = (ms: number): string => new Date(ms).toISOString();
const inside = (u: number): number => Math.min(1 - 1e-9, Math.max(1e-9, u));
