import { states, type StateId } from '#clocks';

/** From when a state counts: the making of its part, or what ends its stay in the mould. */
export function countsFrom(state: StateId): 'making' | 'unmoulding' {
  return states[state].clock === 'cure' ? 'unmoulding' : 'making';
}
