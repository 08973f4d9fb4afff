/** Atomic weights and the molar masses that saponification needs, in g/mol. */

/**
 * Molar mass of a fatty acid by its short name.
 * `C18:1` (carbons : double bonds) is CₙH₂₍ₙ₋d₎O₂; `ricinoleic` is the hydroxy acid C₁₈H₃₄O₃ of castor oil.
 * @returns g/mol, or undefined when the name is neither
 */
export function fattyAcidMolarMass(name: string): number | undefined {
  if (name === 'ricinoleic') return ofFormula(18, 34, 3);
  const match = /^C(\d{1,2}):(\d)$/.exec(name);
  if (match === null) return undefined;
  const carbons = Number(match[1]);
  const doubleBonds = Number(match[2]);
  return carbons >= 4 && 2 * doubleBonds < carbons
    ? ofFormula(carbons, 2 * (carbons - doubleBonds), 2)
    : undefined;
}

/** Standard atomic weights 2021, abridged [S1]. */
const atomic = { H: 1.008, C: 12.011, O: 15.999, Na: 22.98976928, K: 39.0983 } as const;

/** Molar masses of what saponification uses and yields, g/mol, from the atomic weights. */
export const molarMass = {
  naoh: atomic.Na + atomic.O + atomic.H,
  koh: atomic.K + atomic.O + atomic.H,
  water: ofFormula(0, 2, 1),
  glycerol: ofFormula(3, 8, 3),
} as const;

/** Grams of pure NaOH that do the work of one gram of pure KOH: 0.71289. */
export const naohPerKoh = molarMass.naoh / molarMass.koh;

function ofFormula(carbon: number, hydrogen: number, oxygen: number): number {
  return carbon * atomic.C + hydrogen * atomic.H + oxygen * atomic.O;
}
