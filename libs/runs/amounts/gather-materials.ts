import type { GatherLine, GatherList, Material, WorkshopFacts } from '#contract';
import { choosePacks, priceOf } from './choose-packs.js';
import { summed, type MaterialUse } from './materials-of.js';
import { byKey } from '../input/by-key.js';

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
  const needed = summed([...uses.values()].flat());
  // Two things can go by one key, two unnamed fragrances for one; the stock is there once.
  const left = new Map([...known].map(([key, material]) => [key, material.onHand]));
  const lines = needed.map((use) => {
    const line = lineOf(use, known.get(use.key), left.get(use.key) ?? 0);
    left.set(use.key, Math.max(0, (left.get(use.key) ?? 0) - use.amount));
    return line;
  });
  const used = new Set(
    lines.filter((line) => line.unit === (known.get(line.key)?.unit ?? line.unit)).map((l) => l.key),
  );
  const priced = lines.flatMap((line) => line.price ?? []);
  return {
    runs: [...uses.keys()],
    ...(workshop.currency === undefined ? {} : { currency: workshop.currency }),
    lines,
    unused: [...known.keys()].filter((key) => !used.has(key)),
    ...(priced.length === 0 ? {} : { price: priced.reduce((sum, price) => sum + price, 0) }),
  };
}

function lineOf(use: MaterialUse, material: Material | undefined, left: number): GatherLine {
  // A material that is kept by the piece says nothing about grams, and the other way round.
  const stock = material?.unit === use.unit ? material : undefined;
  const onHand = stock === undefined ? 0 : left;
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
    cautions: use.kind === 'lye' ? [{ code: 'caution.lye-keeping' }] : [],
  };
}
