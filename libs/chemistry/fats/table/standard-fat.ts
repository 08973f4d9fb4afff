import type { Evidence } from '#units';
import type { FatEvidence, FatFacts, FatKind, FatTag, Limits } from '../fat-facts.js';
import {
  carryDensity,
  lundDensity,
  triglycerideExpansionGPerMlPerC,
  waterDensityGPerMl,
} from '../fat-density.js';
import { saponificationValueOfFreeAcids, theoreticalSaponificationValue } from '../saponification-value.js';
import { fatAliases } from './fat-aliases.js';
import { soapInci } from './soap-inci.js';
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
    readonly waterC: 4 | 15 | 20 | 25;
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
  readonly aliases: readonly string[];
  readonly evidence: { readonly behaviour: Evidence };
};

/** Where the middle of a range lies this far above what the profile gives, it is the range that misleads. */
const MOST_ABOVE_PROFILE = 1.01;

/**
 * One figure for each published range.
 * - Saponification value used: the middle of the range, for it rests on measured values, unsaponifiable matter
 *   included. It lies within 4 % of the profile's value (shea: 7 % below it) and for most fats on its safe, lower
 *   side. Where it is more than 1 % above the profile's value, lye worked out with it would be too much for the usual
 *   lot: then the profile's value is used, to a tenth, or the low end where that is higher. The low end is up to 8 %
 *   below what is used (laurel berry, shea, beeswax, rosin: 10 %; candelilla wax: 20 %), and the superfat has to
 *   cover that way.
 * - Profile: middles of the ranges, scaled to 100 %. A standard's middle is no lot's profile.
 * - Density: middle of the range, made absolute with water's and carried to 20 °C; without a published
 *   density, Lund's relation at the middles of saponification and iodine value.
 * - Names of the soap and for finding: `soapInci`, `fatAliases`.
 * @throws Error when neither density nor iodine value is given: a fault in the table
 */
export function fromStandard(fat: StandardFat): ShippedFatFacts {
  const { low, high } = limits(fat.saponification);
  const soap = soapInci(fat.key);
  return {
    key: fat.key,
    title: fat.title,
    ...(fat.inci === undefined ? {} : { inci: fat.inci }),
    ...(soap === undefined ? {} : { soapInci: soap.name }),
    aliases: fatAliases[fat.key] ?? [],
    kind: fat.kind ?? 'triglyceride',
    saponificationMgKohPerG: { low, used: usedSaponification(fat), high },
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

function usedSaponification(fat: StandardFat): number {
  const middleOfRange = middle(fat.saponification);
  if (fat.kind === 'wax') return middleOfRange;
  const acids = profile(fat.acids);
  const ofProfile =
    fat.kind === 'fatty-acid' ? saponificationValueOfFreeAcids(acids) : theoreticalSaponificationValue(acids);
  if (middleOfRange <= ofProfile * MOST_ABOVE_PROFILE) return middleOfRange;
  return Math.max(fat.saponification[0], Math.round(10 * ofProfile) / 10);
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
  const soap = soapInci(fat.key);
  return {
    saponification,
    density: fat.relativeDensity === undefined ? byLund(saponification, iodine) : density,
    expansion: fat.kind === undefined ? expansionOfTriglycerides : borrowedExpansion,
    ...(Object.keys(fat.acids).length === 0 ? {} : { fattyAcids: fat.evidence.fattyAcids ?? figures }),
    ...(fat.iodine === undefined ? {} : { iodine }),
    ...(fat.unsaponifiable === undefined ? {} : { unsaponifiable: saponification }),
    ...(fat.inci === undefined ? {} : { inci: inciDictionary }),
    ...(soap === undefined ? {} : { soapInci: soap.evidence }),
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
