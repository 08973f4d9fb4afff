declare const minuteTag: unique symbol;

/** A point in time: whole minutes since 1970-01-01T00:00Z. The grid on which plans are made. */
export type Minute = number & { readonly [minuteTag]: true };

/** Thrown when a number cannot carry its unit. It is a fault in the caller: input is checked before. */
export class UnitError extends RangeError {
  constructor(unit: string, value: number, accepted: string) {
    super(`${String(value)} is not a value in ${unit}; accepted: ${accepted}`);
    this.name = 'UnitError';
  }
}

/** @throws UnitError unless `value` is a whole number of minutes within ±8.64e12/60 (the range of Date) */
export function minute(value: number): Minute {
  if (!Number.isSafeInteger(value) || Math.abs(value) > 1.44e11) {
    throw new UnitError('minutes since 1970', value, 'a whole number in the range of Date');
  }
  return value as Minute;
}
