import fc from 'fast-check';
import {
  checkProblem,
  lengthAt,
  windows,
  type Interval,
  type Lag,
  type Length,
  type Problem,
  type Schedule,
} from '#planner';

const STAGES = 5;
const UNTIL = 100;
/** What the plans' lengths are drawn by. */
export const DRAWS = ['one', 'two', 'three'];

/** Bounds that leave a plan so many minutes: last starts, and lags of which some vary. */
interface Spare {
  readonly latest: readonly ({ readonly minutes: number; readonly isDue: boolean } | undefined)[];
  readonly atMost: readonly {
    readonly ends: readonly [number, number];
    readonly point: 'start' | 'end';
    readonly until: 'start' | 'end';
    readonly minutes: number;
    readonly sigma: number;
    readonly draw: string | undefined;
    readonly isPreference: boolean;
  }[];
  /** By opening: so many minutes to spare until it would rather be closed, in the same lag. */
  readonly wished: readonly (number | undefined)[];
  /** What nobody does, and the day asked for it, so many minutes after it is expected. */
  readonly lot:
    | {
        readonly after: readonly {
          readonly stage: number;
          readonly point: 'start' | 'end';
          readonly length: Length;
        }[];
        readonly minutes: number | undefined;
      }
    | undefined;
}

/** Five stages one after the other, as early as can be, with little time to spare for some. */
export const anyPlan = fc.noBias(
  fc.record({
    durations: several(fc.integer({ min: 1, max: 3 })),
    inHours: several(fc.boolean()),
    isReversed: fc.boolean(),
    promised: several(oneIn(12, fc.integer({ min: 0, max: 40 }))),
    marks: fc.uniqueArray(fc.integer({ min: 0, max: UNTIL }), { minLength: 6, maxLength: 12 }),
    opens: fc.array(fc.record({ ends: ends(1, 2, 2), point: point(), length: anyLength() }), {
      minLength: 3,
      maxLength: 6,
    }),
    spare: fc.record({
      latest: several(oneIn(3, fc.record({ minutes: fc.nat(12), isDue: fc.boolean() }))),
      atMost: fc.array(
        fc.record({
          ends: ends(1, 1, 2),
          point: point(),
          until: point(),
          minutes: fc.nat(4),
          sigma: fc.constantFrom(0.1, 0.3),
          draw: fc.constantFrom(undefined, undefined, ...DRAWS),
          isPreference: fc.boolean(),
        }),
        { minLength: 1, maxLength: 4 },
      ),
      wished: fc.array(oneIn(2, fc.nat(3)), { minLength: 6, maxLength: 6 }),
      lot: oneIn(
        2,
        fc.record({
          after: fc.array(fc.record({ stage: fc.nat(STAGES - 1), point: point(), length: anyLength() }), {
            minLength: 1,
            maxLength: 3,
          }),
          minutes: fc.option(fc.nat(6), { nil: undefined }),
        }),
      ),
    }),
  }),
);

function several<T>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T[]> {
  return fc.array(arbitrary, { minLength: STAGES, maxLength: STAGES });
}

/** Undefined but for one of so many. */
function oneIn<T>(many: number, arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T | undefined> {
  return fc.oneof({ weight: 1, arbitrary }, { weight: many - 1, arbitrary: fc.constant(undefined) });
}

/** Two stages of which the one comes as many places after the other. */
function ends(...places: number[]): fc.Arbitrary<[number, number]> {
  return fc
    .tuple(fc.nat(STAGES - 2), fc.constantFrom(...places))
    .map(([a, on]) => [a, Math.min(a + on, STAGES - 1)]);
}

function point(): fc.Arbitrary<'start' | 'end'> {
  return fc.constantFrom('start', 'end');
}

function anyLength(): fc.Arbitrary<Length> {
  const varied = fc
    .tuple(fc.integer({ min: 4, max: 15 }), fc.constantFrom(0.2, 0.4), fc.constantFrom(...DRAWS))
    .map(([minutes, sigma, draw]) => uncertain(minutes, sigma, draw));
  return fc.oneof({ weight: 3, arbitrary: varied }, fc.nat(6).map(known));
}

/** A little more than whole minutes: which way a median of exactly that many is rounded is a matter of noise. */
function uncertain(minutes: number, sigma: number, draw: string): Length {
  return { kind: 'uncertain', median: minutes + 0.3, sigma, draw };
}

export function known(minutes: number): Length {
  return { kind: 'known', minutes };
}

/** @returns undefined where there is no plan even with time to spare */
export function planOf({
  durations,
  inHours,
  isReversed,
  promised,
  marks,
  opens,
  spare,
}: typeof anyPlan extends fc.Arbitrary<infer T> ? T : never): { p: Problem; s: Schedule } | undefined {
  const sorted = [...marks].sort((a, b) => a - b);
  const hours = sorted.flatMap((to, i): Interval[] => (i % 2 === 1 ? [{ from: sorted[i - 1]!, to }] : []));
  const loose: Problem = {
    stages: durations.map((duration, i) => ({
      ...{ id: `s${i}`, duration, uses: [] },
      ...(inHours[i] && { calendar: 'hours' }),
      ...(promised[i] !== undefined && { fixed: promised[i] }),
    })),
    lags: opens.map(({ ends: [a, b], point, length }, i) => ({
      ...{ id: `o${i}`, from: `s${a}`, to: `s${b}`, point },
      atLeast: length,
    })),
    ...{ holds: [], resources: [], calendars: { hours }, draws: {}, from: 0, until: UNTIL },
  };
  const precedences = loose.stages.slice(1).map(({ id }, i) => ({
    ...{ before: `s${i}`, after: id, resource: 'hands' },
  }));
  const outcome = checkProblem(loose).length > 0 ? undefined : windows(loose, 0.5, precedences);
  if (outcome?.status !== 'windows') return undefined;
  const starts = new Map([...outcome.windows].map(([id, { earliest }]) => [id, earliest]));
  const isInTurn = new Set(starts.values()).size === STAGES;
  const p = tightened(loose, starts, spare);
  const isValid = checkProblem(p).length === 0 && isInTurn;
  // The order in which they are listed is no matter.
  const listed = isReversed ? { ...p, stages: p.stages.toReversed() } : p;
  return isValid ? { p: listed, s: { starts, precedences, certainty: 0.5 } } : undefined;
}

function tightened(p: Problem, starts: Map<string, number>, { latest, atMost, wished, lot }: Spare): Problem {
  const at = (i: number, end: 'start' | 'end'): number =>
    starts.get(`s${i}`)! + (end === 'end' ? p.stages[i]!.duration : 0);
  const closing = atMost.flatMap(
    ({ ends: [a, b], point, until, minutes, sigma, draw, isPreference }, i): Lag[] => {
      const passed = at(b, until) - at(a, point) + minutes;
      if (passed <= 0) return [];
      const length = draw === undefined ? known(passed) : uncertain(passed, sigma, draw);
      const lag = { id: `c${i}`, from: `s${a}`, to: `s${b}`, point, until, atMost: length };
      return [isPreference ? { ...lag, isPreference } : lag];
    },
  );
  const stages = p.stages.map((stage, i) => {
    const spare = latest[i];
    return stage.fixed === undefined && spare !== undefined
      ? { ...stage, latest: at(i, 'start') + spare.minutes, isDue: spare.isDue || undefined }
      : stage;
  });
  const opening = p.lags.map((lag, i): Lag => {
    const minutes = wished[i];
    const passed = starts.get(lag.to)! - at(Number(lag.from.slice(1)), lag.point);
    if (minutes === undefined || passed <= 0) return lag;
    return { ...lag, atMost: known(passed + minutes), isPreference: true };
  });
  if (lot === undefined) return { ...p, stages, lags: [...opening, ...closing] };
  const cure = lot.after.map(({ stage, point, length }, i): Lag => ({
    ...{ id: `l${i}`, from: `s${stage}`, to: 'lot', point },
    atLeast: length,
  }));
  const ends = lot.after.map(
    ({ stage, point, length }) => at(stage, point) + lengthAt(length, 0.5, 'at-least', {}),
  );
  const expected = Math.max(...ends);
  starts.set('lot', expected);
  const due = lot.minutes === undefined ? {} : { latest: expected + lot.minutes, isDue: true as const };
  return {
    ...p,
    stages: [...stages, { id: 'lot', duration: 0, uses: [], ...due }],
    lags: [...opening, ...closing, ...cure],
  };
}
