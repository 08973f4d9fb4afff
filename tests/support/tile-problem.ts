import type { Length, Problem } from '#planner';

const DAY = 1440;
const known = (minutes: number): Length => ({ kind: 'known', minutes });
const uncertain = (hours: number, sigma: number, draw: string): Length => ({
  kind: 'uncertain',
  median: hours * 60,
  sigma,
  draw,
});
const hands = [{ resource: 'hands', amount: 1 }];
const bench = { uses: hands, calendar: 'hours' };

/**
 * An invented run of layered tiles, twelve stages over four days, minute 0 being midnight before a Friday: evenings
 * on working days, the whole of Saturday and Sunday. Lengths are round figures of about the right size.
 */
export function tileProblem(): Problem {
  return {
    stages: [
      { id: 'lye', duration: 15, ...bench },
      { id: 'cast', duration: 40, ...bench },
      { id: 'second-layer', duration: 40, ...bench },
      { id: 'dough', duration: 45, ...bench },
      { id: 'shells', duration: 60, ...bench },
      { id: 'unmould', duration: 30, ...bench },
      { id: 'patch', duration: 25, ...bench },
      { id: 'piping-batch', duration: 15, ...bench },
      { id: 'pipe', duration: 60, ...bench },
      { id: 'set-shells', duration: 25, ...bench },
      { id: 'drops', duration: 40, ...bench },
      { id: 'turn', duration: 20, ...bench },
    ],
    lags: [
      { id: 'cool', from: 'lye', point: 'end', to: 'cast', atLeast: known(60), atMost: known(600) },
      {
        id: 'holds-layer',
        from: 'cast',
        point: 'end',
        to: 'second-layer',
        atLeast: uncertain(1.2, 0.3, 'base'),
        atMost: uncertain(8, 0.25, 'base'),
      },
      { id: 'dough-rest', from: 'dough', point: 'end', to: 'shells', atLeast: uncertain(10, 0.25, 'dough') },
      { id: 'dough-dry', from: 'dough', point: 'end', to: 'shells', atMost: uncertain(60, 0.3, 'dough-dry') },
      { id: 'firm', from: 'second-layer', point: 'end', to: 'unmould', atLeast: uncertain(16, 0.3, 'set') },
      {
        id: 'still-soft',
        from: 'second-layer',
        point: 'end',
        to: 'patch',
        atMost: uncertain(60, 0.3, 'set'),
      },
      { id: 'patch-after', from: 'unmould', point: 'end', to: 'patch', atLeast: known(0) },
      { id: 'patched', from: 'patch', point: 'end', to: 'pipe', atLeast: known(60) },
      { id: 'trace', from: 'piping-batch', point: 'end', to: 'pipe', atLeast: known(5), atMost: known(35) },
      { id: 'skin', from: 'pipe', point: 'end', to: 'set-shells', atMost: uncertain(1, 0.3, 'skin') },
      { id: 'foam-set', from: 'pipe', point: 'start', to: 'set-shells', atLeast: known(60) },
      { id: 'shells-ready', from: 'shells', point: 'end', to: 'set-shells', atLeast: known(30) },
      { id: 'foam-firm', from: 'set-shells', point: 'end', to: 'drops', atLeast: uncertain(3, 0.3, 'foam') },
      { id: 'drops-cold', from: 'drops', point: 'end', to: 'turn', atLeast: known(180) },
    ],
    holds: [{ id: 'moulds', resource: 'moulds', amount: 24, from: 'cast', to: 'unmould' }],
    resources: [
      { id: 'hands', capacity: 1, busy: [{ from: DAY + 600, to: DAY + 660, amount: 1 }] },
      { id: 'moulds', capacity: 24, busy: [] },
    ],
    calendars: {
      hours: [0, 1, 2, 3, 4, 5, 6].map((day) => ({
        from: day * DAY + (day === 1 || day === 2 ? 9 * 60 : 18 * 60),
        to: day * DAY + 22 * 60,
      })),
    },
    draws: {},
    from: 17 * 60,
    until: 7 * DAY,
  };
}
