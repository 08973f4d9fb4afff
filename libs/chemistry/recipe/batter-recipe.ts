/** Water in a recipe: one quantity that is written in one of three ways. */
export interface WaterStatement {
  /** Pure alkali as a share of the lye solution, by mass. */
  readonly lyeConcentrationPercent?: number | undefined;
  /** Grams of water for each gram of alkali as weighed. */
  readonly waterPerLye?: number | undefined;
  /** Grams of water for each 100 g of fats. */
  readonly waterPercentOfFats?: number | undefined;
}

/** What carries a colourant into the batter. */
export type CarrierKind = 'fat' | 'water' | 'glycerol';
/** What else may go in, told apart by how dense it is and whether it spoils. */
export type AdditionKind =
  | 'clay'
  | 'honey'
  | 'dried-plant'
  | 'scrub'
  | 'powdered-milk'
  | 'fresh-food'
  | 'other';

export interface Colourant {
  readonly key: string;
  readonly title: string;
  /** Of the fats. */
  readonly percent: number;
  /** What it is stirred into first, in grams for each gram of it. */
  readonly carrier?:
    | {
        readonly kind: CarrierKind;
        readonly perGram: number;
        /** Which fat it is. */ readonly fat?: string | undefined;
      }
    | undefined;
}

export interface Addition {
  readonly key: string;
  readonly title: string;
  /** Of the fats. */
  readonly percent: number;
  readonly kind: AdditionKind;
}

/** What a fragrance does to the batter; only a test batch tells, so what was not tried is `unknown`. */
export type FragranceBehaviour =
  | 'none'
  | 'slowing'
  | 'mild'
  | 'brisk'
  | 'strong'
  | 'seizing'
  | 'ricing'
  | 'unknown';

export interface Fragrance {
  readonly key: string;
  readonly title: string;
  readonly kind?: 'fragrance-oil' | 'essential-oil' | undefined;
  /** Of the fats. */
  readonly percent: number;
  /** Most of it that the supplier allows in the finished product; absent: not known. */
  readonly supplierLimitPercent?: number | undefined;
  /** The IFRA category that limit is for; absent: 9, which soap belongs to. */
  readonly limitCategory?: string | undefined;
  /** Absent: unknown. */
  readonly behaviour?: FragranceBehaviour | undefined;
  /** Vanillin in the fragrance. */
  readonly vanillinPercent?: number | undefined;
  /** What its supplier's sheet names, per cent of the fragrance. */
  readonly allergens?: readonly { readonly name: string; readonly percent: number }[] | undefined;
}

/** An acid that takes alkali for itself; its figures stand in `lye/acids.ts`. */
export type AcidName = 'citric-acid' | 'citric-acid-monohydrate' | 'lactic-acid' | 'acetic-acid';

export interface AcidShare {
  readonly acid: AcidName;
  /** Of the fats, as weighed. */
  readonly percent: number;
  /** Acid in what is weighed: 5 for a vinegar, 100 for crystals. Needed for acids that are sold in water. */
  readonly strengthPercent?: number | undefined;
  /** The water it brings is left out of the lye. Absent: it comes on top. */
  readonly replacesWater?: boolean | undefined;
}

/** Acids that a liquid holds, or that its acidity is titrated as; their figures stand in `liquids/liquid-facts.ts`. */
export type LiquidAcid = 'lactic-acid' | 'acetic-acid' | 'citric-acid' | 'malic-acid' | 'tartaric-acid';

/** What a label tells of a liquid, g per 100 g; what is absent is 0, and water what is left. */
export interface OwnLiquid {
  readonly title: string;
  readonly waterPercent?: number | undefined;
  readonly fatPercent?: number | undefined;
  readonly sugarPercent?: number | undefined;
  readonly proteinPercent?: number | undefined;
  readonly saltPercent?: number | undefined;
  /** Alcohol that is in it when it goes in; it counts as water. */
  readonly alcoholPercent?: number | undefined;
  readonly acid?: { readonly acid: LiquidAcid; readonly percent: number } | undefined;
}

/** A liquid in place of water. Its water counts as water of the lye, wherever it goes in. */
export interface LiquidShare {
  /** Its key in the table, or among the materials where its figures are its own. */
  readonly liquid: string;
  /** Of all liquid of the recipe by mass, plain water included. */
  readonly percentOfLiquid?: number | undefined;
  /** Instead, beside fats that are in grams: it grows with them. */
  readonly grams?: number | undefined;
  /** Lye is dissolved in it, or it goes into the batter. Absent: the lye. */
  readonly addedTo?: 'lye' | 'batter' | undefined;
  /** In place of the table's figures. */
  readonly own?: OwnLiquid | undefined;
}

/** How much of a fat: its share of all of them, or grams; a recipe has all of its fats in one of the two. */
export interface FatAmount {
  readonly fat: string;
  readonly percent?: number | undefined;
  readonly grams?: number | undefined;
}

/** How large a batch is made: for the pieces, or as large as its fats in grams, all or one of them, say. */
export type BatchSize =
  | { readonly by: 'pieces' }
  | { readonly by: 'fats'; readonly grams: number }
  | { readonly by: 'fat'; readonly fat: string; readonly grams: number };

/** A cold-process batter in shares, as it is written down. */
export interface WrittenRecipe extends WaterStatement {
  /** By mass, as they stand to each other; shares make 100 % within half a per cent. */
  readonly fats: readonly FatAmount[];
  /** Absent: for the pieces. */
  readonly size?: BatchSize | undefined;
  /** Lye discount: the share of the alkali for full saponification that is left out. */
  readonly superfatPercent: number;
  /** Says that a superfat below 0 is no slip: the soap will be salted out, or neutralised, before it is used. */
  readonly lyeExcessIntended?: boolean | undefined;
  /** Why so much fat is left free; needed from 25 per cent on. */
  readonly superfatReason?: string | undefined;
  /** Share of the alkali that is KOH, by moles: the share of the fat that becomes potassium soap. Absent: 0. */
  readonly kohSharePercent?: number | undefined;
  /** NaOH in the flakes that are weighed. */
  readonly naohPurityPercent: number;
  /** NaOH is taken from a solution of this strength, per cent of pure NaOH by mass. Absent: from flakes. */
  readonly lyeStockPercent?: number | undefined;
  /** KOH in the flakes that are weighed; needed where there is KOH. */
  readonly kohPurityPercent?: number | undefined;
  readonly acids?: readonly AcidShare[] | undefined;
  readonly liquids?: readonly LiquidShare[] | undefined;
  /** 60 % sodium lactate solution, as a share of the fats; likewise salt and sugar. */
  readonly sodiumLactatePercent: number;
  readonly saltPercent: number;
  readonly sugarPercent: number;
  readonly fragrances?: readonly Fragrance[] | undefined;
  readonly colourants?: readonly Colourant[] | undefined;
  readonly additions?: readonly Addition[] | undefined;
  readonly batterTemperatureC: number;
}

/** A recipe whose water is told as a lye concentration: what amounts are worked out from. */
export type BatterRecipe = WrittenRecipe & { readonly lyeConcentrationPercent: number };
