/** A share as people read it, with a decimal where it is small or nearly all. */
export function share(value: number): string {
  const fine = value < 0.1 || value > 0.99;
  return `${(value * 100).toFixed(fine ? 1 : 0)} %`;
}

/** Two shares side by side, with as many decimals as it takes to tell them apart. */
export function insteadOf(now: number, before: number): string {
  const [one, other] = [share(now), share(before)];
  if (one !== other) return `${one} instead of ${other}`;
  return `${(now * 100).toFixed(1)} % instead of ${(before * 100).toFixed(1)} %`;
}

/** A number of pieces. */
export function pieces(count: number): string {
  return count === 1 ? '1 piece' : `${String(count)} pieces`;
}
