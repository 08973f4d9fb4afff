import { shippedFats } from './fats/shipped-fats.js';
import type { FatFacts } from './fat-facts.js';

/**
 * All fats a recipe may name. The maker's own fat replaces a shipped one with the same key, because a
 * supplier's sheet or a titration says more about the lot on the shelf than a standard does.
 * @param own fats of the workshop; a later one replaces an earlier one with the same key
 */
export function fatTable(own: readonly FatFacts[]): ReadonlyMap<string, FatFacts> {
  return new Map([...shippedFats, ...own].map((fat) => [fat.key, fat]));
}
