import type { LiquidShare, OwnLiquid } from '../recipe/batter-recipe.js';
import type { LiquidFacts, LiquidFigures } from './liquid-facts.js';
import { liquidTable } from './liquid-table.js';

/** A liquid of a recipe as it counts: the table's, or by figures of the maker's own. */
export interface KnownLiquid extends Pick<LiquidFacts, 'key' | 'title' | 'figures'> {
  /** What the table tells besides; absent where the key is not in it. */
  readonly shipped?: LiquidFacts;
}

/** @returns undefined for a liquid that is not in the table and has no figures of its own */
export function knownLiquid({ liquid, own }: LiquidShare): KnownLiquid | undefined {
  const shipped = liquidTable.get(liquid);
  if (own === undefined) {
    return shipped && { key: liquid, title: shipped.title, figures: shipped.figures, shipped };
  }
  const known = { key: liquid, title: own.title, figures: figuresOf(own) };
  return shipped === undefined ? known : { ...known, shipped };
}

/** What a label tells, in the table's terms: water is what is left where it is not told. */
function figuresOf(own: OwnLiquid): LiquidFigures {
  const { fatPercent = 0, sugarPercent = 0, proteinPercent = 0, saltPercent = 0, acid } = own;
  const dry = fatPercent + sugarPercent + proteinPercent + saltPercent + (acid?.percent ?? 0);
  return {
    waterG: own.waterPercent ?? 100 - dry,
    ...{ fatG: fatPercent, sugarG: sugarPercent, proteinG: proteinPercent, saltG: saltPercent },
    ...(own.alcoholPercent === undefined ? {} : { alcoholG: own.alcoholPercent }),
    ...(acid === undefined ? {} : { acid: { acid: acid.acid, grams: acid.percent } }),
  };
}
