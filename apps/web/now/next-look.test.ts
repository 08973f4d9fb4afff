import { describe, expect, it } from 'vitest';
import type { StageForecast } from '#contract';
import { chanceAt, lookAgain } from './next-look.js';

const FROM = Date.parse('2026-11-27T18:00:00Z');
const hour = 3_600_000;
/** Twenty equally likely times, one an hour from the first on. */
const forecast = (first: number, closes = false): StageForecast => ({
  ...{ part: { run: 'r', part: 'base', attempt: 1, title: 'Base' }, state: 'firm', closes },
  fromAt: new Date(FROM).toISOString(),
  minutes: Array.from({ length: 20 }, (_, i) => (first + i) * 60),
});

describe('the chance that a stage can be done', () => {
  it('is the share of the times that have passed by then', () => {
    const stage = { forecasts: [forecast(1)] };
    expect(chanceAt(stage, FROM)).toBe(0);
    expect(chanceAt(stage, FROM + 10 * hour)).toBe(0.5);
    expect(chanceAt(stage, FROM + 10 * hour - 1)).toBe(0.45);
    expect(chanceAt(stage, FROM + 20 * hour)).toBe(1);
  });

  it('is that of the slowest, and goes by nothing that closes it', () => {
    const at = FROM + 10 * hour;
    expect(chanceAt({ forecasts: [forecast(1), forecast(6)] }, at)).toBe(0.25);
    expect(chanceAt({ forecasts: [forecast(1), forecast(9, true)] }, at)).toBe(0.5);
    expect(chanceAt({ forecasts: [forecast(9, true)] }, at)).toBeUndefined();
    expect(chanceAt({}, at)).toBeUndefined();
  });
});

describe('the next look', () => {
  it('is when half of the times that are left have passed', () => {
    const stage = { forecasts: [forecast(1)] };
    expect(lookAgain(stage, FROM)).toBe(FROM + 10 * hour);
    expect(lookAgain(stage, FROM + 10 * hour)).toBe(FROM + 15 * hour);
    expect(lookAgain(stage, FROM + 19 * hour)).toBe(FROM + 20 * hour);
  });

  it('waits for the slowest, and is not told where no time is left', () => {
    expect(lookAgain({ forecasts: [forecast(1), forecast(6)] }, FROM)).toBe(FROM + 15 * hour);
    expect(lookAgain({ forecasts: [forecast(1)] }, FROM + 20 * hour)).toBeUndefined();
    expect(lookAgain({ forecasts: [forecast(9, true)] }, FROM)).toBeUndefined();
  });
});
