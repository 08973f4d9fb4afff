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
/** Hotter than this a batter does not get: its water boils off. From memory. */
const BOILS_C = 102;

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

/** The usual step: half of it moves the highest temperatures by less than half a degree. */
const STEP_K = 1.5;
/** Less than this is no rise: extrapolation leaves a breath of it. */
const NOISE_K = 0.001;
const [FIRST_STEP_S, LONGEST_STEP_S] = [10, 3600];
const LONGEST_S = 14 * 24 * 3600;
/** From here on a batch warms itself no more. */
const MADE_SHARE = 0.9;

/**
 * Follows the temperature of a piece as it turns to soap: conduction from layer to layer and to what is around, and the heat of the
 * reaction in each. Conduction is taken at the end of a step (implicit Euler, extrapolated) and the reaction by its own closed form,
 * so that no length of step runs away; half of the reaction goes before the conduction and half after it (Strang's splitting).
 * @param each is told the temperatures after every step
 * @param stepK steps are so long that no layer changes by more than about this, K
 */
export function warm(piece: Piece, each?: (point: WarmingPoint) => void, stepK = STEP_K): Warming {
  const temperatures = new Float64Array(LAYERS).fill(piece.startC);
  const made = new Float64Array(LAYERS);
  const highest = Float64Array.from(temperatures);
  const conduct = extrapolated(conduction(piece));
  let [timeS, stepS, hottestS, cooledS] = [0, FIRST_STEP_S, 0, piece.startC >= HANDLED_C ? Infinity : 0];
  each?.({ min: 0, middleC: piece.startC, edgeC: piece.startC });
  while (timeS < LONGEST_S) {
    const before = Float64Array.from(temperatures);
    react(temperatures, made, piece, stepS / 2);
    conduct(temperatures, stepS);
    react(temperatures, made, piece, stepS / 2);
    timeS += stepS;
    let most = 0;
    for (let i = 0; i < LAYERS; i++) {
      const now = temperatures[i]!;
      most = Math.max(most, Math.abs(now - before[i]!));
      if (now < highest[i]! + NOISE_K) continue;
      highest[i] = now;
      if (i === 0) hottestS = timeS;
    }
    const middle = temperatures[0]!;
    if (middle >= HANDLED_C) cooledS = Infinity;
    else if (cooledS === Infinity) {
      cooledS = timeS - (stepS * (HANDLED_C - middle)) / (before[0]! - middle);
    }
    each?.({ min: timeS / 60, middleC: middle, edgeC: temperatures[LAYERS - 1]! });
    if (middle < HANDLED_C && made[0]! > MADE_SHARE) break;
    stepS = Math.min(LONGEST_STEP_S, stepS * Math.min(1.5, Math.max(0.3, stepK / Math.max(most, 1e-9))));
  }
  return { highestC: [...highest], hottestMin: hottestS / 60, cooledMin: Math.min(cooledS, LONGEST_S) / 60 };
}

/** Turns each layer on by a step at the temperature that it has half-way through it. */
function react(temperatures: Float64Array, made: Float64Array, piece: Piece, stepS: number): void {
  for (let i = 0; i < LAYERS; i++) {
    const [startC, before] = [temperatures[i]!, made[i]!];
    const halfwayC = startC + piece.ownRiseK * (madeAfter(before, startC, piece.pace, stepS / 2) - before);
    const after = madeAfter(before, halfwayC, piece.pace, stepS);
    temperatures[i] = Math.min(BOILS_C, startC + piece.ownRiseK * (after - before));
    made[i] = after;
  }
}

/** The share that is soap after a while at one temperature. */
function madeAfter(made: number, tempC: number, pace: number, whileS: number): number {
  const perHour =
    pace * PER_HOUR_AT_40 * Math.exp((ACTIVATION_J_PER_MOL / GAS) * (1 / 313.15 - 1 / (tempC + 273.15)));
  const grown = ((made + SEED) / (1 - made + 1e-12)) * Math.exp((perHour * (1 + SEED) * whileS) / 3600);
  return grown === Infinity ? 1 : (grown - SEED) / (1 + grown);
}

/** Twice the result of two half steps less that of one whole step: the error that goes with the step drops out, and nothing runs away. */
function extrapolated(conduct: Conduct): Conduct {
  const whole = new Float64Array(LAYERS);
  return (temperatures, stepS) => {
    whole.set(temperatures);
    conduct(whole, stepS);
    conduct(temperatures, stepS / 2);
    conduct(temperatures, stepS / 2);
    for (let i = 0; i < LAYERS; i++) temperatures[i] = 2 * temperatures[i]! - whole[i]!;
  };
}

type Conduct = (temperatures: Float64Array, stepS: number) => void;

/** Conduction through the layers of a ball: a tridiagonal system, solved by elimination (Thomas). */
function conduction(piece: Piece): Conduct {
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
