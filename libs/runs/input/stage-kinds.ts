import type { StageKind } from '#contract';
import type { CautionCode } from '#contract';

/** What the planner and the bench need to know of a kind of stage. */
export interface StageKindFacts {
  /** It turns a recipe, melt-and-pour base or dough into its part; the part's clocks start at its end. */
  readonly makes: boolean;
  /** It frees the mould that holds its part. */
  readonly frees: boolean;
  /** Shown at every stage of the kind. */
  readonly cautions: readonly CautionCode[];
}

/** One row per kind of stage. To add a kind: a name in the contract, a row here, and its test. */
export const stageKindFacts: Readonly<Record<StageKind, StageKindFacts>> = {
  'press-decor': { makes: true, frees: false, cautions: ['caution.fresh-soap'] },
  pour: { makes: true, frees: false, cautions: ['caution.lye'] },
  layer: { makes: true, frees: false, cautions: ['caution.lye'] },
  unmould: { makes: false, frees: true, cautions: ['caution.fresh-soap'] },
  patch: { makes: false, frees: false, cautions: ['caution.fresh-soap'] },
  dip: { makes: true, frees: false, cautions: ['caution.lye'] },
  pipe: { makes: true, frees: false, cautions: ['caution.lye'] },
  'set-in': { makes: false, frees: false, cautions: ['caution.fresh-soap'] },
  glaze: { makes: true, frees: false, cautions: ['caution.hot-base', 'caution.alcohol'] },
  turn: { makes: false, frees: false, cautions: ['caution.fresh-soap'] },
  cut: { makes: false, frees: false, cautions: ['caution.fresh-soap'] },
  stamp: { makes: false, frees: false, cautions: ['caution.fresh-soap'] },
  wrap: { makes: false, frees: false, cautions: [] },
};
