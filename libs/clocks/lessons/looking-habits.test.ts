import { describe, expect, it } from 'vitest';
import type { SeenBatch } from './evidence.js';
import { lookingDaysOf, lookingHabits, stretchesOf } from './looking-habits.js';

const batch = (over: Partial<SeenBatch>): SeenBatch => ({
  ...{ day: 20_006, sigma: 0.25, looks: 0, missed: 0 },
  ...over,
});
const anyDay = { mayLook: () => true, from: undefined };
/** A batch found ready after so many days, last seen unready after so many. */
const between = (notYet: number, ready: number): SeenBatch =>
  batch({ above: Math.log(notYet), below: Math.log(ready), readyAfterDays: ready, looks: 1 });

describe('how likely looking habits are', () => {
  it('comes to one', () => {
    expect(lookingHabits.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(1, 12);
  });
});

describe('where a batch may have become ready', () => {
  it('is one stretch between two looks a day apart', () => {
    const { ends } = stretchesOf(between(2, 3), anyDay, lookingHabits);
    expect(ends).toEqual([Math.log(3), Math.log(2)]);
  });

  it('has an end a day back for each day on which somebody may have looked in between', () => {
    const { ends } = stretchesOf(between(2, 5), anyDay, lookingHabits);
    expect(ends).toHaveLength(4);
    [5, 4, 3, 2].forEach((days, i) => expect(ends[i]).toBeCloseTo(Math.log(days), 12));
    const onOneDay = { mayLook: (day: number) => day === 20_004, from: undefined };
    const [last, middle, first] = stretchesOf(between(2, 5), onOneDay, lookingHabits).ends;
    expect([last, middle, first].map((log) => Math.round(Math.exp(log ?? NaN)))).toEqual([5, 3, 2]);
  });

  /** By hand, of three days: who looks in half of the cases and writes always, ½ · ½² each; who writes half of what is looked at daily, 1 · 0^i · ½^(2−i). */
  it('is weighed evenly for who writes every look, and lies on the last day for who looks daily and writes little', () => {
    const habits = [
      { writes: 0.5, looks: 0.5, prior: 0.5 },
      { writes: 0.5, looks: 1, prior: 0.5 },
    ];
    const { weights } = stretchesOf(between(2, 5), anyDay, habits);
    expect(weights[0]).toEqual([0.125, 0.125, 0.125]);
    expect(weights[1]).toEqual([0.25, 0, 0]);
  });

  it('begins where looks usually begin if nobody wrote “not yet”, and nowhere if nobody ever does', () => {
    const alone = batch({ below: Math.log(5), readyAfterDays: 5 });
    expect(stretchesOf(alone, anyDay, lookingHabits).ends).toEqual([Math.log(5), -Infinity]);
    const { ends } = stretchesOf(alone, { ...anyDay, from: Math.log(2) }, lookingHabits);
    expect(ends).toHaveLength(4);
    expect(ends.at(-1)).toBe(-Infinity);
  });
});

describe('where a batch may have become ready that a plan asked for', () => {
  const done = (opened: number): SeenBatch =>
    batch({ below: Math.log(5), readyAfterDays: 5, opened: Math.log(opened) });

  it('is one stretch if it was done within a day of that, and else has an end for each day since', () => {
    expect(stretchesOf(done(4.2), anyDay, lookingHabits).ends).toEqual([Math.log(5), -Infinity]);
    const { ends } = stretchesOf(done(2.5), anyDay, lookingHabits);
    expect(ends.map((end) => Math.round(Math.exp(end)))).toEqual([5, 4, 3, 0]);
  });

  it('has an end for each day since looks usually begin where that is sooner', () => {
    const of = (from: number) => stretchesOf(done(3.5), { ...anyDay, from: Math.log(from) }, lookingHabits);
    expect(of(2).ends).toHaveLength(4);
    expect(of(4.5).ends).toHaveLength(3);
  });

  it('goes by when looks usually begin where it was done before the plan asked for it', () => {
    const { ends } = stretchesOf(done(6), { ...anyDay, from: Math.log(2) }, lookingHabits);
    expect(ends).toHaveLength(4);
  });

  it('lets the first look that was written tell of the habit, unless it came unasked', () => {
    const half = [{ writes: 0.5, looks: 0.5, prior: 1 }];
    const of = (opened: number | undefined) =>
      stretchesOf(
        { ...between(2, 3), ...(opened !== undefined && { opened: Math.log(opened) }) },
        anyDay,
        half,
      ).weights[0]?.[0];
    expect(of(undefined)).toBe(0.5);
    expect(of(2.5)).toBe(0.5);
    expect(of(1.5)).toBe(0.25);
  });
});

describe('when a maker looks', () => {
  it('is any day until eight entries are known, then the days of the week that were seen', () => {
    const saturdays = Array.from({ length: 8 }, (_, i) => batch({ day: 20_000 + 7 * i, below: 0 }));
    const of = (seen: readonly SeenBatch[]) => lookingDaysOf(new Map([['tiles', { doubt: 0, seen }]]));
    expect(of(saturdays.slice(0, 7)).mayLook(20_001)).toBe(true);
    expect(of(saturdays).mayLook(20_001)).toBe(false);
    expect(of(saturdays).mayLook(20_700)).toBe(true);
  });

  it('is from the soonest quarter of what was found not ready', () => {
    const seen = [0.5, 0.1, 0.4, 0.3].map((above) => batch({ above, below: 1, readyAfterDays: 3, looks: 1 }));
    expect(lookingDaysOf(new Map([['tiles', { doubt: 0, seen }]])).from).toBe(0.3);
    expect(lookingDaysOf(new Map()).from).toBeUndefined();
  });
});
