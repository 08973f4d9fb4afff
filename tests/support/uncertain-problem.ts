import fc from 'fast-check';
import type { Lag, Length, Problem, Stage } from '#planner';

/** How the lengths of a random problem vary. */
export interface Variety {
  readonly stages: number;
  readonly until: number;
  /** Medians of uncertain lengths, in minutes. */
  readonly medians: { readonly min: number; readonly max: number };
  /** Names of draws to share; absent: every length has a draw of its own. */
  readonly draws?: readonly string[];
}

/** Small problems with uncertain lags from earlier to later stages of the list, one pair of hands, and no hours. */
export function uncertainProblem(variety: Variety): fc.Arbitrary<Problem> {
  return fc.integer({ min: 2, max: variety.stages }).chain((count) => {
    const ids = Array.from({ length: count }, (_, i) => `s${i}`);
    return fc
      .record({
        stages: fc.tuple(...ids.map((id) => stageOf(id, variety.until))),
        lags: fc.array(lagOf(ids, variety), { minLength: 1, maxLength: count + 1 }),
        until: fc.integer({ min: Math.ceil(variety.until / 2), max: variety.until }),
      })
      .map(({ stages, lags, until }) => ({
        stages,
        lags: lags.map((lag, i) => ({ ...ownDraws(lag, i, variety), id: `n${i}` })),
        holds: [],
        resources: [{ id: 'hands', capacity: 1, busy: [] }],
        calendars: {},
        draws: {},
        from: 0,
        until,
      }));
  });
}

/** Two pours of one draw, an opening that waits for one or both of them, then a stage that one or both close. */
export function layeredProblem(draw: string): fc.Arbitrary<Problem> {
  const soap = (min: number, max: number): fc.Arbitrary<Length> =>
    fc
      .tuple(fc.integer({ min, max }), fc.constantFrom(0.2, 0.3, 0.4))
      .map(([median, sigma]) => ({ kind: 'uncertain', median, sigma, draw }));
  const duration = fc.integer({ min: 0, max: 3 });
  return fc
    .record({
      durations: fc.tuple(duration, duration, duration, duration),
      gap: fc.integer({ min: 0, max: 8 }),
      fixed: fc.boolean(),
      opens: fc.tuple(soap(8, 14), soap(8, 14)),
      closes: fc.tuple(soap(15, 28), soap(15, 28)),
      which: fc.tuple(fc.boolean(), fc.boolean()),
    })
    .map(({ durations, gap, fixed, opens, closes, which }) => {
      const ids = ['first', 'second', 'take out', 'patch'];
      const stages = ids.map((id, i) => ({
        ...{ id, duration: durations[i]!, uses: [] },
        ...(fixed && i === 0 && { fixed: 0 }),
      }));
      const lag = (id: string, from: string, to: string, rest: Partial<Lag>): Lag => ({
        ...{ id, from, to, point: 'end' },
        ...rest,
      });
      const known = (minutes: number): Length => ({ kind: 'known', minutes });
      const lags = [
        lag('soon', 'first', 'second', { atLeast: known(0), atMost: known(gap) }),
        lag('then', 'take out', 'patch', { atLeast: known(0) }),
        lag('opens', 'second', 'take out', { atLeast: opens[1] }),
        ...(which[0] ? [lag('first opens', 'first', 'take out', { atLeast: opens[0] })] : []),
        lag('closes', 'first', 'patch', { atMost: closes[0], until: 'end' }),
        ...(which[1] ? [lag('second closes', 'second', 'patch', { atMost: closes[1], until: 'end' })] : []),
      ];
      return { stages, lags, holds: [], resources: [], calendars: {}, draws: {}, from: 0, until: 80 };
    });
}

function stageOf(id: string, until: number): fc.Arbitrary<Stage> {
  return fc
    .record({
      duration: fc.integer({ min: 0, max: 2 }),
      hands: fc.boolean(),
      earliest: fc.option(fc.integer({ min: 0, max: Math.floor(until / 3) }), { nil: undefined, freq: 4 }),
      latest: fc.option(fc.integer({ min: 1, max: until }), { nil: undefined, freq: 4 }),
    })
    .map(({ duration, hands, earliest, latest }) => ({
      id,
      duration,
      uses: hands ? [{ resource: 'hands', amount: 1 }] : [],
      ...(earliest !== undefined && { earliest }),
      ...(latest !== undefined && { latest }),
    }));
}

function lagOf(ids: readonly string[], { medians, draws }: Variety): fc.Arbitrary<Omit<Lag, 'id'>> {
  const known = fc
    .integer({ min: 0, max: medians.max })
    .map((minutes): Length => ({ kind: 'known', minutes }));
  const uncertain = fc
    .tuple(fc.integer(medians), fc.constantFrom(0.2, 0.3, 0.4), fc.constantFrom(...(draws ?? ['own'])))
    .map(([median, sigma, draw]): Length => ({ kind: 'uncertain', median, sigma, draw }));
  return fc
    .record(
      {
        ends: fc.tuple(fc.nat(ids.length - 1), fc.nat(ids.length - 2)),
        point: fc.constantFrom<'start' | 'end'>('start', 'end'),
        atLeast: fc.oneof({ weight: 3, arbitrary: uncertain }, known),
        atMost: fc.oneof({ weight: 2, arbitrary: uncertain }, known),
        until: fc.constantFrom<'start' | 'end'>('start', 'end'),
      },
      { requiredKeys: ['ends', 'point'] },
    )
    .map(({ ends: [a, b], ...lag }) => {
      const other = b < a ? b : b + 1;
      return { ...lag, from: ids[Math.min(a, other)]!, to: ids[Math.max(a, other)]! };
    });
}

function ownDraws(lag: Omit<Lag, 'id'>, i: number, { draws }: Variety): Omit<Lag, 'id'> {
  if (draws !== undefined) return lag;
  const own = (length: Length, side: string): Length =>
    length.kind === 'known' ? length : { ...length, draw: `${side} ${i}` };
  return {
    ...lag,
    ...(lag.atLeast && { atLeast: own(lag.atLeast, 'opens') }),
    ...(lag.atMost && { atMost: own(lag.atMost, 'closes') }),
  };
}
