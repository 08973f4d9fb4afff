import { describe, expect, it } from 'vitest';
import { windows, type Lag, type Length, type Problem, type Schedule } from '#planner';
import { stageWindows } from './stage-windows.js';

const DAY = 1440;
/** Of the normal distribution, any table (from memory): nine of ten lie below. */
const NINE_OF_TEN = 1.28155;
const uncertain = (median: number, sigma: number, draw: string): Length => ({
  ...{ kind: 'uncertain', median, sigma, draw },
});
const END = 100 * DAY;

/** Poured at 0 and over in no time; unmoulded once it is firm, and while it can be patched. */
function problem(lag: Partial<Lag>, more: Partial<Problem> = {}): Problem {
  return {
    stages: ['pour', 'unmould'].map((id) => ({ id, duration: 0, uses: [], calendar: 'bench' })),
    lags: [{ id: 'set', from: 'pour', point: 'end', to: 'unmould', ...lag }],
    ...{ holds: [], resources: [], calendars: { bench: [{ from: 0, to: END }] }, draws: {} },
    ...{ from: 0, until: 300 * DAY },
    ...more,
  };
}

const schedule: Schedule = {
  starts: new Map([
    ['pour', 0],
    ['unmould', 1500],
  ]),
  ...{ precedences: [], certainty: 0.5 },
};

describe('the window of a stage', () => {
  const [firm, soft] = [uncertain(1000, 0.2, 'firm'), uncertain(4000, 0.3, 'soft')];

  it('opens and closes when it is likely to, and surely does nine times of ten', () => {
    const window = stageWindows(problem({ atLeast: firm, atMost: soft }), schedule).get('unmould');
    expect(window).toMatchObject({
      ...{ opens: 1000, lastCall: 4000 },
      surelyOpen: Math.ceil(1000 * Math.exp(0.2 * NINE_OF_TEN)),
      surelyUntil: Math.floor(4000 * Math.exp(-0.3 * NINE_OF_TEN)),
    });
    expect(window?.likely).toMatchObject({ earliest: 1000, latest: 4000 });
  });

  /** Firm by 2147 at the latest of nine in ten, soft until 1361 at the least: no moment at which both are sure. */
  it('has both sure bounds though there is no moment that has both', () => {
    const [slow, quick] = [uncertain(1000, 0.6, 'firm'), uncertain(2000, 0.3, 'soft')];
    const p = problem({ atLeast: slow, atMost: quick });
    expect(windows(p, 0.9).status).toBe('conflict');
    const window = stageWindows(p, schedule).get('unmould');
    expect(window?.surelyOpen).toBe(Math.ceil(1000 * Math.exp(0.6 * NINE_OF_TEN)));
    expect(window?.surelyUntil).toBe(Math.floor(2000 * Math.exp(-0.3 * NINE_OF_TEN)));
  });

  it('keeps limits that are known, on either side', () => {
    const known = (minutes: number): Length => ({ kind: 'known', minutes });
    const lags = { atLeast: firm, atMost: known(1300) };
    expect(stageWindows(problem(lags), schedule).get('unmould')).toMatchObject({
      surelyOpen: 1293,
      surelyUntil: 1300,
    });
    const other = { atLeast: known(100), atMost: soft };
    expect(stageWindows(problem(other), schedule).get('unmould')).toMatchObject({
      ...{ opens: 100, surelyOpen: 100, surelyUntil: 2723 },
    });
  });

  it('has no last call where only the end of the hours closes it, or what is within three weeks of that', () => {
    const open = stageWindows(problem({ atLeast: firm }), schedule).get('unmould');
    expect(open).toMatchObject({ opens: 1000, lastCall: undefined, surelyUntil: undefined });
    const closing = (days: number) => {
      const minutes = END - days * DAY - 1;
      return stageWindows(problem({ atMost: { kind: 'known', minutes } }), schedule).get('unmould')?.lastCall;
    };
    expect(closing(21)).toBe(79 * DAY - 1);
    expect(closing(20)).toBeUndefined();
    const at = (minutes: number) =>
      stageWindows(problem({ atMost: { kind: 'known', minutes } }), schedule).get('unmould')?.lastCall;
    expect([at(79 * DAY), at(79 * DAY + 1)]).toEqual([79 * DAY, undefined]);
  });

  it('is that of the hours that end last', () => {
    const calendars = {
      bench: [
        { from: 0, to: 50 * DAY },
        { from: 60 * DAY, to: END },
      ],
      other: [],
    };
    const p = problem({ atMost: { kind: 'known', minutes: 40 * DAY } }, { calendars });
    expect(stageWindows(p, schedule).get('unmould')?.lastCall).toBe(40 * DAY);
  });

  it('is told of what is still to come and can be done as planned', () => {
    const done = problem({ atLeast: firm });
    const stages = done.stages.map((stage) => (stage.id === 'pour' ? { ...stage, fixed: 0 } : stage));
    expect([...stageWindows({ ...done, stages }, schedule).keys()]).toEqual(['unmould']);
    // Poured so late that it is not firm before the hours end.
    const late: Schedule = {
      ...schedule,
      starts: new Map([
        ['pour', END - 500],
        ['unmould', END - 400],
      ]),
    };
    expect([...stageWindows(done, late).keys()]).toEqual(['pour']);
  });
});
