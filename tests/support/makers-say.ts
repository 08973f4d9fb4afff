import { expect } from 'vitest';
import {
  forecast,
  ofTypicalWorkshop,
  referenceInputs,
  type ClockInputs,
  type Forecast,
  type LogNormal,
  type StateId,
} from '#clocks';

export const HOUR = 60;
export const DAY = 24 * HOUR;
export const WEEK = 7 * DAY;

export const given = (state: StateId, inputs: Partial<ClockInputs> = {}): Forecast =>
  forecast(state, { ...referenceInputs, ...inputs });

/**
 * Makers speak of soap at large: how its batches vary where the pace is the usual one. The band of a forecast is
 * wider, since it must hold for a workshop of which nothing is known.
 */
export const typical = (state: StateId, inputs: Partial<ClockInputs> = {}): LogNormal =>
  ofTypicalWorkshop(given(state, inputs));

export function likely(state: StateId, unit: number, inputs: Partial<ClockInputs> = {}): number {
  return given(state, inputs).medianMin / unit;
}

export function expectBetween(value: number, low: number, high: number): void {
  expect(value).toBeGreaterThanOrEqual(low);
  expect(value).toBeLessThanOrEqual(high);
}

/** Fatty acids of olive oil near the middle of its range: 14 % palmitic and stearic, 72 % oleic. */
export const castile = { hardFattyAcidsPercent: 14, oleicPercent: 72 } as const;
