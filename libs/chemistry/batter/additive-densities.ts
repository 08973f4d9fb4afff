import { restG, type LiquidFigures } from '../liquids/liquid-facts.js';
import type { AcidName, AdditionKind, CarrierKind } from '../recipe/batter-recipe.js';

/**
 * Densities of what goes in besides fats and lye, g/mL, not corrected for heat.
 * Salt and sugar count with the volume of their crystals. Dissolved they take less room, so a batch with 2 % of
 * salt is counted 0.2 % too large; the salt of a salt bar mostly stays crystals.
 */
export const densityOf = {
  /** 60 % solution, 20 °C [S14]. */
  sodiumLactate: 1.3131,
  /** Sodium chloride, crystals; from memory of S6. */
  salt: 2.165,
  /** Sucrose, crystals; from memory of S6. */
  sugar: 1.5805,
  /** Fragrance and essential oils lie between 0.85 and 1.10; common practice, no source. */
  fragrance: 0.95,
  /** Mica, 2.7 to 2.9 (from memory of S6); oxides are denser, and there is less of them. */
  colourant: 2.8,
} as const;

/** Liquid that a colourant is stirred into. Glycerol at 20 °C and water [S6]; a vegetable oil [S5]. */
export const carrierDensity: Readonly<Record<CarrierKind, number>> = {
  fat: 0.916,
  water: 0.998,
  glycerol: 1.2613,
};

/** From memory of S6 for kaolin; honey of 17 % water, 1.42 (from memory); the rest common practice, no source: near water, wetted by the batter. */
export const additionDensity: Readonly<Record<AdditionKind, number>> = {
  clay: 2.6,
  honey: 1.42,
  'dried-plant': 1,
  scrub: 1.1,
  'powdered-milk': 1.2,
  'fresh-food': 1,
  other: 1,
};

/** The acids without water, g/mL; from memory of S6. */
const pureAcid: Readonly<Record<AcidName, number>> = {
  'citric-acid': 1.665,
  'citric-acid-monohydrate': 1.542,
  'lactic-acid': 1.21,
  'acetic-acid': 1.049,
};

/** An acid as it is weighed, volumes of acid and water being additive: near water for a vinegar. */
export function acidDensity(acid: AcidName, strengthPercent: number): number {
  const strength = strengthPercent / 100;
  return 1 / (strength / pureAcid[acid] + (1 - strength) / carrierDensity.water);
}

/** What a liquid holds besides water, g/mL: fat as of a vegetable oil, the rest as above; protein and fibre common practice, no source. */
const solidDensity = { fat: 0.916, sugar: 1.5805, protein: 1.35, salt: 2.165, acid: 1.4, rest: 1.5 } as const;

/** Of all that a liquid holds besides water, volumes being additive. @returns 1 for plain water */
export function liquidSolidsDensity(figures: LiquidFigures): number {
  const { fatG, sugarG, proteinG, saltG, acid } = figures;
  const parts = [
    [fatG, solidDensity.fat],
    [sugarG, solidDensity.sugar],
    [proteinG, solidDensity.protein],
    [saltG, solidDensity.salt],
    [acid?.grams ?? 0, solidDensity.acid],
    [Math.max(0, restG(figures)), solidDensity.rest],
  ] as const;
  const massG = parts.reduce((sum, [each]) => sum + each, 0);
  return massG > 0 ? massG / parts.reduce((sum, [each, density]) => sum + each / density, 0) : 1;
}
