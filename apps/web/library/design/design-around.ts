import type { Mould, Recipe, WorkshopFacts } from '#contract';

/** What a design refers to. */
export interface DesignAround {
  readonly recipes: readonly Recipe[];
  readonly moulds: readonly Mould[];
  readonly workshop: WorkshopFacts;
}
