import type { Evidence } from '#units';
import type { FatFacts, FatTag } from '../fat-facts.js';
import { carryDensity, lundDensity, waterDensityGPerMl } from '../fat-density.js';

/** A published range, both limits included. */
export type Range = readonly [low: number, high: number];

/** A fat as standards describe it: ranges, and a density at whatever temperature the standard chose. */
export interface StandardFat {
  readonly key: string;
  readonly title: string;
  readonly inci?: string;
  readonly saponification: Range;
  /** g iodine per 100 g; needed only where no density is published. */
  readonly iodine?: Range;
  /** To water, with both temperatures. */
  readonly relativeDensity?: { readonly range: Range; readonly sampleC: number; readonly waterC: 20 | 25 };
  readonly acids: Readonly<Record<string, Range>>;
  readonly tags?: readonly FatTag[];
  readonly source: string;
  readonly evidence: Evidence['kind'];
}

/**
 * One figure for each published range.
 * - Saponification value used: the middle of the range, not the value from the profile. It is one rule for
 *   all fats and rests on measured values, unsaponifiable matter included; it lies within 4 % of the profile's
 *   value (shea: 7 % below it) and for most fats on its safe, lower side. The low end is up to 6 % lower
 *   still (shea 10 %, beeswax 9 %), and the superfat has to cover that way.
 * - Profile: middles of the ranges, scaled to 100 %. A standard's middle is no lot's profile.
 * - Density: middle of the range, made absolute with water's and carried to 20 °C; without a published
 *   density, Lund's relation at the middles of saponification and iodine value.
 * @throws Error when neither density nor iodine value is given: a fault in the table
 */
export function fromStandard(fat: StandardFat): FatFacts {
  const [low, high] = fat.saponification;
  return {
    key: fat.key,
    title: fat.title,
    ...(fat.inci === undefined ? {} : { inci: fat.inci }),
    saponificationMgKohPerG: { low, used: middle(fat.saponification), high },
    fattyAcidsPercent: profile(fat.acids),
    densityGPerMl: densityAt20(fat),
    ...(fat.tags === undefined ? {} : { tags: fat.tags }),
    source: fat.source,
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
    const water = waterC === 20 ? waterDensityGPerMl.at20 : waterDensityGPerMl.at25;
    return carryDensity(middle(range) * water, sampleC, 20);
  }
  if (fat.iodine === undefined) throw new Error(`${fat.key}: no density and no iodine value`);
  return lundDensity(middle(fat.saponification), middle(fat.iodine), 20);
}

function evidence(fat: StandardFat): Evidence {
  return fat.evidence === 'common practice'
    ? { kind: fat.evidence }
    : { kind: fat.evidence, source: fat.source };
}

function middle([low, high]: Range): number {
  return (low + high) / 2;
}
