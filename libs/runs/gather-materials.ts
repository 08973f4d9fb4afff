import type { GatherLine, GatherList, Material, WorkshopFacts } from '#contract';
import { cautionFor } from './cautions.js';
import { choosePacks, priceOf } from './choose-packs.js';
import { summed, type MaterialUse } from './materials-of.js';
import { byKey } from './workings.js';

/**
 * What to have before runs begin: needed together, on hand, to buy in whole packs.
 * Lye has lines of its own with its caution.
 * @param uses of each run, by its key
 */
export function gatherMaterials(
  uses: ReadonlyMap<string, readonly MaterialUse[]>,
  workshop: WorkshopFacts,
): GatherList {
  const known = byKey(workshop.materials ?? []);
  const lines = summed([...uses.values()].flat()).map((use) => lineOf(use, known.get(use.key)));
  const priced = lines.flatMap((line) => line.price ?? []);
  return {
    runs: [...uses.keys()],
    ...(workshop.currency === undefined ? {} : { currency: workshop.currency }),
    lines,
    ...(priced.length === 0 ? {} : { price: priced.reduce((sum, price) => sum + price, 0) }),
  };
}

function lineOf(use: MaterialUse, material: Material | undefined): GatherLine {
  // A material that is kept by the piece says nothing about grams, and the other way round.
  const stock = material?.unit === use.unit ? material : undefined;
  const onHand = stock?.onHand ?? 0;
  const toBuy = Math.max(0, use.amount - onHand);
  const packs = choosePacks(toBuy, stock?.packs ?? []);
  const price = packs.length === 0 ? undefined : priceOf(packs);
  return {
    key: use.key,
    title: material?.title ?? use.title,
    kind: use.kind,
    unit: use.unit,
    needed: use.amount,
    onHand,
    toBuy,
    packs,
    ...(price === undefined ? {} : { price }),
    cautions: use.kind === 'lye' ? [cautionFor('lye-keeping')] : [],
  };
}
