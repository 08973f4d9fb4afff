import fc from 'fast-check';
import type { Hold, Interval, Lag, Length, Problem, Resource, Stage } from '#planner';

/** How large and how rich the random problems are. */
export interface Shape {
  readonly stages: number;
  readonly until: number;
  readonly calendars: boolean;
  readonly resources: boolean;
  /** Few stages have bounds of their own or are fixed; absent: most have and are. */
  readonly free?: boolean;
}

/** Small problems with known lags of both signs, made so that both feasible and infeasible ones are common. */
export function randomProblem(shape: Shape): fc.Arbitrary<Problem> {
  return fc.integer({ min: 1, max: shape.stages }).chain((count) => {
    const ids = Array.from({ length: count }, (_, i) => `s${i}`);
    return fc.record({
      stages: fc.tuple(...ids.map((id) => randomStage(id, shape))),
      lags: fc.array(randomLag(ids), { maxLength: 2 * count }).map(numbered),
      holds: shape.resources ? fc.array(randomHold(ids), { maxLength: 2 }).map(numbered) : fc.constant([]),
      resources: shape.resources ? randomResources(shape.until) : fc.constant<Resource[]>([]),
      calendars: fc.record({ hours: randomHours(shape.until) }),
      draws: fc.constant({}),
      from: fc.constant(0),
      until: fc.constant(shape.until),
    });
  });
}

function numbered<T extends object>(entries: readonly T[]): (T & { id: string })[] {
  return entries.map((entry, i) => ({ ...entry, id: `n${i}` }));
}

function randomStage(id: string, shape: Shape): fc.Arbitrary<Stage> {
  const sometimes = (): fc.Arbitrary<number | undefined> =>
    shape.free === true
      ? fc.oneof(
          { weight: 1, arbitrary: fc.integer({ min: 0, max: shape.until }) },
          { weight: 5, arbitrary: fc.constant(undefined) },
        )
      : fc.option(fc.integer({ min: 0, max: shape.until }), { nil: undefined, freq: 8 });
  return fc
    .record({
      duration: fc.integer({ min: shape.resources ? 1 : 0, max: 4 }),
      inHours: fc.boolean(),
      earliest: sometimes(),
      latest: sometimes(),
      fixed: sometimes(),
      hands: fc.integer({ min: 0, max: 1 }),
      trays: fc.integer({ min: 0, max: 2 }),
    })
    .map(({ duration, inHours, earliest, latest, fixed, hands, trays }) => ({
      id,
      duration,
      uses: shape.resources
        ? [
            { resource: 'hands', amount: hands },
            { resource: 'trays', amount: trays },
          ]
        : [],
      ...(shape.calendars && inHours && { calendar: 'hours' }),
      ...(earliest !== undefined && { earliest }),
      ...(latest !== undefined && { latest }),
      ...(fixed !== undefined && { fixed }),
    }));
}

function randomLag(ids: readonly string[]): fc.Arbitrary<Omit<Lag, 'id'>> {
  const known = (min: number, max: number): fc.Arbitrary<Length> =>
    fc.integer({ min, max }).map((minutes) => ({ kind: 'known', minutes }));
  return fc.record(
    {
      from: fc.constantFrom(...ids),
      to: fc.constantFrom(...ids),
      point: fc.constantFrom<'start' | 'end'>('start', 'end'),
      atLeast: known(-4, 6),
      atMost: known(0, 8),
      until: fc.constantFrom<'start' | 'end'>('start', 'end'),
    },
    { requiredKeys: ['from', 'to', 'point'] },
  );
}

/** From an earlier stage to a later one of the list, so that most holds are not turned about. */
function randomHold(ids: readonly string[]): fc.Arbitrary<Omit<Hold, 'id'>> {
  return fc
    .tuple(fc.nat(ids.length - 1), fc.nat(ids.length - 1), fc.integer({ min: 1, max: 2 }))
    .map(([a, b, amount]) => ({
      resource: 'trays',
      amount,
      from: ids[Math.min(a, b)]!,
      to: ids[Math.max(a, b)]!,
    }));
}

function randomResources(until: number): fc.Arbitrary<Resource[]> {
  const busy = fc
    .record({
      from: fc.integer({ min: 0, max: until }),
      length: fc.integer({ min: 1, max: 4 }),
      amount: fc.integer({ min: 1, max: 2 }),
    })
    .map(({ from, length, amount }) => ({ from, to: from + length, amount }));
  return fc.array(busy, { maxLength: 2 }).map((trays) => [
    { id: 'hands', capacity: 1, busy: [] },
    { id: 'trays', capacity: 3, busy: trays },
  ]);
}

/** Two to four openings with gaps between them. */
function randomHours(until: number): fc.Arbitrary<Interval[]> {
  return fc.uniqueArray(fc.integer({ min: 0, max: until }), { minLength: 4, maxLength: 8 }).map((marks) => {
    const sorted = [...marks].sort((a, b) => a - b);
    return sorted.flatMap((to, i) => (i % 2 === 1 ? [{ from: sorted[i - 1]!, to }] : []));
  });
}
