/**
 * Guards of the arithmetic of demand. What people type is checked at the door, so a value out of range here is a
 * caller's fault.
 * @throws RangeError naming the value and what is accepted, which for NaN is never met
 */
export function requireThat(holds: boolean, what: string, value: number, accepted: string): void {
  if (!holds) throw new RangeError(`${what} is ${String(value)}; accepted: ${accepted}`);
}

/** Finite and more than 0. */
export function requirePositive(what: string, value: number): void {
  requireThat(value > 0 && Number.isFinite(value), what, value, 'a finite number above 0');
}

/** Finite and 0 or more. */
export function requireNotNegative(what: string, value: number): void {
  requireThat(value >= 0 && Number.isFinite(value), what, value, 'a finite number, 0 or more');
}

/** A whole number from `least` up. */
export function requireCount(what: string, value: number, least: number): void {
  const holds = Number.isSafeInteger(value) && value >= least;
  requireThat(holds, what, value, `a whole number, ${String(least)} or more`);
}
