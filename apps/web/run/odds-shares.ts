/** How many of a hundred runs come out how; together a hundred. */
export interface OddsShares {
  readonly sound: number;
  readonly late: number;
  readonly lost: number;
}

/**
 * Of a hundred: sound by the day, sound but late, lost. Rounded so that they add up, by the largest remainders.
 * @param byTheDay chance of sound pieces by the day asked for, at most `atAll`
 * @param atAll chance of sound pieces at all
 */
export function oddsShares(byTheDay: number, atAll: number): OddsShares {
  const exact = [byTheDay, atAll - byTheDay, 1 - atAll].map((share) => share * 100);
  const whole = exact.map((share) => Math.floor(share + 1e-9));
  const left = 100 - whole.reduce((sum, each) => sum + each, 0);
  const byRest = exact
    .map((share, i) => ({ i, rest: share - whole[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i);
  for (const { i } of byRest.slice(0, left)) whole[i]!++;
  const [sound = 0, late = 0, lost = 0] = whole;
  return { sound, late, lost };
}
