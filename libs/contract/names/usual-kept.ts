import type { keptWays, mouldKinds } from './recipe-names.js';

/** How a mould stands after the pour where nobody says it: loaves get a lid or a board against ash. Common practice, no source. */
export function usualKept(kind: (typeof mouldKinds)[number]): (typeof keptWays)[number] {
  return kind === 'lined-wood' || kind === 'lined-carton' ? 'covered' : 'open';
}
