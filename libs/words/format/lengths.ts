import type { Phrases } from '../phrases.js';

/** How lengths of time are written. All take minutes, 0 or more. */
export interface Lengths {
  /**
   * As people say it: `35 min`, `9 h 30`, `41 h`, `5 days`, `5 weeks`.
   * @param scale the length whose unit to use, so that a band reads in one unit
   */
  readonly duration: (minutes: number, scale?: number) => string;
  /** `36 h (24 h to 54 h)`, all in the unit of the likely value. */
  readonly band: (minutes: {
    readonly low: number;
    readonly likely: number;
    readonly high: number;
  }) => string;
}

/** @param number writes a number with at most so many decimals */
export function lengthsWith(phrases: Phrases, number: (value: number, digits?: number) => string): Lengths {
  const duration = (minutes: number, scale = minutes): string => {
    if (scale < 90) return `${number(Math.round(minutes), 0)} min`;
    if (scale < 20 * 60) {
      const rounded = Math.round(minutes / 5) * 5;
      const rest = rounded % 60;
      const whole = String(Math.floor(rounded / 60));
      return rest === 0 ? `${whole} h` : `${whole} h ${String(rest).padStart(2, '0')}`;
    }
    if (scale < 100 * 60) return `${number(Math.round(minutes / 60), 0)} h`;
    if (scale < 21 * 1440) {
      const days = Math.round(minutes / 1440);
      return phrases.days(number(days, 0), days === 1);
    }
    const weeks = Number((minutes / 10_080).toFixed(1));
    return phrases.weeks(number(weeks, 1), weeks === 1);
  };
  return {
    duration,
    band: ({ low, likely, high }) =>
      `${duration(likely)} (${phrases.range(duration(low, likely), duration(high, likely))})`,
  };
}
