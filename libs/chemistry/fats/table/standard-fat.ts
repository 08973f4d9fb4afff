import type { Evidence } from '#units';
import type { FatEvidence, FatFacts, FatKind, FatTag, Limits } from '../fat-facts.js';
import {
  carryDensity,
  lundDensity,
  triglycerideExpansionGPerMlPerC,
  waterDensityGPerMl,
} from '../fat-density.js';
import { borrowedExpansion, expansionOfTriglycerides, inciDictionary, practice } from './sources.js';

/** A published range, both limits included. */
export type Range = readonly [low: number, high: number];

/** A fat as standards describe it: ranges, and a density at whatever temperature the standard chose. */
export interface StandardFat {
  readonly key: string;
  readonly title: string;
  readonly inci?: string;
  /** Left out for triglycerides. */
  readonly kind?: FatKind;
  readonly saponification: Range;
  /** g iodine per 100 g; where no density is published, it is needed to work one out. */
  readonly iodine?: Range;
  /** Per cent. */
  readonly unsaponifiable?: Range;
  /** To water, with both temperatures. */
  readonly relativeDensity?: {
    readonly range: Range;
    readonly sampleC: number;
    readonly waterC: 4 | 20 | 25;
  };
  readonly acids: Readonly<Record<string, Range>>;
  readonly tags?: readonly FatTag[];
  readonly behaviour: string;
  readonly evidence: FigureSources;
}

/** Where the figures of a standard fat were read or recalled; `figures` stands for what is not named. */
export interface FigureSources {
  readonly figures: Evidence;
  readonly saponification?: Evidence;
  readonly iodine?: Evidence;
  readonly density?: Evidence;
  readonly fattyAcids?: Evidence;
}

/** A shipped fat always says what it does. */
export type ShippedFatFacts = FatFacts & {
  readonly behaviour: string;
  readonly evidence: { readonly behaviour: Evidence };
};

/**
 * One figure for each published range.
 * - Saponification value used: the middle of the range, not the value from the profile. It is one rule for
 *   all fats and rests on measured values, unsaponifiable matter included; it lies within 4 % of the profile's
 *   value (shea: 7 % below it) and for most fats on its safe, lower side. The low end is up to 8 % lower
 *   still (shea 10 %, beeswax 9 %), and the superfat has to cover that way.
 * - Profile: middles of the ranges, scaled to 100 %. A standard's middle is no lot's profile.
 * - Density: middle of the range, made absolute with water's and carried to 20 °C; without a published
 *   density, Lund's relation at the middles of saponification and iodine value.
 * @throws Error when neither density nor iodine value is given: a fault in the table
 */
export function fromStandard(fat: StandardFat): ShippedFatFacts {
  const { low, high } = limits(fat.saponification);
  return {
    key: fat.key,
    title: fat.title,
    ...(fat.inci === undefined ? {} : { inci: fat.inci }),
    kind: fat.kind ?? 'triglyceride',
    saponificationMgKohPerG: { low, used: middle(fat.saponification), high },
    ...(fat.iodine === undefined ? {} : { iodine: limits(fat.iodine) }),
    ...(fat.unsaponifiable === undefined ? {} : { unsaponifiablePercent: limits(fat.unsaponifiable) }),
    fattyAcidsPercent: profile(fat.acids),
    densityGPerMl: densityAt20(fat),
    expansionGPerMlPerC: triglycerideExpansionGPerMlPerC,
    behaviour: fat.behaviour,
    ...(fat.tags === undefined ? {} : { tags: fat.tags }),
    evidence: evidence(fat),
  };
}

function profile(acids: StandardFat['acids']): Record<string, number> {
  const middles = Object.entries(acids).map(([name, range]) => [name, middle(range)] as const);
  const sum = middles.reduce((total, [, share]) => total + share, 0);
  return Object.fromEntries(middles.map(([name, share]) => [name, (100 * share) / sum]));
}

function densityAt20(fat: StandardFat): number {
  if (fat.relativeDensity !== undefined) {
    const { range, sampleC, waterC } = fat.relativeDensity;
    return carryDensity(middle(range) * waterDensityGPerMl[`at${waterC}`], sampleC, 20);
  }
  if (fat.iodine === undefined) throw new Error(`${fat.key}: no density and no iodine value`);
  return lundDensity(middle(fat.saponification), middle(fat.iodine), 20);
}

function evidence(fat: StandardFat): FatEvidence & { readonly behaviour: Evidence } {
  const { figures, saponification = figures, iodine = figures, density = figures } = fat.evidence;
  return {
    saponification,
    density: fat.relativeDensity === undefined ? byLund(saponification, iodine) : density,
    expansion: fat.kind === undefined ? expansionOfTriglycerides : borrowedExpansion,
    ...(Object.keys(fat.acids).length === 0 ? {} : { fattyAcids: fat.evidence.fattyAcids ?? figures }),
    ...(fat.iodine === undefined ? {} : { iodine }),
    ...(fat.unsaponifiable === undefined ? {} : { unsaponifiable: saponification }),
    ...(fat.inci === undefined ? {} : { inci: inciDictionary }),
    behaviour: practice,
  };
}

/** A figure worked out is as well known as the worse of what it was worked out from. */
function byLund(saponification: Evidence, iodine: Evidence): Evidence {
  const kind =
    saponification.kind === 'published' && iodine.kind === 'published' ? 'published' : 'from memory';
  return { kind, source: 'the saponification and iodine values, by Lund’s relation [S5]' };
}

function limits([low, high]: Range): Limits {
  return { low, high };
}

function middle([low, high]: Range): number {
  return (low + high) / 2;
}
