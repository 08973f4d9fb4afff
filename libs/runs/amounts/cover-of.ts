import {
  batchFor,
  chanceOfTooFew,
  leftover,
  piecesCovered,
  piecesWithSpares,
  shortageChance,
  demandOf,
  isSureEnough,
  type Losses,
  type PieceUse,
} from '#chemistry';
import type { Cover, DecorPart } from '#contract';
import { binomialCdf } from '#units';

/** Certainties that a batch sheet compares; the wanted one is put among them. */
const COMPARED = [0.5, 0.8, 0.9, 0.95, 0.99] as const;
/** How far beyond the count it is worth knowing what a batch still reaches. */
const FURTHEST = 2;
/** Pieces of the largest run. */
const MOST_PIECES = 5000;

/** How much to make of something measured, for so many pieces. */
export interface SizeWish {
  readonly count: number;
  /** 0 to 1. */
  readonly certainty: number;
  readonly use: PieceUse;
  readonly losses: Losses;
  readonly densityGPerMl: number;
  /** What is made whatever the pieces take; absent: what reaches with the wanted certainty. */
  readonly givenMl?: number | undefined;
}

/**
 * The volume that is given, or that reaches with the wanted certainty, losses included, and how surely that and other
 * sizes reach.
 */
export function coverOfVolume(wish: SizeWish): { readonly volumeMl: number; readonly cover: Cover } {
  const { count, certainty, use, losses, densityGPerMl, givenMl } = wish;
  const demand = demandOf(use, count, losses);
  const volumeMl = givenMl ?? batchFor(demand, certainty);
  // What is made for the count reaches a little further; what has a size of its own may reach much further.
  const furthest = givenMl === undefined ? FURTHEST * count : Math.max(FURTHEST * count, MOST_PIECES);
  const left = leftover(demand, volumeMl);
  const grams = (ml: number): number => ml * densityGPerMl;
  const cover: Cover = {
    unit: 'g',
    ...(givenMl === undefined ? {} : { given: true }),
    wantedCertainty: certainty,
    shortageChance: shortageChance(demand, volumeMl),
    leftover: { low: grams(left.low), likely: grams(left.likely), high: grams(left.high) },
    expectedLeftover: grams(left.mean),
    leftoverUses: [],
    sizes: comparedWith(certainty).map((c) => ({ certainty: c, amount: grams(batchFor(demand, c)) })),
    reaches: comparedWith(certainty).map((c) => ({
      certainty: c,
      pieces: piecesCovered(use, losses, volumeMl, c, furthest),
    })),
  };
  return { volumeMl, cover };
}

/** How many pieces of decor to have, so that enough are whole when they are set in. */
export function coverOfDecor(
  part: Pick<DecorPart, 'perPiece' | 'breakagePercent'>,
  count: number,
  certainty: number,
): { readonly made: number; readonly cover: Cover } {
  const { perPiece, breakagePercent } = part;
  const needed = perPiece * count;
  const made = piecesWithSpares(needed, breakagePercent, certainty);
  const spareAt = (q: number): number => Math.max(0, wholeAt(made, breakagePercent, q) - needed);
  const reached = (c: number): number =>
    mostThat(
      (pieces) => isSureEnough(chanceOfTooFew(perPiece * pieces, made, breakagePercent), c),
      FURTHEST * count,
    );
  const cover: Cover = {
    unit: 'pieces',
    wantedCertainty: certainty,
    shortageChance: chanceOfTooFew(needed, made, breakagePercent),
    leftover: { low: spareAt(0.1), likely: spareAt(0.5), high: spareAt(0.9) },
    expectedLeftover: expectedSpare(made, needed, breakagePercent),
    leftoverUses: [],
    sizes: comparedWith(certainty).map((c) => ({
      certainty: c,
      amount: piecesWithSpares(needed, breakagePercent, c),
    })),
    reaches: comparedWith(certainty).map((c) => ({ certainty: c, pieces: reached(c) })),
  };
  return { made, cover };
}

/** E[max(whole − needed, 0)] = Σ P(whole > needed + k), k from 0. */
function expectedSpare(made: number, needed: number, breakagePercent: number): number {
  let sum = 0;
  for (let enough = needed; enough < made; enough += 1) {
    sum += 1 - binomialCdf(enough, made, 1 - breakagePercent / 100);
  }
  return sum;
}

/** The number of whole pieces that is not exceeded with probability q. */
function wholeAt(made: number, breakagePercent: number, q: number): number {
  const whole = 1 - breakagePercent / 100;
  return mostThat((pieces) => binomialCdf(pieces - 1, made, whole) < q, made);
}

/** The largest number up to `most` for which something holds that stops holding as numbers grow; 0 if none. */
function mostThat(holds: (number: number) => boolean, most: number): number {
  let low = 0;
  let high = most;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

function comparedWith(certainty: number): number[] {
  return [...new Set([...COMPARED, certainty])].sort((a, b) => a - b);
}
