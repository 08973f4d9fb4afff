import type { Recipe } from '#contract';

/** A recipe whose water is told as a lye concentration, however it was written. */
export type Batter = Recipe & { readonly lyeConcentrationPercent: number };
