import fc from 'fast-check';
import {
  acids,
  allergenNames,
  shippedFats,
  type AcidName,
  type BatchAmounts,
  type BatterRecipe,
} from '#chemistry';

const share = (high: number) => fc.double({ min: 0, max: high, noNaN: true });

/** Any sound recipe: up to six fats, both alkalis, acids and everything else that may go in. */
export const anyRecipe: fc.Arbitrary<BatterRecipe> = fc
  .record({
    keys: fc.uniqueArray(fc.constantFrom(...shippedFats.map(({ key }) => key)), {
      minLength: 1,
      maxLength: 6,
    }),
    weights: fc.array(fc.integer({ min: 1, max: 100 }), { minLength: 6, maxLength: 6 }),
    lyeConcentrationPercent: fc.double({ min: 20, max: 50, noNaN: true }),
    superfatPercent: share(25),
    kohSharePercent: fc.oneof(fc.constant(0), share(100), fc.constant(100)),
    kohPurityPercent: fc.double({ min: 80, max: 100, noNaN: true }),
    naohPurityPercent: fc.double({ min: 80, max: 100, noNaN: true }),
    acids: fc.array(
      fc.record({
        acid: fc.constantFrom(...(Object.keys(acids) as AcidName[])),
        percent: share(3),
        strengthPercent: fc.double({ min: 5, max: 100, noNaN: true }),
      }),
      { maxLength: 2 },
    ),
    sodiumLactatePercent: share(5),
    saltPercent: share(100),
    sugarPercent: share(5),
    fragrances: fc.array(
      fc.record({
        key: fc.constant('fragrance'),
        title: fc.constant('Fragrance'),
        percent: share(3),
        allergens: fc.array(fc.record({ name: fc.constantFrom(...allergenNames), percent: share(30) }), {
          maxLength: 3,
        }),
      }),
      { maxLength: 3 },
    ),
    colourants: fc.array(
      fc.record({
        key: fc.constant('colour'),
        title: fc.constant('Colour'),
        percent: share(3),
        carrier: fc.option(
          fc.record({ kind: fc.constantFrom('fat', 'water', 'glycerol'), perGram: share(5) }),
          { nil: undefined },
        ),
      }),
      { maxLength: 3 },
    ),
    additions: fc.array(
      fc.record({
        key: fc.constant('addition'),
        title: fc.constant('Addition'),
        percent: share(10),
        kind: fc.constantFrom('clay', 'honey', 'scrub', 'fresh-food', 'other'),
      }),
      { maxLength: 3 },
    ),
    batterTemperatureC: fc.double({ min: 20, max: 75, noNaN: true }),
  })
  .map(({ keys, weights, ...rest }) => {
    const sum = keys.reduce((total, _, index) => total + (weights[index] ?? 0), 0);
    return {
      ...rest,
      fats: keys.map((fat, index) => ({ fat, percent: (100 * (weights[index] ?? 0)) / sum })),
    };
  });

/** Everything that is weighed for a batch, added up from its named ingredients. */
export function weighedTogether(
  b: Omit<BatchAmounts, 'liquids'> & Partial<Pick<BatchAmounts, 'liquids'>>,
): number {
  const total = (masses: readonly { readonly massG: number }[]): number =>
    masses.reduce((sum, { massG }) => sum + massG, 0);
  return (
    total(b.fats) +
    b.naohG +
    b.kohG +
    b.waterG +
    total(b.liquids ?? []) +
    total(b.acids) +
    b.sodiumLactateG +
    b.saltG +
    b.sugarG +
    total(b.fragrances) +
    total(b.colourants) +
    total(b.colourants.flatMap(({ carrier }) => carrier ?? [])) +
    total(b.additions)
  );
}
