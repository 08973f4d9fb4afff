import { describe, expect, it } from 'vitest';
import { isNearTo, shownHours, ticksOf, viewOf } from './axis.js';

const HOUR = 3_600_000;
const at = (text: string): number => Date.parse(text);

describe('the axis below dots', () => {
  it('writes days apart enough to be read, over weeks', () => {
    const view = { from: at('2026-12-01T10:00Z'), to: at('2027-02-10T10:00Z') };
    const ticks = ticksOf(view, 300, 'Europe/Dublin');
    expect(ticks.length).toBeGreaterThanOrEqual(2);
    const apart = ticks.slice(1).map((tick, i) => ((tick.at - ticks[i]!.at) * 300) / (view.to - view.from));
    for (const each of apart) expect(each).toBeGreaterThanOrEqual(77);
    expect(ticks.every(({ isDay }) => isDay)).toBe(true);
  });

  it('writes midnights of the place, and times where there is less than a day and a half', () => {
    const days = ticksOf({ from: at('2026-11-28T03:00Z'), to: at('2026-11-30T20:00Z') }, 300, 'Asia/Tokyo');
    expect(days[0]).toEqual({ at: at('2026-11-28T15:00Z'), isDay: true });
    const times = ticksOf({ from: at('2026-11-28T03:10Z'), to: at('2026-11-28T05:10Z') }, 300, 'Asia/Tokyo');
    expect(times.map((tick) => tick.at)).toEqual(
      ['03:30', '04:00', '04:30', '05:00'].map((time) => at(`2026-11-28T${time}Z`)),
    );
  });

  it('draws hours cut to what is seen, and none over weeks', () => {
    const view = { from: 0, to: 10 * HOUR };
    expect(
      shownHours(
        [
          { from: -HOUR, to: HOUR },
          { from: 20 * HOUR, to: 21 * HOUR },
        ],
        view,
        300,
      ),
    ).toEqual([{ from: 0, to: HOUR }]);
    expect(shownHours([{ from: 0, to: HOUR }], { from: 0, to: 1000 * HOUR }, 300)).toEqual([]);
  });

  it('reaches to what is marked, unless that is far off', () => {
    const times = [10 * HOUR, 20 * HOUR];
    expect(viewOf(times, 25 * HOUR).to).toBeGreaterThan(25 * HOUR);
    expect(viewOf(times, 90 * HOUR).to).toBeLessThan(25 * HOUR);
    expect([0, 5, 25, 31].map((hour) => isNearTo(times, hour * HOUR))).toEqual([true, true, true, false]);
  });
});
