import type { PartReference, SoapState } from '#contract';

/** What is forecast: a part of a run and what becomes of it. */
export interface Forecasted {
  readonly part: PartReference;
  readonly state: SoapState;
}
