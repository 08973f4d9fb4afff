import { shippedFats } from './table/shipped-fats.js';
import type { FatFacts } from './fat-facts.js';

/**
 * All fats a recipe may name. The maker's own fat replaces a shipped one with the same key, because a
 * supplier's sheet or a titration says more about the lot on the shelf than a standard does. It keeps the
 * shipped one's tags and names: shea butter from a sheet is still a butter to the rules that treat butters alike, is
 * found by the same words, and stands on the label alike unless its sheet names it otherwise.
 * @param own fats of the workshop; a later one replaces an earlier one with the same key
 */
export function fatTable(own: readonly FatFacts[]): ReadonlyMap<string, FatFacts> {
  const table = new Map<string, FatFacts>(shippedFats.map((fat) => [fat.key, fat]));
  for (const fat of own) {
    table.set(fat.key, namedAs(table.get(fat.key), fat));
  }
  return table;
}

function namedAs(shipped: FatFacts | undefined, fat: FatFacts): FatFacts {
  if (shipped === undefined) return fat;
  const { tags, aliases, inci, soapInci, evidence } = shipped;
  return {
    ...(tags !== undefined && { tags }),
    ...(aliases !== undefined && { aliases }),
    ...(inci !== undefined && { inci }),
    ...(soapInci !== undefined && { soapInci }),
    ...fat,
    evidence: {
      ...(evidence.inci !== undefined && { inci: evidence.inci }),
      ...(evidence.soapInci !== undefined && { soapInci: evidence.soapInci }),
      ...fat.evidence,
    },
  };
}
