/** Atomic weights and the molar masses that saponification needs, in g/mol. */

/**
 * Molar mass of a fatty acid by its short name.
 * `C18:1` (carbons : double bonds) is CₙH₂₍ₙ₋d₎O₂; `ricinoleic` is the hydroxy acid C₁₈H₃₄O₃ of castor oil;
 * `abietic` stands for the resin acids C₂₀H₃₀O₂ of rosin.
 * @returns g/mol, or undefined when the name is none of these
 */
export function fattyAcidMolarMass(name: string): number | undefined {
  if (name === 'ricinoleic') return molarMassOf({ C: 18, H: 34, O: 3 });
  if (name === 'abietic') return molarMassOf({ C: 20, H: 30, O: 2 });
  const match = /^C(\d{1,2}):(\d)$/.exec(name);
  if (match === null) return undefined;
  const carbons = Number(match[1]);
  const doubleBonds = Number(match[2]);
  return carbons >= 4 && 2 * doubleBonds < carbons
    ? molarMassOf({ C: carbons, H: 2 * (carbons - doubleBonds), O: 2 })
    : undefined;
}

/** Standard atomic weights 2021, abridged [S1]. */
const atomic = { H: 1.008, C: 12.011, O: 15.999, Na: 22.98976928, K: 39.0983 } as const;

/** Molar masses of what saponification uses and yields, g/mol, from the atomic weights. */
export const molarMass = {
  naoh: atomic.Na + atomic.O + atomic.H,
  koh: atomic.K + atomic.O + atomic.H,
  water: molarMassOf({ H: 2, O: 1 }),
  glycerol: molarMassOf({ C: 3, H: 8, O: 3 }),
} as const;

/** Grams of pure NaOH that do the work of one gram of pure KOH: 0.71289. */
export const naohPerKoh = molarMass.naoh / molarMass.koh;

/** Molar mass of a compound of carbon, hydrogen and oxygen, g/mol. */
export function molarMassOf({ C = 0, H = 0, O = 0 }: { C?: number; H?: number; O?: number }): number {
  return C * atomic.C + H * atomic.H + O * atomic.O;
}
