import { normalCdf, normalQuantile } from '#units';
import type { Band } from './engine/quantile.js';
import type { Forecast } from './forecast.js';
import type { StateId } from './states.js';

/** How a batter is brought into or onto the pieces. */
export type WayOfWorking = 'pour' | 'dip' | 'layer' | 'pipe';

/** From which state of the batter to which each way of working can be done: common practice, no source. */
export const stretches: Readonly<Record<WayOfWorking, { readonly start: StateId; readonly end: StateId }>> = {
  pour: { start: 'emulsion', end: 'medium-trace' },
  dip: { start: 'light-trace', end: 'medium-trace' },
  layer: { start: 'medium-trace', end: 'thick-trace' },
  pipe: { start: 'medium-trace', end: 'stiff' },
};

/** Whether all pieces can be done while the batter is fit for it. */
export interface WorkingTime {
  /** How long the batter stays fit, in minutes; 0 where it is too stiff before it is fit. */
  readonly stretchMin: Band;
  /** Probability, 0 to 1, that the last piece is done in time. */
  readonly chance: number;
  /** How many of the pieces are done in time in nine batches of ten. */
  readonly piecesSurely: number;
  /** Into how many equal batches to split so that each is done in time nine times in ten; at most one a piece. */
  readonly batches: number;
}

/** What counts as sure. */
const SURE = 0.9;

/**
 * Whether a batch can be poured, dipped, layered or piped piece by piece before it is too stiff.
 *
 * The states of one batter come early or late together, so one standard normal draw z moves both ends:
 *
 *     S(z) = m_end · exp(σ_end z) − m_start · exp(σ_start z)        chance = P(S(z) ≥ n · seconds / 60)
 *
 * With equal σ the stretch is log-normal itself. Otherwise S has one turning point, so that the draws that leave
 * time enough are still one interval, whose ends are found by halving.
 *
 * @param forecasts when the batter becomes fit and stops being so: the states of `stretches[way]`
 * @param secondsPerPiece 0 or more, in whole or not
 * @param count whole number of pieces, 0 or more
 * @returns minutes, not rounded
 * @throws RangeError for forecasts of other states, for a time below 0 or not finite, or a count that is none
 */
export function workingTime(
  way: WayOfWorking,
  forecasts: { readonly start: Forecast; readonly end: Forecast },
  secondsPerPiece: number,
  count: number,
): WorkingTime {
  demandFit(way, forecasts, secondsPerPiece, count);
  const stretch = stretchOf(forecasts.start, forecasts.end);
  const surely = lengthWithChance(stretch, SURE);
  const piecesSurely =
    secondsPerPiece === 0 ? count : Math.min(count, Math.floor((surely * 60) / secondsPerPiece));
  return {
    stretchMin: { low: surely, likely: lengthWithChance(stretch, 0.5), high: lengthWithChance(stretch, 0.1) },
    chance: chanceOf(stretch, (secondsPerPiece * count) / 60),
    piecesSurely,
    batches: piecesSurely === 0 ? count : Math.ceil(count / piecesSurely),
  };
}

function demandFit(
  way: WayOfWorking,
  { start, end }: { readonly start: Forecast; readonly end: Forecast },
  secondsPerPiece: number,
  count: number,
): void {
  const wanted = stretches[way];
  if (start.state !== wanted.start || end.state !== wanted.end) {
    throw new RangeError(
      `to ${way} takes ${wanted.start} to ${wanted.end}, not ${start.state} to ${end.state}`,
    );
  }
  if (!(secondsPerPiece >= 0 && secondsPerPiece < Infinity)) {
    throw new RangeError(`${String(secondsPerPiece)} seconds per piece`);
  }
  if (!Number.isInteger(count) || count < 0) throw new RangeError(`${String(count)} pieces`);
}

/** The stretch as a function of the draw, and the draw at which it is longest: ∞ where it grows for ever. */
interface Stretch {
  readonly at: (z: number) => number;
  readonly longestAt: number;
}

function stretchOf(start: Forecast, end: Forecast): Stretch {
  const [m, s, n, t] = [start.medianMin, start.sigma, end.medianMin, end.sigma];
  const at = (z: number): number => n * Math.exp(t * z) - m * Math.exp(s * z);
  // S′ = 0 where t n e^(t z) = s m e^(s z): a longest stretch if the start varies more, a shortest if the end does.
  return { at, longestAt: s > t ? Math.log((t * n) / (s * m)) / (s - t) : Infinity };
}

/** Beyond this many standard deviations lies less than 1 in 10^15. */
const FAR = 8;

/** P(S ≥ needed). */
function chanceOf({ at, longestAt }: Stretch, needed: number): number {
  if (needed <= 0) return 1;
  // Where S is above 0 it rises up to its longest and falls from there, so each side has one crossing at most.
  const top = Math.min(FAR, Math.max(-FAR, longestAt));
  if (at(top) < needed) return 0;
  const enough = (z: number): boolean => at(z) >= needed;
  const from = enough(-FAR) ? -Infinity : crossing(enough, top, -FAR);
  const to = enough(FAR) ? Infinity : crossing(enough, top, FAR);
  return normalCdf(to) - normalCdf(from);
}

/** The longest time that the batter leaves with a given chance: 0 where it leaves none. */
function lengthWithChance(stretch: Stretch, chance: number): number {
  const { at, longestAt } = stretch;
  if (longestAt === Infinity) return Math.max(0, at(normalQuantile(1 - chance)));
  const longest = at(Math.min(FAR, Math.max(-FAR, longestAt)));
  return crossing((length) => chanceOf(stretch, length) >= chance, 0, Math.max(0, longest));
}

/** As many as a double has digits, and a few more. */
const HALVINGS = 60;

/** The place between one where something holds and one where it does not, on the side where it holds. */
function crossing(holds: (x: number) => boolean, inside: number, outside: number): number {
  let [good, bad] = [inside, outside];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (good + bad) / 2;
    if (holds(middle)) good = middle;
    else bad = middle;
  }
  return good;
}
