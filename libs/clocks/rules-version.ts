import { floorList, ruleList, stateList } from './rule-list.js';

/**
 * Names the rules, floors and states as they are: another name when any of them is another. For telling that something was worked
 * out by rules of another time.
 */
export function rulesVersion(states = stateList(), rules = ruleList(), floors = floorList()): string {
  return fingerprint(JSON.stringify([states, rules, floors]));
}

/** FNV-1a, 32 bits: G. Fowler, L. C. Noll, K.-P. Vo, D. Eastlake, draft-eastlake-fnv (constants from memory). */
function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (const character of text) hash = Math.imul(hash ^ (character.codePointAt(0) ?? 0), 0x01000193);
  return (hash >>> 0).toString(16).padStart(8, '0');
}
