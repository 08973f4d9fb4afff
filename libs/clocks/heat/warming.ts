import type { Piece } from './piece-heat.js';

/** Layers from the middle to the surface, equally thick. */
const LAYERS = 6;
/** Share of the volume that each of them is, from the middle. */
export const layerShares: readonly number[] = Array.from(
  { length: LAYERS },
  (_, i) => ((i + 1) ** 3 - i ** 3) / LAYERS ** 3,
);

/** W/(m K) of a batter, between fat (0.17) and lye (0.55). From memory. */
const CONDUCTIVITY = 0.3;

/**
 * How fast a batter turns to soap: dX/dt = k(T) (X + x₀)(1 − X), a share X of the fats. Soap speeds its own making, as the curve of
 * batches tells (an S, in general texts; no constants were found). k at 40 °C is such that an ungelled batch at 20 °C is nine tenths
 * done after a day, and a warm loaf is hottest after two to three hours: common practice, no source. The energy of activation lies
 * between 42 (Shahla et al., Bioresource Technology 104 (2012) 1) and 60 kJ/mol (from memory).
 */
const PER_HOUR_AT_40 = 2;
const ACTIVATION_J_PER_MOL = 50_000;
const GAS = 8.314462618;
const SEED = 0.05;

/** Cool enough to be handled with bare hands, °C. Common practice, no source. */
export const HANDLED_C = 40;

/** What happens to a piece until it has cooled. */
export interface Warming {
  /** The highest temperature of each layer, from the middle, °C. */
  readonly highestC: readonly number[];
  /** When the middle is hottest, min. */
  readonly hottestMin: number;
  /** From when on the middle stays below `HANDLED_C`, min; 0 where it never was as warm. */
  readonly cooledMin: number;
}

/** A point of the curve. */
export interface WarmingPoint {
  readonly min: number;
  readonly middleC: number;
  readonly edgeC: number;
}

/** Steps are so long that no layer changes by more than about this, K. */
const STEP_K = 1.5;
const [FIRST_STEP_S, LONGEST_STEP_S] = [10, 3600];
const LONGEST_S = 14 * 24 * 3600;
/** From here on a batch warms itself no more. */
const MADE_SHARE = 0.9;

/**
 * Follows the temperature of a piece as it turns to soap: conduction from layer to layer and to what is around, and the heat of the
 * reaction in each. Conduction is taken at the end of a step (implicit Euler), the reaction by its own closed form, so that no
 * length of step runs away.
 * @param each is told the temperatures after every step
 */
export function warm(piece: Piece, each?: (point: WarmingPoint) => void): Warming {
  const temperatures = new Float64Array(LAYERS).fill(piece.startC);
  const made = new Float64Array(LAYERS);
  const highest = Float64Array.from(temperatures);
  const conduct = conduction(piece);
  let [timeS, stepS, hottestS, cooledS] = [0, FIRST_STEP_S, 0, piece.startC >= HANDLED_C ? Infinity : 0];
  each?.({ min: 0, middleC: piece.startC, edgeC: piece.startC });
  while (timeS < LONGEST_S) {
    const before = Float64Array.from(temperatures);
    react(temperatures, made, piece, stepS);
    conduct(temperatures, stepS);
    timeS += stepS;
    let most = 0;
    for (let i = 0; i < LAYERS; i++) {
      const now = temperatures[i]!;
      most = Math.max(most, Math.abs(now - before[i]!));
      if (now > highest[i]!) highest[i] = now;
    }
    const middle = temperatures[0]!;
    if (middle === highest[0] && middle > piece.startC) hottestS = timeS;
    if (middle >= HANDLED_C) cooledS = Infinity;
    else if (cooledS === Infinity) {
      cooledS = timeS - (stepS * (HANDLED_C - middle)) / (before[0]! - middle);
    }
    each?.({ min: timeS / 60, middleC: middle, edgeC: temperatures[LAYERS - 1]! });
    if (middle < HANDLED_C && made[0]! > MADE_SHARE) break;
    stepS = Math.min(LONGEST_STEP_S, stepS * Math.min(1.5, Math.max(0.3, STEP_K / Math.max(most, 1e-9))));
  }
  return { highestC: [...highest], hottestMin: hottestS / 60, cooledMin: Math.min(cooledS, LONGEST_S) / 60 };
}

/** Turns each layer on by a step at the temperature it has. */
function react(temperatures: Float64Array, made: Float64Array, piece: Piece, stepS: number): void {
  for (let i = 0; i < LAYERS; i++) {
    const kelvin = temperatures[i]! + 273.15;
    const perHour =
      piece.pace * PER_HOUR_AT_40 * Math.exp((ACTIVATION_J_PER_MOL / GAS) * (1 / 313.15 - 1 / kelvin));
    const grown =
      ((made[i]! + SEED) / (1 - made[i]! + 1e-12)) * Math.exp((perHour * (1 + SEED) * stepS) / 3600);
    const share = grown === Infinity ? 1 : (grown - SEED) / (1 + grown);
    temperatures[i]! += piece.ownRiseK * (share - made[i]!);
    made[i] = share;
  }
}

/** Conduction through the layers of a ball: a tridiagonal system, solved by elimination (Thomas). */
function conduction(piece: Piece): (temperatures: Float64Array, stepS: number) => void {
  const thick = piece.radiusM / LAYERS;
  const capacity = layerShares.map((share) => (share * piece.heatPerM3K * piece.radiusM) / 3);
  // For each m² of surface: what passes from a layer to the next for each K, and from the last to what is around.
  const between = Array.from({ length: LAYERS - 1 }, (_, i) => {
    const area = ((i + 1) / LAYERS) ** 2;
    return (area * CONDUCTIVITY) / thick;
  });
  const out = 1 / (1 / piece.lossWPerM2K + thick / 2 / CONDUCTIVITY);
  const [upper, right] = [new Float64Array(LAYERS), new Float64Array(LAYERS)];
  return (temperatures, stepS) => {
    for (let i = 0; i < LAYERS; i++) {
      const [inner, outer] = [between[i - 1] ?? 0, between[i] ?? out];
      const own = capacity[i]! / stepS;
      const rhs = own * temperatures[i]! + (i === LAYERS - 1 ? out * piece.aroundC : 0);
      const pivot = own + inner + outer - inner * (i === 0 ? 0 : upper[i - 1]!);
      upper[i] = i === LAYERS - 1 ? 0 : outer / pivot;
      right[i] = (rhs + inner * (i === 0 ? 0 : right[i - 1]!)) / pivot;
    }
    let after = 0;
    for (let i = LAYERS - 1; i >= 0; i--) {
      after = right[i]! + upper[i]! * after;
      temperatures[i] = after;
    }
  };
}
