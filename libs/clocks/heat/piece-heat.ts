import type { ClockInputs } from '../inputs.js';
import { batterSpecificHeat, type BatterMake } from './specific-heats.js';

/** How the mould stands: open, with a lid, wrapped in towels, or in a refrigerator. */
export type Kept = 'open' | 'covered' | 'wrapped' | 'chilled';

/** What the heat of a poured piece or loaf follows from. */
export interface PieceHeatInputs {
  /** What is cast in one cavity, mL; above 0. */
  readonly volumeMl: number;
  /** Its whole surface, cm²; absent: that of a loaf or bar of the volume. */
  readonly surfaceCm2?: number | undefined;
  readonly densityGPerMl: number;
  readonly mould: ClockInputs['mould'];
  /** Thickness of the mould's wall, mm, above 0; absent: what is usual for its kind. */
  readonly wallMm?: number | undefined;
  readonly kept: Kept;
  readonly batterTemperatureC: number;
  readonly roomTemperatureC: number;
  readonly make: BatterMake;
  /** Its lye was used up before, in the pot: it only cools. */
  readonly isMade?: boolean;
  /** How many times as fast as the usual batter it turns to soap, its temperature aside. */
  readonly pace: number;
  /** Sugar, honey and the sugar of milk, per cent of the fats. */
  readonly sugarPercent: number;
}

/** The piece as the balance sees it: a ball of the same volume to surface, in SI units. */
export interface Piece {
  readonly radiusM: number;
  /** ρ c, J/(m³ K). */
  readonly heatPerM3K: number;
  /** By how much its own reaction would warm it if it lost nothing, K. */
  readonly ownRiseK: number;
  /** Of its surface, W/(m² K). */
  readonly lossWPerM2K: number;
  readonly startC: number;
  readonly aroundC: number;
  readonly pace: number;
  /** At which it turns to gel, °C. */
  readonly gelC: number;
}

/** A loaf of 90 by 70 by 190 mm has a surface of 6.5 V^(2/3), a bar of 80 by 55 by 18 mm 7.4, a ball 4.8. */
const USUAL_FORM = 6.5;

/**
 * Heat of saponification, J for each gram of fat. Three moles of fatty acid neutralised give off 3 × 56 kJ for 880 g of fat, 190 J/g;
 * handbooks of soap making tell 270 (both from memory). Near the lower: with the upper every loaf would boil.
 */
const SAPONIFICATION_J_PER_G = 195;
/** What sugars add by turning brown in hot lye, J for each gram of fat and per cent. Common practice knows the direction, no source. */
const SUGAR_J_PER_G = 8;
const MOST_SUGAR_PERCENT = 5;

/** W/(m² K) of still air on a wall, convection and radiation together: textbooks of heat transfer tell 8 to 10 (from memory). */
const AIR = 9;
/** Open soap also loses water. Common practice, no source. */
const OPEN_TOP = 11;
const LID_TOP = 3.5;
/** Share of the surface that is the open top. */
const TOP_SHARE = 0.2;
/** Usual thickness of a wall, mm (common practice, no source), and its conductivity, W/(m K) (from memory). Towels: 16 mm of 0.04. */
const wallOf: Readonly<Record<ClockInputs['mould'], { readonly mm: number; readonly conductivity: number }>> =
  {
    'silicone-cavity': { mm: 2.5, conductivity: 0.2 },
    'lined-wood': { mm: 15, conductivity: 0.13 },
    'lined-carton': { mm: 4, conductivity: 0.06 },
    'rigid-plastic': { mm: 1.5, conductivity: 0.2 },
  };
const TOWELS = 0.016 / 0.04;
const REFRIGERATOR_C = 5;

/**
 * At which soap of a lye turns to gel, °C: the wetter, the sooner. Measured on a blend of coconut, palm, olive and castor oil: 71 °C with
 * lye of 33 %, 87 °C with 40 % (K. M. Dunn, Time and Temperature, 2018). Makers see gel from 60 °C on, in wet batters. Between them.
 */
const gelC = (lyePercent: number): number => 68 + 2 * (lyePercent - 33);

/** @throws RangeError for a volume, surface or pace that is none */
export function pieceOf(inputs: PieceHeatInputs): Piece {
  const { volumeMl, surfaceCm2 = USUAL_FORM * volumeMl ** (2 / 3), make, pace } = inputs;
  for (const value of [volumeMl, surfaceCm2, pace])
    if (!(value > 0 && value < Infinity))
      throw new RangeError(`${String(value)} is no size or pace of a piece`);
  const specific = batterSpecificHeat(make);
  const sugar = SUGAR_J_PER_G * Math.min(MOST_SUGAR_PERCENT, inputs.sugarPercent);
  return {
    radiusM: (3 * volumeMl) / surfaceCm2 / 100,
    heatPerM3K: inputs.densityGPerMl * 1e6 * specific,
    ownRiseK: inputs.isMade === true ? 0 : (make.fatsShare * (SAPONIFICATION_J_PER_G + sugar)) / specific,
    lossWPerM2K: lossOf(inputs),
    startC: inputs.batterTemperatureC,
    aroundC: aroundC(inputs),
    pace,
    gelC: gelC(make.lyePercent),
  };
}

/** How warm it is around a piece, °C. */
export function aroundC({
  kept,
  roomTemperatureC,
}: Pick<PieceHeatInputs, 'kept' | 'roomTemperatureC'>): number {
  return kept === 'chilled' ? REFRIGERATOR_C : roomTemperatureC;
}

function lossOf({ mould, kept, wallMm }: Pick<PieceHeatInputs, 'mould' | 'kept' | 'wallMm'>): number {
  const { mm, conductivity } = wallOf[mould];
  const wall = (wallMm ?? mm) / 1000 / conductivity;
  const towels = kept === 'wrapped' ? TOWELS : 0;
  const sides = 1 / (1 / AIR + wall + towels);
  const top = kept === 'open' || kept === 'chilled' ? OPEN_TOP : 1 / (1 / LID_TOP + towels);
  return (1 - TOP_SHARE) * sides + TOP_SHARE * top;
}
