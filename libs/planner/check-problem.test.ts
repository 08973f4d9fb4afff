import { describe, expect, it } from 'vitest';
import { checkProblem, type Problem } from '#planner';

const sound: Problem = {
  stages: [
    { id: 'pour', duration: 20, uses: [{ resource: 'hands', amount: 1 }], calendar: 'hours' },
    { id: 'unmould', duration: 10, uses: [] },
  ],
  lags: [
    {
      id: 'set',
      from: 'pour',
      point: 'end',
      to: 'unmould',
      atLeast: { kind: 'uncertain', median: 600, sigma: 0.3, draw: 'set' },
    },
  ],
  holds: [{ id: 'mould', resource: 'moulds', amount: 2, from: 'pour', to: 'unmould' }],
  resources: [
    { id: 'hands', capacity: 1, busy: [] },
    { id: 'moulds', capacity: 2, busy: [{ from: 0, to: 5, amount: 1 }] },
  ],
  calendars: {
    hours: [
      { from: 0, to: 60 },
      { from: 90, to: 120 },
    ],
  },
  draws: { set: { above: 0.2 } },
  from: 0,
  until: 2000,
};

describe('checkProblem', () => {
  it('has nothing to say of a sound problem', () => {
    expect(checkProblem(sound)).toEqual([]);
  });

  const [pour, unmould] = [sound.stages[0]!, sound.stages[1]!];
  const set = sound.lags[0]!;
  const hold = sound.holds[0]!;
  it.each<[string, string, Partial<Problem>]>([
    [
      'planner.repeated-id',
      'stages.1.id',
      { stages: [pour, { ...unmould, id: 'pour' }], lags: [], holds: [] },
    ],
    ['planner.not-whole', 'stages.0.duration', { stages: [{ ...pour, duration: -1 }, unmould] }],
    ['planner.not-whole', 'stages.1.fixed', { stages: [pour, { ...unmould, fixed: 0.5 }] }],
    [
      'planner.unknown-calendar',
      'stages.1.calendar',
      { stages: [pour, { ...unmould, calendar: 'sundays' }] },
    ],
    ['planner.unknown-stage', 'lags.0.to', { lags: [{ ...set, to: 'wrap' }] }],
    [
      'planner.not-whole',
      'lags.0.atMost.minutes',
      { lags: [{ ...set, atMost: { kind: 'known', minutes: 1.5 } }] },
    ],
    [
      'planner.not-positive',
      'lags.0.atLeast.sigma',
      { lags: [{ ...set, atLeast: { kind: 'uncertain', median: 600, sigma: 0, draw: 'set' } }] },
    ],
    ['planner.unknown-stage', 'holds.0.from', { holds: [{ ...hold, from: 'wrap' }] }],
    ['planner.unknown-resource', 'holds.0.resource', { holds: [{ ...hold, resource: 'trays' }] }],
    ['planner.above-capacity', 'holds.0.amount', { holds: [{ ...hold, amount: 3 }] }],
    [
      'planner.unsorted',
      'calendars.hours.1',
      {
        calendars: {
          hours: [
            { from: 0, to: 60 },
            { from: 59, to: 70 },
          ],
        },
      },
    ],
    ['planner.empty-interval', 'calendars.hours.0', { calendars: { hours: [{ from: 60, to: 60 }] } }],
    ['planner.empty-range', 'draws.set', { draws: { set: { above: 1, below: 1 } } }],
    ['planner.not-whole', 'until', { until: -1 }],
  ])('reports %s at %s, and nothing else', (code, path, change) => {
    const issues = checkProblem({ ...sound, ...change });
    expect(issues.map((issue) => [issue.code, issue.path.join('.')])).toEqual([[code, path]]);
  });
});
