import type { Part, SoapState } from '#contract';

/** States that only melted base has; everything else is soap. */
const ofGlaze: ReadonlySet<SoapState> = new Set(['glaze-set', 'glaze-turnable']);

/** Whether the clocks know a state of a kind of part; a wait for any other would wait for ever. */
export function stateHasClock(kind: Part['kind'], state: SoapState): boolean {
  if (kind === 'decor') return false;
  return ofGlaze.has(state) === (kind === 'melt-and-pour');
}
