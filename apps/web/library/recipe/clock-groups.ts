import { states, type ClockName } from '#clocks';
import type { Schemas } from '../../api/client.js';

type Clock = Schemas['ClockForecast'];
export type ClockGroup = ClockName;

/** Which clock tells a state: minutes from lye-in, hours from the pour, days and weeks from unmoulding. */
export function groupOf(state: Clock['state']): ClockGroup {
  return states[state].clock;
}

/** Forecasts by clock, in the order in which soap passes through them; a clock without any is left out. */
export function groupClocks(
  clocks: readonly Clock[],
): { readonly group: ClockGroup; readonly clocks: readonly Clock[] }[] {
  return (['lye', 'fats', 'batter', 'paste', 'set', 'cure'] as const).flatMap((group) => {
    const members = clocks
      .filter(({ state }) => groupOf(state) === group)
      .sort((a, b) => a.band.likely - b.band.likely);
    return members.length === 0 ? [] : [{ group, clocks: members }];
  });
}

/** Ends of a scale of logarithms that all bands fit on, with a little room. */
export function logDomain(
  bands: readonly { readonly low: number; readonly high: number }[],
): [number, number] {
  const low = Math.min(...bands.map((band) => band.low));
  const high = Math.max(...bands.map((band) => band.high));
  return [low / 1.1, high * 1.1];
}
