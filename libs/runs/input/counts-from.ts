import { states, type ClockName, type StateId } from '#clocks';

/** What a state counts from: the making of its part, what ends its stay in the mould, or a stage of its batch. */
export type Beginning = 'making' | 'unmoulding' | 'make-lye' | 'melt-fats' | 'mix' | 'cook';

const beginnings: Readonly<Record<ClockName, Beginning>> = {
  lye: 'make-lye',
  fats: 'melt-fats',
  batter: 'mix',
  paste: 'cook',
  set: 'making',
  cure: 'unmoulding',
};

/** From when a state counts. */
export function countsFrom(state: StateId): Beginning {
  return beginnings[states[state].clock];
}
