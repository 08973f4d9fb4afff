import type { FatFacts } from './fat-facts.js';

/** What a fat comes from that people are known to react to. */
export type FatAllergen = 'tree-nut' | 'peanut' | 'soya' | 'sesame' | 'wheat' | 'mustard' | 'wool';

/**
 * The plant, as the label names it, by what it counts as. Plants: those of Regulation (EU) No 1169/2011, Annex II, which is
 * for food; soap has no such list, and people ask all the same. Wool wax is a known contact allergen (“wool alcohols” of
 * the European baseline series of patch tests, from memory).
 */
const plants: readonly (readonly [start: string, allergen: FatAllergen])[] = [
  ['prunus amygdalus', 'tree-nut'],
  ['corylus', 'tree-nut'],
  ['juglans', 'tree-nut'],
  ['anacardium', 'tree-nut'],
  ['carya', 'tree-nut'],
  ['bertholletia', 'tree-nut'],
  ['pistacia vera', 'tree-nut'],
  ['macadamia', 'tree-nut'],
  ['arachis', 'peanut'],
  ['glycine', 'soya'],
  ['hydrogenated soybean', 'soya'],
  ['sesamum', 'sesame'],
  ['triticum', 'wheat'],
  ['sinapis', 'mustard'],
  ['brassica nigra', 'mustard'],
  ['lanolin', 'wool'],
  ['adeps lanae', 'wool'],
];

/** What people may react to in a fat, by its name for the label; undefined where it has none or nothing is known. */
export function fatAllergen({ inci }: Pick<FatFacts, 'inci'>): FatAllergen | undefined {
  const name = inci?.trim().toLowerCase() ?? '';
  return plants.find(([start]) => name.startsWith(start))?.[1];
}
