import { describe, expect, it } from 'vitest';
import { latestStartDocument, type LatestStartDocument } from '#contract';
import { instantOf } from '#hours';
import { occupancyOf, findLatestStart, planRuns, type LatestStartWish, type RunsInput } from '#runs';
import { minute, minuteOfIso, type Issue } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const ZONE = 'Europe/Dublin';
const scenarios = 400;
const now = instantOf('2026-11-27T18:00', ZONE) ?? minute(0);
const cups: RunsInput = loadRunFile('ok', 'two-layer');

function asked(input: RunsInput, wish: LatestStartWish): LatestStartDocument {
  const found = findLatestStart(input, wish, { now, scenarios });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  expect(latestStartDocument.safeParse(found.value).error).toBeUndefined();
  return found.value;
}

function refused(input: RunsInput, wish: LatestStartWish): readonly Issue[] {
  const found = findLatestStart(input, wish, { now, scenarios });
  return found.ok ? [] : found.issues;
}

function oddsFrom(input: RunsInput, readyBy: string, at: number): number {
  const runs = input.runs.map((run) => ({ ...run, readyBy }));
  const made = planRuns({ ...input, runs }, { now: minute(at), scenarios });
  return made.ok ? (made.value.odds?.soundByTheDay ?? 0) : -1;
}

describe('latest start of a run', () => {
  const readyBy = '2027-03-31';
  const answer = asked(cups, { readyBy, odds: 0.8 });
  const begin = minuteOfIso(answer.beginAt ?? '');

  it('is a start whose plan has the odds, and a minute later has not', () => {
    expect(answer.status).toBe('found');
    expect(oddsFrom(cups, readyBy, begin)).toBeGreaterThanOrEqual(0.8);
    expect(oddsFrom(cups, readyBy, begin + 1)).toBeLessThan(0.8);
    expect(answer.odds).toEqual(answer.plan.odds);
    expect(oddsFrom(cups, readyBy, begin)).toBe(answer.odds?.soundByTheDay);
    expect(oddsFrom(cups, readyBy, minuteOfIso(answer.tooLate?.beginAt ?? ''))).toBe(
      answer.tooLate?.probability,
    );
  });

  it('is left open where it is told to stop', () => {
    const found = findLatestStart(cups, { readyBy, odds: 0.8 }, { now, scenarios, stop: () => true });
    if (!found.ok) throw new Error(JSON.stringify(found.issues));
    expect(latestStartDocument.safeParse(found.value).error).toBeUndefined();
    expect(found.value).toMatchObject({ status: 'undecided', beginAt: null, odds: null, run: answer.run });
  });

  it('is when the first stage of the plan starts, in working hours as a clock on the wall shows them', () => {
    const starts = answer.plan.runs.flatMap((run) => run.stages.map((stage) => stage.startAt)).sort();
    expect(starts[0]).toBe(answer.beginAt);
    const wall = new Intl.DateTimeFormat('en-GB', { timeZone: ZONE, weekday: 'long' });
    const clock = new Intl.DateTimeFormat('en-GB', { timeZone: ZONE, hour: '2-digit', minute: '2-digit' });
    for (const start of starts) {
      const day = wall.format(new Date(start)).toLowerCase() as keyof typeof cups.workshop.hours.weekly;
      const time = clock.format(new Date(start));
      expect(cups.workshop.hours.weekly[day].some(({ from, to }) => from <= time && time < to)).toBe(true);
    }
    expect(answer.why[0]).toEqual({ code: 'start.by', at: answer.beginAt });
  });

  it('is no earlier for lower odds, and no later for higher ones', () => {
    const low = asked(cups, { readyBy, odds: 0.5 });
    expect(minuteOfIso(low.beginAt ?? '')).toBeGreaterThanOrEqual(begin);
  });

  it('says the best odds and what costs most where no start has them', () => {
    const far = asked(cups, { readyBy, odds: 0.999 });
    expect(far.status).toBe('out-of-reach');
    expect(far.odds?.soundByTheDay).toBeLessThan(0.999);
    expect(far.oddsBound).toBeGreaterThanOrEqual(far.odds?.soundByTheDay ?? 1);
    expect(far.why[0]).toMatchObject({ code: 'start.out-of-reach', wanted: 0.999, at: far.beginAt });
    expect(far.why[1]).toMatchObject({ code: 'start.loses', because: far.plan.weakLinks[0]?.why });
  });

  it('says what cannot all hold where the cure is longer than the time', () => {
    const never = asked(cups, { readyBy: '2026-12-12', odds: 0.8 });
    expect(never).toMatchObject({ status: 'conflict', beginAt: null, odds: null });
    expect(never.plan.conflict.map(({ code }) => code)).toContain('conflict.ready-by');
  });

  it('leaves other runs the hands and cavities that they have', () => {
    const [first] = cups.runs;
    if (first === undefined) throw new Error('no run');
    const others = { ...cups, runs: [{ ...first, startAfter: '2027-01-08T18:00', key: 'others' }] };
    const both = { ...cups, runs: [...others.runs, { ...first, key: 'mine' }] };
    const shared = asked(both, { run: 'mine', readyBy: '2027-03-01', odds: 0.5 });
    const taken = planRuns(others, { now, scenarios });
    if (!taken.ok) throw new Error('no plan of the others');
    const mine = shared.plan.runs[0]?.stages ?? [];
    expect(mine.length).toBeGreaterThan(0);
    for (const busy of occupancyOf(taken.value, others).filter(({ resource }) => resource === 'hands')) {
      for (const { startAt, endAt } of mine) {
        expect(minuteOfIso(endAt) <= busy.from || busy.to <= minuteOfIso(startAt)).toBe(true);
      }
    }
  });

  it('says what is missing or makes no sense, and where', () => {
    expect(refused(cups, { odds: 0.9 })).toMatchObject([
      { code: 'run.no-day', path: ['runs', 0, 'readyBy'] },
    ]);
    expect(refused(cups, { odds: 0.9, run: 'plates' })).toMatchObject([{ value: 'plates' }]);
    expect(refused(cups, { odds: 0.9, readyBy: '2031-01-01' })).toMatchObject([
      { code: 'run.day-out-of-range', value: '2031-01-01' },
    ]);
    expect(refused(cups, { odds: 0.9, readyBy: '2027-02-30' })).toMatchObject([
      { code: 'run.no-such-day', value: '2027-02-30' },
    ]);
    const done = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' } as const;
    const begun = { ...cups, log: [{ run: 'cups', entry: done }] };
    expect(refused(begun, { odds: 0.9, readyBy })).toMatchObject([{ code: 'run.begun' }]);
    const two = { ...cups, runs: cups.runs.flatMap((run) => [run, { ...run, key: 'more' }]) };
    expect(refused(two, { odds: 0.9, readyBy })).toMatchObject([
      { code: 'run.which', known: ['cups', 'more'] },
    ]);
  });
});
