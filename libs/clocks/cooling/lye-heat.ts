import { onLine } from './linear.js';

/** g/mol, from the standard atomic weights of IUPAC (2021, from memory). */
const NAOH = 39.997;
const WATER = 18.015;

/**
 * Heat that a mole of solid NaOH gives off in so many moles of water at 25 °C, kJ: the stronger the lye, the less.
 * From memory of Rossini et al., Selected Values of Chemical Thermodynamic Properties, NBS Circular 500 (1952): enthalpies
 * of formation of NaOH in n H2O less that of the solid.
 */
const heatOfSolution: readonly (readonly [molWater: number, kJ: number])[] = [
  [3, 28.89],
  [4, 34.43],
  [5, 37.76],
  [10, 42.5],
  [20, 42.87],
];

/** Specific heat of the solution, J/(g K), by per cent of NaOH. From memory of handbooks of caustic soda. */
const specificHeat: readonly (readonly [percent: number, jPerGK: number])[] = [
  [20, 3.65],
  [30, 3.55],
  [40, 3.42],
  [50, 3.24],
];

/** Share of the heat that goes into the jug and off as steam while the lye is stirred. Common practice, no source. */
const LOST = 0.2;

/**
 * Heat that NaOH gives off as it dissolves to lye of a strength, J for each gram of lye.
 *
 *     q(w) = w / M(NaOH) · ΔH(n)        n = (1 − w) / M(H2O) · M(NaOH) / w
 *
 * @param lyePercent NaOH as a share of NaOH and water by mass, 15 to 52
 */
export function dissolvingHeatJPerG(lyePercent: number): number {
  const share = lyePercent / 100;
  const molWater = ((1 - share) / WATER) * (NAOH / share);
  return (share / NAOH) * onLine(heatOfSolution, molWater) * 1000;
}

/** Specific heat of lye, J/(g K). @param lyePercent as above */
function lyeSpecificHeat(lyePercent: number): number {
  return onLine(specificHeat, lyePercent);
}

/**
 * How warm lye is once it is stirred clear, °C: T = T_water + (1 − lost) · q / c. Other alkali is counted as NaOH.
 * @param lyePercent as above
 * @param waterC of the water it was stirred into
 */
export function freshLyeC(lyePercent: number, waterC: number): number {
  return waterC + ((1 - LOST) * dissolvingHeatJPerG(lyePercent)) / lyeSpecificHeat(lyePercent);
}
