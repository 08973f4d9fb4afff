import type { ClockInput, Influence, SoapState } from '#contract';
import type { Texts } from './words.js';

/** How things are called that many sentences speak of. */
export interface Names {
  readonly states: Readonly<Record<SoapState, StateName>>;
  /** What hurried or slowed a change of state, fit for “slower, because …”: “the batter is cool (29 °C)”. */
  readonly influences: Readonly<Record<ClockInput, (read: Influence, texts: Texts) => string>>;
}

export interface StateName {
  /** What the soap is once the state has come, or until then where it closes a window; fits “the base is …”. */
  readonly is: string;
  /** From when its clock counts, after a length of time: `after the end of the pour`. */
  readonly after: string;
}
