/**
 * Numbers that know their unit. A branded type costs nothing at run time and stops grams from being added
 * to millilitres. Each is made only by its checking constructor.
 */

declare const gramsTag: unique symbol;
declare const millilitresTag: unique symbol;
declare const celsiusTag: unique symbol;
declare const minutesTag: unique symbol;
declare const minuteTag: unique symbol;

/** Mass in grams, finite and not negative. */
export type Grams = number & { readonly [gramsTag]: true };
/** Volume in millilitres, finite and not negative. */
export type Millilitres = number & { readonly [millilitresTag]: true };
/** Temperature in degrees Celsius, finite. */
export type Celsius = number & { readonly [celsiusTag]: true };
/** A length of time in minutes; may be fractional and, as a lag, negative. */
export type Minutes = number & { readonly [minutesTag]: true };
/** A point in time: whole minutes since 1970-01-01T00:00Z. The grid on which plans are made. */
export type Minute = number & { readonly [minuteTag]: true };

/** Thrown when a number cannot carry its unit. It is a fault in the caller: input is checked before. */
export class UnitError extends RangeError {
  constructor(unit: string, value: number, accepted: string) {
    super(`${String(value)} is not a value in ${unit}; accepted: ${accepted}`);
    this.name = 'UnitError';
  }
}

/** @throws UnitError unless `value` is finite and at least 0 */
export function grams(value: number): Grams {
  if (!Number.isFinite(value) || value < 0) throw new UnitError('grams', value, 'finite, 0 or more');
  return value as Grams;
}

/** @throws UnitError unless `value` is finite and at least 0 */
export function millilitres(value: number): Millilitres {
  if (!Number.isFinite(value) || value < 0) throw new UnitError('millilitres', value, 'finite, 0 or more');
  return value as Millilitres;
}

/** @throws UnitError unless `value` is finite and above absolute zero */
export function celsius(value: number): Celsius {
  if (!Number.isFinite(value) || value < -273.15) {
    throw new UnitError('degrees Celsius', value, 'finite, -273.15 or more');
  }
  return value as Celsius;
}

/** @throws UnitError unless `value` is finite */
export function minutes(value: number): Minutes {
  if (!Number.isFinite(value)) throw new UnitError('minutes', value, 'finite');
  return value as Minutes;
}

/** @returns `value` hours as minutes; @throws UnitError unless finite */
export function hours(value: number): Minutes {
  return minutes(value * 60);
}

/** @returns `value` days of 24 hours as minutes; @throws UnitError unless finite */
export function days(value: number): Minutes {
  return minutes(value * 1440);
}

/** @throws UnitError unless `value` is a whole number of minutes within ±8.64e12/60 (the range of Date) */
export function minute(value: number): Minute {
  if (!Number.isSafeInteger(value) || Math.abs(value) > 1.44e11) {
    throw new UnitError('minutes since 1970', value, 'a whole number in the range of Date');
  }
  return value as Minute;
}
