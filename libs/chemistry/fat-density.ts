import type { FatFacts } from './fat-facts.js';

/** Change of a liquid fat's density per °C, g/mL [S5, Eq. 1]; measured from 24 °C or melting to 110 °C. */
const SLOPE_G_PER_ML_PER_C = -0.00064;

/** Density of water, g/mL, at the temperatures that relative densities refer to [S6]. */
export const waterDensityGPerMl = { at15: 0.9991, at20: 0.99821, at25: 0.99704 } as const;

/**
 * Density of a fat as a liquid: ρ(t) = ρ(20) − 0.00064 · (t − 20) [S5].
 * Within 0.003 g/mL of the standards for triglycerides. For waxes the slope is borrowed; they are a few
 * per cent of a batter, so an error of 5 % in theirs moves the batch by a tenth of a per cent.
 * @param temperatureC 0 to 110
 * @returns g/mL
 * @throws RangeError outside that range
 */
export function fatDensity(fat: Pick<FatFacts, 'densityGPerMl'>, temperatureC: number): number {
  return carryDensity(fat.densityGPerMl, 20, temperatureC);
}

/**
 * Density of a triglyceride oil from its analysis, by Lund's relation and the slope above [S5, Eqs. 1 and 2]:
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

/** The density at another temperature, along the published slope. */
export function carryDensity(densityGPerMl: number, fromC: number, toC: number): number {
  if (!(toC >= 0 && toC <= 110)) throw new RangeError(`${String(toC)} °C; accepted: 0 to 110 °C`);
  return densityGPerMl + SLOPE_G_PER_ML_PER_C * (toC - fromC);
}
