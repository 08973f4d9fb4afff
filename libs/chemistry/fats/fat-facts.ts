import type { Evidence } from '#units';

/**
 * What a fat is made of, which decides what its saponification value follows from: esters of glycerol,
 * esters of long alcohols, or acids that are free already.
 */
export type FatKind = 'triglyceride' | 'wax' | 'fatty-acid';

/** Where a fat belongs, for rules that treat such fats alike. */
export type FatTag = 'butter' | 'olive' | 'olive-pomace' | 'castor' | 'lard' | 'soft-wax';

/** Limits, both included. */
export interface Limits {
  readonly low: number;
  readonly high: number;
}

/** What is known of one fat. */
export interface FatFacts {
  readonly key: string;
  readonly title: string;
  /** Name for the label: the supplier's sheet decides. */
  readonly inci?: string;
  /** Name of its sodium soap for the label; a wax has none. */
  readonly soapInci?: string;
  /** What else it is called, in any language, to be found by. */
  readonly aliases?: readonly string[];
  readonly kind: FatKind;
  /**
   * mg KOH per g of fat. `low` and `high` are limits, `used` is what amounts are worked out with. The low
   * end is the safe one: lye made for a higher value than the lot has stays in the soap.
   */
  readonly saponificationMgKohPerG: Limits & { readonly used: number };
  /** g of iodine per 100 g: how unsaturated the fat is. */
  readonly iodine?: Limits;
  /** Share of the fat that no lye turns into soap. */
  readonly unsaponifiablePercent?: Limits;
  /** Mass share of total fatty acids by short name (`C18:1`); empty for a wax. */
  readonly fattyAcidsPercent: Readonly<Record<string, number>>;
  /** As a liquid at 20 °C; for a fat that is solid there, its liquid density carried down by its expansion. */
  readonly densityGPerMl: number;
  /** How much the density falls for each °C, a positive number. */
  readonly expansionGPerMlPerC: number;
  /** What it does in batter and bar, for people. */
  readonly behaviour?: string;
  readonly tags?: readonly FatTag[];
  /** The maker has looked again: what `questionsAbout` asks is as the sheet says. */
  readonly confirmed?: boolean;
  readonly evidence: FatEvidence;
}

/** Where each figure comes from; a figure that is not given needs none. */
export interface FatEvidence {
  readonly saponification: Evidence;
  readonly density: Evidence;
  readonly expansion: Evidence;
  readonly fattyAcids?: Evidence;
  readonly iodine?: Evidence;
  readonly unsaponifiable?: Evidence;
  readonly inci?: Evidence;
  readonly soapInci?: Evidence;
  readonly behaviour?: Evidence;
}
