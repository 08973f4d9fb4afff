import { shippedFats } from './table/shipped-fats.js';
import type { FatFacts } from './fat-facts.js';

/**
 * All fats a recipe may name. The maker's own fat replaces a shipped one with the same key, because a
 * supplier's sheet or a titration says more about the lot on the shelf than a standard does. It keeps the
 * shipped one's tags: shea butter from a sheet is still a butter to the rules that treat butters alike.
 * @param own fats of the workshop; a later one replaces an earlier one with the same key
 */
export function fatTable(own: readonly FatFacts[]): ReadonlyMap<string, FatFacts> {
  const table = new Map<string, FatFacts>(shippedFats.map((fat) => [fat.key, fat]));
  for (const fat of own) {
    const tags = fat.tags ?? table.get(fat.key)?.tags;
    table.set(fat.key, tags === undefined ? fat : { ...fat, tags });
  }
  return table;
}
