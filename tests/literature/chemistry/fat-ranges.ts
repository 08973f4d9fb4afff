/** Limits of the standards, typed from their tables and not from ours, for the tests of the shipped fats. */

export type Ends = readonly [low: number, high: number];

export interface PublishedFat {
  readonly key: string;
  /** mg KOH/g. */
  readonly saponification: Ends;
  /** g/100 g; an end that the standard leaves open is infinite. */
  readonly iodine: Ends;
  /** To water at `waterC`, of the fat at `sampleC`. */
  readonly density: Ends;
  readonly sampleC: number;
  readonly waterC: 20 | 25;
}

type Row = readonly [
  key: string,
  saponification: Ends,
  iodine: Ends,
  density: Ends,
  sampleC: number,
  waterC?: 25,
];

const open = Infinity;

/** Codex CXS 210-1999, Named Vegetable Oils, as amended to 2022, Table 2. */
const vegetableOils: readonly Row[] = [
  ['coconut', [248, 265], [6.3, 10.6], [0.908, 0.921], 40],
  ['palm-kernel', [230, 254], [14.1, 21], [0.899, 0.914], 40],
  ['babassu', [245, 256], [10, 18], [0.914, 0.917], 25],
  ['palm', [190, 209], [50, 55], [0.891, 0.899], 50],
  ['high-oleic-palm', [189, 199], [58, 75], [0.896, 0.91], 50],
  ['palm-olein', [194, 202], [56, open], [0.899, 0.92], 40],
  ['palm-stearin', [193, 205], [0, 48], [0.881, 0.891], 60],
  ['high-oleic-sunflower', [182, 194], [78, 90], [0.909, 0.915], 25],
  ['high-oleic-safflower', [186, 194], [80, 100], [0.913, 0.919], 20],
  ['rapeseed', [182, 193], [105, 126], [0.914, 0.92], 20],
  ['peanut', [187, 196], [77, 107], [0.909, 0.92], 20],
  ['sunflower', [187, 194], [118, 141], [0.916, 0.923], 20],
  ['safflower', [186, 198], [136, 148], [0.922, 0.927], 20],
  ['soybean', [189, 195], [124, 139], [0.919, 0.925], 20],
  ['rice-bran', [180, 199], [90, 115], [0.91, 0.929], 20],
  ['sesame', [186, 195], [104, 120], [0.915, 0.924], 20],
  ['maize', [187, 195], [103, 135], [0.917, 0.925], 20],
  ['cottonseed', [189, 198], [100, 123], [0.918, 0.926], 20],
  ['grape-seed', [188, 194], [128, 150], [0.92, 0.926], 20],
  ['walnut', [189, 198], [132, 162], [0.923, 0.925], 25, 25],
  ['linseed', [185, 197], [170, 211], [0.925, 0.935], 25],
];

/** The same standard, as remembered: fats that no copy was read of. */
const recalledOils: readonly Row[] = [
  ['palm-superolein', [180, 205], [60, open], [0.9, 0.925], 40],
  ['palm-kernel-olein', [231, 244], [20, 28], [0.904, 0.907], 40],
  ['palm-kernel-stearin', [244, 255], [4, 8.5], [0.904, 0.908], 40],
  ['mid-oleic-sunflower', [190, 191], [94, 122], [0.914, 0.916], 20],
  ['pistachio', [187, 196], [84, 98], [0.915, 0.92], 25],
  ['mustard-seed', [168, 184], [92, 125], [0.91, 0.921], 20],
];

/** Codex CXS 33-1981, Olive Oils and Olive-Pomace Oils, the text of 1989; from memory. */
const oliveOils: readonly Row[] = [
  ['olive', [184, 196], [75, 94], [0.91, 0.916], 20],
  ['olive-pomace', [182, 193], [75, 92], [0.91, 0.916], 20],
];

/** Codex CXS 211-1999, Named Animal Fats, appendix; from memory. */
const animalFats: readonly Row[] = [
  ['lard', [192, 203], [55, 65], [0.896, 0.904], 40],
  ['tallow', [190, 202], [40, 53], [0.894, 0.904], 40],
];

/** USP-NF, Almond Oil, as quoted on trade specifications. */
const almondOil: Row = ['sweet-almond', [190, 200], [95, 105], [0.91, 0.915], 25, 25];

/** Fats with a published saponification value, iodine value and density that Lund's relation is meant for. */
export const publishedFats: readonly PublishedFat[] = [
  ...vegetableOils,
  ...recalledOils,
  ...oliveOils,
  ...animalFats,
  almondOil,
].map(([key, saponification, iodine, density, sampleC, waterC]): PublishedFat => ({
  key,
  saponification,
  iodine,
  density,
  sampleC,
  waterC: waterC ?? 20,
}));

/** Density of water, g/mL, by the temperature that a relative density refers to; CRC Handbook. */
export const waterGPerMl = { 20: 0.99821, 25: 0.99704 } as const;
