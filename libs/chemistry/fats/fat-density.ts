import type { FatFacts } from './fat-facts.js';

/** What a liquid triglyceride loses in density per °C, g/mL [S5, Eq. 1]; from 24 °C or melting to 110 °C. */
export const triglycerideExpansionGPerMlPerC = 0.00064;

/** Density of water, g/mL, at the temperatures that relative densities refer to [S6]. */
export const waterDensityGPerMl = { at4: 0.99997, at15: 0.9991, at20: 0.99821, at25: 0.99704 } as const;

/**
 * Density of a fat as a liquid: ρ(t) = ρ(20) − e · (t − 20), with the fat's own expansion e.
 * Within 0.003 g/mL of the standards for triglycerides. For waxes and fatty acids the expansion is borrowed;
 * they are a few per cent of a batter, so an error of 5 % in theirs moves the batch by a tenth of a per cent.
 * @param temperatureC 0 to 110
 * @returns g/mL
 * @throws RangeError outside that range
 */
export function fatDensity(
  fat: Pick<FatFacts, 'densityGPerMl' | 'expansionGPerMlPerC'>,
  temperatureC: number,
): number {
  return carryDensity(fat.densityGPerMl, 20, temperatureC, fat.expansionGPerMlPerC);
}

/**
 * Density of a triglyceride oil from its analysis, by Lund's relation and the expansion above [S5, Eqs. 1, 2]:
 * relative density 15/15 °C = 0.8475 + 0.00030 · SV + 0.00014 · IV. Not for castor oil or waxes.
 * @param saponificationValue mg KOH/g
 * @param iodineValue g iodine per 100 g
 * @param temperatureC 0 to 110
 * @returns g/mL
 */
export function lundDensity(saponificationValue: number, iodineValue: number, temperatureC: number): number {
  const relative = 0.8475 + 0.0003 * saponificationValue + 0.00014 * iodineValue;
  return carryDensity(relative * waterDensityGPerMl.at15, 15, temperatureC);
}

/** The density at another temperature; without an expansion of its own, along that of triglycerides. */
export function carryDensity(
  densityGPerMl: number,
  fromC: number,
  toC: number,
  expansionGPerMlPerC: number = triglycerideExpansionGPerMlPerC,
): number {
  if (!(toC >= 0 && toC <= 110)) throw new RangeError(`${String(toC)} °C; accepted: 0 to 110 °C`);
  return densityGPerMl - expansionGPerMlPerC * (toC - fromC);
}
