/** A cold-process batter in shares: as much of a recipe as its amounts and profile depend on. */
export interface BatterRecipe {
  /** Shares of all fats, by mass; together 100 %. */
  readonly fats: readonly { readonly fat: string; readonly percent: number }[];
  /** Pure NaOH as a share of the lye solution, by mass. */
  readonly lyeConcentrationPercent: number;
  /** Lye discount: the share of the NaOH for full saponification that is left out. */
  readonly superfatPercent: number;
  /** NaOH in the flakes that are weighed. */
  readonly naohPurityPercent: number;
  /** 60 % sodium lactate solution, as a share of the fats; likewise salt, sugar, fragrance. */
  readonly sodiumLactatePercent: number;
  readonly saltPercent: number;
  readonly sugarPercent: number;
  readonly fragrance?: { readonly percent: number } | undefined;
  readonly batterTemperatureC: number;
}
