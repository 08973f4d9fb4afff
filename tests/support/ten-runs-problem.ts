import type { Interval, Lag, Length, Problem, Stage } from '#planner';
import { tileProblem } from './tile-problem.js';

const DAY = 1440;
const known = (minutes: number): Length => ({ kind: 'known', minutes });
const hands = [{ resource: 'hands', amount: 1 }];

/**
 * Ten invented runs of layered tiles that share one pair of hands and two sets of moulds, a new one begun every four
 * days at the earliest: 150 stages, hands-on work over about 45 days, then the cure. Minute 0 is midnight before a Friday.
 * @param count of runs, if not ten
 */
export function tenRunsProblem(count = 10): Problem {
  const runs = Array.from({ length: count }, (_, k) => run(k, k * 4 * DAY + 17 * 60));
  const stages = runs.flatMap((each) => each.stages);
  return {
    stages,
    lags: runs.flatMap((each) => each.lags),
    holds: runs.flatMap((each) => each.holds),
    resources: [
      { id: 'hands', capacity: 1, busy: [{ from: DAY + 600, to: DAY + 660, amount: 1 }] },
      { id: 'moulds', capacity: 48, busy: [] },
      { id: 'trays', capacity: 3, busy: [] },
    ],
    calendars: { hours: hours(110 + 4 * count) },
    deliveries: runs.map((each) => each.stages.map(({ id }) => id)),
    draws: {},
    from: 17 * 60,
    until: (260 + 4 * count) * DAY,
  };
}

function run(k: number, earliest: number): Pick<Problem, 'stages' | 'lags' | 'holds'> {
  const tile = tileProblem();
  const name = (id: string): string => `run-${k}/${id}`;
  const more: Stage[] = [
    { id: 'stamp', duration: 25, uses: hands, calendar: 'hours' },
    { id: 'trim', duration: 40, uses: hands, calendar: 'hours' },
    { id: 'ready', duration: 0, uses: [] },
  ];
  const lags: Lag[] = [
    ...tile.lags,
    { id: 'turned', from: 'turn', point: 'end', to: 'stamp', atLeast: known(600), atMost: known(4 * DAY) },
    { id: 'stamped', from: 'stamp', point: 'end', to: 'trim', atLeast: known(DAY) },
    {
      ...{ id: 'cure', from: 'unmould', point: 'end', to: 'ready' },
      atLeast: { kind: 'uncertain', median: 30 * DAY, sigma: 0.15, draw: 'cure' },
    },
  ];
  const own = (length: Length | undefined): Length | undefined =>
    length?.kind === 'uncertain' ? { ...length, draw: name(length.draw) } : length;
  return {
    stages: [...tile.stages, ...more].map((stage) => ({ ...stage, id: name(stage.id), earliest })),
    lags: lags.map(({ atLeast, atMost, ...lag }) => {
      const [least, most] = [own(atLeast), own(atMost)];
      return {
        ...lag,
        ...{ id: name(lag.id), from: name(lag.from), to: name(lag.to) },
        ...(least && { atLeast: least }),
        ...(most && { atMost: most }),
      };
    }),
    holds: [
      { id: name('moulds'), resource: 'moulds', amount: 24, from: name('cast'), to: name('unmould') },
      { id: name('tray'), resource: 'trays', amount: 1, from: name('unmould'), to: name('trim') },
    ],
  };
}

/** Friday, Tuesday and Thursday evening, Saturday morning, Sunday afternoon and evening: 19 hours a week. */
function hours(days: number): Interval[] {
  const week = [[18, 22], [9, 13], [14, 20], [], [19, 22], [], [19, 22]];
  return Array.from({ length: days }, (_, day) => day).flatMap((day) => {
    const [from, to] = week[day % 7]!;
    if (from === undefined || to === undefined) return [];
    return [{ from: day * DAY + from * 60, to: day * DAY + to * 60 }];
  });
}
