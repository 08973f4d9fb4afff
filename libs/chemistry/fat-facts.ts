import type { Evidence } from '#units';

/** Where a fat belongs, for rules that treat such fats alike. */
export type FatTag = 'butter' | 'olive' | 'olive-pomace' | 'castor' | 'wax';

/** What is known of one fat. */
export interface FatFacts {
  readonly key: string;
  readonly title: string;
  /** Name for the label, from memory of the INCI dictionary: the supplier's sheet decides. */
  readonly inci?: string;
  /**
   * mg KOH per g of fat. `low` and `high` are limits, `used` is what amounts are worked out with. The low
   * end is the safe one: lye made for a higher value than the lot has stays in the soap.
   */
  readonly saponificationMgKohPerG: { readonly low: number; readonly used: number; readonly high: number };
  /** Mass share of total fatty acids by short name (`C18:1`); empty for a wax. */
  readonly fattyAcidsPercent: Readonly<Record<string, number>>;
  /** As a liquid at 20 °C; for a fat that is solid there, its liquid density carried down by the slope of S5. */
  readonly densityGPerMl: number;
  readonly tags?: readonly FatTag[];
  readonly source: string;
  readonly evidence: Evidence;
}
