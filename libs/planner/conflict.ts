/**
 * A minimal part of `candidates` that still conflicts: leave out any one of the result and no conflict is left.
 * Deletion filter (Chinneck and Dravnieks, "Locating minimal infeasible constraint sets in linear programs",
 * ORSA Journal on Computing 3 (1991) 157-168; cited from memory), first in large bites, then one by one.
 * @param conflicts must hold for `candidates`, and for every superset of a set for which it holds
 */
export function minimalConflict<T>(
  candidates: readonly T[],
  conflicts: (part: readonly T[]) => boolean,
): T[] {
  let kept = [...candidates];
  for (let bite = Math.ceil(kept.length / 2); bite >= 1; bite = bite === 1 ? 0 : Math.ceil(bite / 2)) {
    for (let at = 0; at < kept.length;) {
      const without = [...kept.slice(0, at), ...kept.slice(at + bite)];
      if (conflicts(without)) kept = without;
      else at += bite;
    }
  }
  return kept;
}
