/** What a length of time is counted in; the finest in which it needs no more than two figures or so. */
export type LengthUnit = 'minutes' | 'hours' | 'days' | 'weeks';

const MIN_PER: Readonly<Record<LengthUnit, number>> = { minutes: 1, hours: 60, days: 1440, weeks: 10_080 };

export interface RoughLength {
  readonly value: number;
  readonly unit: LengthUnit;
}

/**
 * A forecast length as a person would say it: no more exact than it is known.
 * @param minutes 0 or more
 */
export function roughLength(minutes: number): RoughLength {
  const unit = unitFor(minutes);
  const value = minutes / MIN_PER[unit];
  // Below ten, halves matter: two and a half hours are not three.
  const step = unit === 'minutes' || value >= 10 ? 1 : 0.5;
  return { value: Math.round(value / step) * step, unit };
}

/** The same for the ends of a band, counted as its likely value is, so that they can be compared at a glance. */
export function roughBand(band: { readonly low: number; readonly likely: number; readonly high: number }): {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
  readonly unit: LengthUnit;
} {
  const unit = unitFor(band.likely);
  const step = band.likely / MIN_PER[unit] >= 10 || unit === 'minutes' ? 1 : 0.5;
  const rounded = (minutes: number): number => Math.round(minutes / MIN_PER[unit] / step) * step;
  return { low: rounded(band.low), likely: rounded(band.likely), high: rounded(band.high), unit };
}

function unitFor(minutes: number): LengthUnit {
  if (minutes < 100) return 'minutes';
  if (minutes < 72 * 60) return 'hours';
  return minutes < 21 * 1440 ? 'days' : 'weeks';
}
