import type { GatherLine, Material } from '#contract';

type Pack = Material['packs'][number];
type Chosen = GatherLine['packs'];

/**
 * Packs that together hold at least what is missing: the cheapest if all are priced, otherwise those that leave the
 * least over; then the fewest. Combinations of up to two sizes are compared, which is what a shop counter is like.
 * @returns none where nothing is missing or no pack is known
 */
export function choosePacks(missing: number, packs: readonly Pack[]): Chosen {
  if (missing <= 0 || packs.length === 0) return [];
  const priced = packs.every((pack) => pack.price !== undefined);
  const offers = packs.flatMap((first, i) =>
    packs.slice(i).flatMap((second) => fillings(missing, first, second)),
  );
  const [best] = offers
    .map((chosen) => ({ chosen, price: priceOf(chosen) ?? 0, holds: held(chosen), packs: counted(chosen) }))
    .sort((a, b) => (priced ? a.price - b.price : 0) || a.holds - b.holds || a.packs - b.packs);
  return best?.chosen ?? [];
}

/** What the packs cost together. @returns undefined where one has no price */
export function priceOf(packs: Chosen): number | undefined {
  let sum = 0;
  for (const { count, price } of packs) {
    if (price === undefined) return undefined;
    sum += count * price;
  }
  return sum;
}

/** Every number of the first pack that is not too many, filled up with the second. */
function fillings(missing: number, first: Pack, second: Pack): Chosen[] {
  const most = packsFor(missing, first.size);
  // A thousand packs of one size is no counter any more; the rest is then filled with the other size alone.
  return Array.from({ length: Math.min(most, 1000) + 1 }, (_, i) => {
    const count = most - i;
    const rest = missing - count * first.size;
    return [
      { ...first, count },
      { ...second, count: packsFor(rest, second.size) },
    ].filter((pack) => pack.count > 0);
  });
}

/** The slack keeps 3 × 0.1 of a kilogram, summed in binary, from asking for a second pack of 0.3. */
function packsFor(amount: number, size: number): number {
  return Math.max(0, Math.ceil(amount / size - 1e-9));
}

function held(packs: Chosen): number {
  return packs.reduce((sum, { size, count }) => sum + size * count, 0);
}

function counted(packs: Chosen): number {
  return packs.reduce((sum, { count }) => sum + count, 0);
}
