import type { FatAllergen } from '../fats/fat-allergen.js';
import type { FatFacts } from '../fats/fat-facts.js';

/** How much a risk matters: a nuisance, a spoilt piece, a burn or a spoilt batch. */
export type RiskLevel = 'low' | 'medium' | 'high';

/** Something that may go wrong with a batch as it is written, with the figures behind it; shares in per cent. */
export type Risk = { readonly level: RiskLevel } & (
  | { readonly code: 'lye.strong' | 'lye.wet'; readonly lyePercent: number }
  | { readonly code: 'lye.little-superfat' | 'lye.much-superfat'; readonly superfatPercent: number }
  /** Lye that is left over with the leanest lots of the fats, and the superfat from which on none is. */
  | { readonly code: 'lye.lean-lot'; readonly leftOverPercent: number; readonly enoughPercent: number }
  | {
      readonly code:
        | 'lye.excess'
        | 'acid.takes-much'
        | 'sodium-lactate.much'
        | 'salt.much'
        | 'salt.bar'
        | 'fragrance.much';
      readonly percent: number;
    }
  /** What 1 g of lye is of all of it, and what the scales have to show. */
  | { readonly code: 'batch.small'; readonly gramPercent: number; readonly scalesG: number }
  | {
      readonly code: 'batter.too-cool';
      readonly fats: { readonly fat: string; readonly title: FatFacts['title'] }[];
      readonly batterTemperatureC: number;
      readonly enoughC: number;
    }
  | { readonly code: 'sugar.heats'; readonly percent: number; readonly belowC: number }
  /** Of the fats, and of the dry soap. */
  | {
      readonly code: 'fragrance.limit-unknown';
      readonly fragrance: string;
      readonly percent: number;
      readonly sharePercent: number;
    }
  /** The limit is for another kind of product. */
  | {
      readonly code: 'fragrance.limit-not-for-soap';
      readonly fragrance: string;
      readonly sharePercent: number;
      readonly category: string;
    }
  | {
      readonly code: 'fragrance.over-limit';
      readonly fragrance: string;
      readonly sharePercent: number;
      readonly limitPercent: number;
      /** Of the fats, rounded down so that the figure can be followed. */
      readonly allowedPercent: number;
    }
  /** Each is within its limit, and all together use up more than one. */
  | {
      readonly code: 'fragrance.over-together';
      readonly usedPercent: number;
      /** Of each dose as written, rounded down. */
      readonly allowedPercent: number;
    }
  | {
      readonly code: 'fragrance.seizes' | 'fragrance.rices' | 'fragrance.untried';
      readonly fragrance: string;
    }
  | {
      readonly code: 'fragrance.browns';
      /** Of the fats. */
      readonly vanillinPercent: number;
      readonly shade: 'cream' | 'tan' | 'brown';
    }
  | {
      readonly code: 'liquid.scorches' | 'liquid.boils-over' | 'liquid.spits' | 'liquid.spoils';
      readonly liquids: { readonly liquid: string; readonly title: string }[];
    }
  /** Of the fats, and the superfat that it makes. */
  | {
      readonly code: 'liquid.adds-fat';
      readonly fatPercent: number;
      readonly superfatPercent: number;
    }
  | { readonly code: 'colourant.much'; readonly colourant: string; readonly percent: number }
  /** Linoleic and linolenic acid, of the fats. */
  | { readonly code: 'fats.turn-rancid'; readonly percent: number }
  | {
      readonly code: 'fats.allergens';
      readonly fats: {
        readonly fat: string;
        readonly title: FatFacts['title'];
        readonly allergen: FatAllergen;
      }[];
    }
  | {
      readonly code: 'fats.advised-against';
      readonly fats: { readonly fat: string; readonly title: FatFacts['title'] }[];
    }
  /** The whole batch, what one person lifts, and into how many it would have to be split. */
  | {
      readonly code: 'batch.heavy';
      readonly massG: number;
      readonly liftsG: number;
      readonly batches: number;
    }
  | { readonly code: 'colourant.oil'; readonly superfatPercent: number }
  | { readonly code: 'addition.spoils' | 'addition.browns'; readonly addition: string }
  | { readonly code: 'addition.scorches'; readonly addition: string; readonly belowC: number }
);
