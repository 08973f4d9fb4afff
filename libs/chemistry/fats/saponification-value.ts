import { failed, ok, type Result } from '#units';
import { fattyAcidMolarMass, molarMass } from './molar-mass.js';

/**
 * Saponification value of a fat made only of triglycerides of the given acids:
 * SV = 3 · 1000 · M(KOH) / M(TG), M(TG) = 3 · M̄ + M(glycerol) − 3 · M(water), M̄ = Σw / Σ(wᵢ/Mᵢ) [S2].
 * Unsaponifiable matter and free acids are not in it, so real fats with much of the former need less.
 * @param fattyAcids mass shares of total fatty acids by short name; only their proportions count
 * @returns mg KOH per g
 * @throws RangeError on an unknown name, a negative share, or no share at all: check the fat first
 */
export function theoreticalSaponificationValue(fattyAcids: Readonly<Record<string, number>>): number {
  const triglyceride = 3 * meanMolarMass(fattyAcids) + molarMass.glycerol - 3 * molarMass.water;
  return (3 * 1000 * molarMass.koh) / triglyceride;
}

/**
 * Saponification value of free fatty acids, which is their acid value: SV = 1000 · M(KOH) / M̄ [S2].
 * @param fattyAcids as for `theoreticalSaponificationValue`
 * @returns mg KOH per g
 * @throws RangeError as there
 */
export function saponificationValueOfFreeAcids(fattyAcids: Readonly<Record<string, number>>): number {
  return (1000 * molarMass.koh) / meanMolarMass(fattyAcids);
}

/** A back titration: fat boiled with KOH, the rest of the KOH titrated, beside a blank without fat. */
export interface Titration {
  readonly sampleG: number;
  readonly blankMl: number;
  readonly backMl: number;
  readonly acidMolPerL: number;
}

/**
 * Saponification value of one lot from a titration: SV = (blank − back) · c · M(KOH) / m [S3].
 * A lot's own value beats any standard's range.
 * @returns mg KOH per g, or `titration.impossible` unless mass and strength are above 0 and the blank takes
 * at least as much acid as the sample
 */
export function saponificationValueByTitration(titration: Titration): Result<number> {
  const { sampleG, blankMl, backMl, acidMolPerL } = titration;
  if (sampleG > 0 && acidMolPerL > 0 && backMl >= 0 && blankMl >= backMl) {
    return ok(((blankMl - backMl) * acidMolPerL * molarMass.koh) / sampleG);
  }
  return failed({
    code: 'titration.impossible',
    path: [],
    value: titration,
  });
}

/** M̄ in g/mol: total mass over total amount. */
function meanMolarMass(fattyAcids: Readonly<Record<string, number>>): number {
  let mass = 0;
  let moles = 0;
  for (const [name, share] of Object.entries(fattyAcids)) {
    const molar = fattyAcidMolarMass(name);
    if (molar === undefined) throw new RangeError(`“${name}” is not a fatty acid such as C18:1`);
    if (!(share >= 0)) throw new RangeError(`the share of ${name} is ${String(share)}; accepted: 0 or more`);
    mass += share;
    moles += share / molar;
  }
  if (moles === 0) throw new RangeError('a fat without fatty acids has no theoretical saponification value');
  return mass / moles;
}
