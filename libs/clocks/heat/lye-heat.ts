import { onLine } from './linear.js';

/** g/mol, from the standard atomic weights of IUPAC (2021, from memory). */
const NAOH = 39.997;
const KOH = 56.105;
const WATER = 18.015;

type Line = readonly (readonly [x: number, y: number])[];

/**
 * Heat that a mole of solid alkali gives off in so many moles of water at 25 °C, kJ: the stronger the lye, the less.
 * NaOH: 44.51 in endless water (Parker, NSRDS-NBS 2 (1965), as in the CRC Handbook, Enthalpy of Solution of Electrolytes; from memory),
 * less what diluting it that far gives off: 13.98, 8.44, 5.11, 0.37 and none from 3, 4, 5, 10 and 20 moles (Rossini et al., Selected
 * Values of Chemical Thermodynamic Properties, NBS Circular 500 (1952); from memory). That older collection has 42.87 in endless water,
 * as its solid alkali is 1.1 kJ too low beside later tables. It ends
 * at 3 moles; 23.9 in 2.22, lye of 50 %, is by the correlation of Olsson et al., Int. J. Thermophys. 18 (1997) 779. KOH: from memory, within 2 kJ; 57.6 in endless water is Parker, too.
 */
const naohInEndlessWater = 44.51;
const naohHeatOfSolution: Line = [
  [2.22, 23.9],
  [3, naohInEndlessWater - 13.98],
  [4, naohInEndlessWater - 8.44],
  [5, naohInEndlessWater - 5.11],
  [10, naohInEndlessWater - 0.37],
  [20, naohInEndlessWater],
];
const kohHeatOfSolution: Line = [
  [3, 42.5],
  [4, 46],
  [5, 49],
  [10, 53.5],
  [20, 55.5],
];

/** Specific heat of the solution, J/(g K), by per cent of alkali. From memory of handbooks of caustic soda and potash. */
const naohSpecificHeat: Line = [
  [20, 3.65],
  [30, 3.55],
  [40, 3.42],
  [50, 3.24],
];
const kohSpecificHeat: Line = [
  [20, 3.1],
  [30, 2.85],
  [40, 2.7],
  [50, 2.6],
];

/** Share of the heat that goes into the jug and off as steam while the lye is stirred. Common practice, no source. */
const LOST = 0.2;

/**
 * Heat that alkali gives off as it dissolves to lye of a strength, J for each gram of lye.
 *
 *     q(w) = w / M · ΔH(n)        n = (1 − w) / M(H2O) · M / w        M, ΔH: means of NaOH and KOH by moles
 *
 * @param lyePercent alkali as a share of alkali and water by mass, 15 to 52
 * @param kohSharePercent of the alkali that is KOH, by moles
 */
export function dissolvingHeatJPerG(lyePercent: number, kohSharePercent = 0): number {
  const [share, koh] = [lyePercent / 100, kohSharePercent / 100];
  const molar = (1 - koh) * NAOH + koh * KOH;
  const molWater = ((1 - share) / WATER) * (molar / share);
  const kJPerMol =
    (1 - koh) * onLine(naohHeatOfSolution, molWater) + koh * onLine(kohHeatOfSolution, molWater);
  return (share / molar) * kJPerMol * 1000;
}

/** Specific heat of lye, J/(g K): a mean by the mass of either alkali. Parameters as above. */
export function lyeSpecificHeat(lyePercent: number, kohSharePercent = 0): number {
  const koh = kohSharePercent / 100;
  const kohMass = (koh * KOH) / ((1 - koh) * NAOH + koh * KOH);
  return (1 - kohMass) * onLine(naohSpecificHeat, lyePercent) + kohMass * onLine(kohSpecificHeat, lyePercent);
}

/**
 * How warm lye is once it is stirred clear, °C: T = T_water + (1 − lost) · q / c.
 * @param lyePercent and kohSharePercent as above
 * @param waterC of the water it was stirred into
 * @param lost share of the heat that does not stay in the lye, 0 to 1
 */
export function freshLyeC(lyePercent: number, waterC: number, kohSharePercent = 0, lost = LOST): number {
  const risen =
    dissolvingHeatJPerG(lyePercent, kohSharePercent) / lyeSpecificHeat(lyePercent, kohSharePercent);
  return waterC + (1 - lost) * risen;
}
