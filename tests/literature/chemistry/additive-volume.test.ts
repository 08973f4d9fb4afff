import { describe, expect, it } from 'vitest';
import { batchForFats, fatTable, type BatterRecipe, type Colourant } from '#chemistry';
import { plainRecipe } from '../../support/plain-recipe.js';
import { scent } from '../../support/scent.js';

type CarrierKind = NonNullable<Colourant['carrier']>['kind'];

const bare: BatterRecipe = { ...plainRecipe, fats: [{ fat: 'olive', percent: 100 }] };

/** Grams over millilitres that one addition puts on a batch of a kilogram of fats. */
function densityOf(addition: Partial<BatterRecipe>, before: Partial<BatterRecipe> = {}): number {
  const without = batchForFats({ ...bare, ...before }, fatTable([]), 1000);
  const withIt = batchForFats({ ...bare, ...addition }, fatTable([]), 1000);
  if (!without.ok || !withIt.ok) throw new Error('the recipe was refused');
  return (withIt.value.batchG - without.value.batchG) / (withIt.value.batchMl - without.value.batchMl);
}

/** What each addition adds to the volume, against a source other than the one its density came from. */
describe('room for', () => {
  it.each<[string, Partial<BatterRecipe>, number, number]>([
    // Trade specifications of the 60 % solution at 20 °C: 1.31 to 1.34 g/mL.
    ['sodium lactate', { sodiumLactatePercent: 3 }, 1.31, 1.34],
    // Mineralogy handbooks, halite: 2.16 to 2.17 g/mL; from memory.
    ['salt', { saltPercent: 50 }, 2.16, 2.17],
    // Sugar-technology handbooks, sucrose crystals: 1.58 to 1.59 g/mL; from memory.
    ['sugar', { sugarPercent: 2 }, 1.58, 1.59],
    // Common practice, no source: fragrance and essential oils lie between 0.85 and 1.10 g/mL.
    ['fragrance', { fragrances: [scent({ percent: 4 })] }, 0.85, 1.1],
  ])('%s', (_, addition, low, high) => {
    expect(densityOf(addition)).toBeGreaterThanOrEqual(low);
    expect(densityOf(addition)).toBeLessThanOrEqual(high);
  });

  const mica = { key: 'blue', title: 'Blue mica', percent: 1 };

  it.each<[CarrierKind, number, number]>([
    // VDI Heat Atlas at 20 °C: 1261.2 kg/m³.
    ['glycerol', 1.2602, 1.2622],
    // IAPWS-95 at 20 °C: 998.2 kg/m³.
    ['water', 0.9972, 0.9992],
    // Codex CXS 33, olive oil, relative density 0.910 to 0.916 at 20 °C; CXS 210, seed oils up to 0.926; from memory.
    ['fat', 0.91, 0.926],
  ])('the %s that a colourant is stirred into', (kind, low, high) => {
    const stirred = { colourants: [{ ...mica, carrier: { kind, perGram: 3 } }] };
    const carrier = densityOf(stirred, { colourants: [mica] });
    expect(carrier).toBeGreaterThanOrEqual(low);
    expect(carrier).toBeLessThanOrEqual(high);
  });

  it.each<[string, Partial<BatterRecipe>, number, number]>([
    // Mineralogy handbooks, muscovite: 2.76 to 3.0 g/mL; from memory.
    ['mica', { colourants: [mica] }, 2.76, 3],
    // Mineralogy handbooks, kaolinite: 2.6 to 2.65 g/mL; from memory.
    ['clay', { additions: [{ key: 'clay', title: 'Clay', percent: 2, kind: 'clay' }] }, 2.6, 2.65],
  ])('%s', (_, addition, low, high) => {
    expect(densityOf(addition)).toBeGreaterThanOrEqual(low - 1e-9);
    expect(densityOf(addition)).toBeLessThanOrEqual(high + 1e-9);
  });
});
