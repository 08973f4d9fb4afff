import { normalCdf, normalQuantile } from '#units';
import { pieceOf, type Piece, type PieceHeatInputs } from './piece-heat.js';
import { layerShares, warm, type Warming, type WarmingPoint } from './warming.js';

/** What becomes of a piece by its own heat. */
export interface HeatBalance {
  /** Chances, together 1, that it goes through gel wholly, only in its middle, or not at all. */
  readonly gel: { readonly whole: number; readonly part: number; readonly none: number };
  /** The share of it that is expected to gel, 0 to 1. */
  readonly gelShare: number;
  /** Chance that its middle gets so hot that it cracks, rises or boils. */
  readonly overheats: number;
  /** The highest temperature of its middle, °C: eight times in ten between low and high. */
  readonly hottestC: { readonly low: number; readonly likely: number; readonly high: number };
  /** When it is hottest, where all is as is likely; 0 where it only cools, min. */
  readonly hottestMin: number;
  /** When it can be handled, min, on average over what is not known; 0 where it never is as warm. */
  readonly cooledMin: number;
  /** From here on it is gel, °C. */
  readonly gelC: number;
}

/** What is not known, as standard deviations. Our own judgement, from what is told of each beside its value. */
const spread = { lnPace: 0.25, rise: 0.1, lnLoss: 0.2, startK: 2, gelK: 5, overheatsK: 4 } as const;
/** Hotter than this in the middle a loaf cracks and rises, near 100 °C it boils out of its mould. Common practice, no source. */
const OVERHEATS_C = 90;

/**
 * Equally likely values of what is not known: the first points of an additive sequence of the plastic number in four dimensions
 * (Roberts; from memory), each through the normal quantile. Fixed, so that an answer is the same each time and moves with its inputs.
 */
const DRAWS = 16;
const draws: readonly (readonly [number, number, number, number])[] = Array.from(
  { length: DRAWS },
  (_, i) => {
    const at = (power: number): number =>
      normalQuantile((0.5 + (i + 1) * (1 / 1.1673039782614187) ** power) % 1);
    return [at(1), at(2), at(3), at(4)];
  },
);

/**
 * Whether a poured piece gels and overheats, and when it has cooled: the mean over what is not known of its warming.
 * @throws RangeError for a size or pace that is none
 */
export function heatBalance(inputs: PieceHeatInputs): HeatBalance {
  const piece = pieceOf(inputs);
  const warmings = draws.map((draw) => warm(drawnPiece(piece, draw)));
  const gelled = (layer: number): number =>
    mean(warmings, ({ highestC }) => normalCdf(((highestC[layer] ?? NaN) - piece.gelC) / spread.gelK));
  const layers = layerShares.map((_, layer) => gelled(layer));
  const [any = 0, whole = 0] = [layers[0], layers.at(-1)];
  const hottest = warmings.map(({ highestC }) => highestC[0] ?? NaN).sort((a, b) => a - b);
  const usual = warm(piece);
  return {
    gel: { whole, part: any - whole, none: 1 - any },
    gelShare: layers.reduce((sum, chance, layer) => sum + chance * (layerShares[layer] ?? 0), 0),
    overheats: mean(warmings, ({ highestC }) =>
      normalCdf(((highestC[0] ?? NaN) - OVERHEATS_C) / spread.overheatsK),
    ),
    hottestC: {
      low: hottest[Math.round(0.1 * (DRAWS - 1))] ?? NaN,
      likely: usual.highestC[0] ?? NaN,
      high: hottest[Math.round(0.9 * (DRAWS - 1))] ?? NaN,
    },
    hottestMin: usual.hottestMin,
    cooledMin: mean(warmings, (each) => each.cooledMin),
    gelC: piece.gelC,
  };
}

/** Points of a curve are at least this share of it apart. */
const CURVE_POINTS = 60;

/** The temperature of a piece where all is as is likely, from the pour until it has cooled; at most some sixty points. */
export function heatCurve(inputs: PieceHeatInputs): WarmingPoint[] {
  const points: WarmingPoint[] = [];
  warm(pieceOf(inputs), (point) => points.push(point));
  const last = points.at(-1)?.min ?? 0;
  let next = 0;
  return points.filter(({ min }) => {
    if (min < next && min < last) return false;
    next = min + last / CURVE_POINTS;
    return true;
  });
}

function drawnPiece(piece: Piece, [pace, rise, loss, start]: (typeof draws)[number]): Piece {
  return {
    ...piece,
    pace: piece.pace * Math.exp(spread.lnPace * pace),
    ownRiseK: piece.ownRiseK * (1 + spread.rise * rise),
    lossWPerM2K: piece.lossWPerM2K * Math.exp(spread.lnLoss * loss),
    startC: piece.startC + spread.startK * start,
  };
}

function mean(warmings: readonly Warming[], of: (warming: Warming) => number): number {
  return warmings.reduce((sum, each) => sum + of(each), 0) / warmings.length;
}
