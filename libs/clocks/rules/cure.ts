import type { Rule } from '../rule.js';
import { curing, drying } from './acts.js';

/** What hurries or slows the cure, and the drying that is a part of it. */
export const cureRules: readonly Rule[] = [
  {
    id: 'lye-on-cure',
    acts: [...drying, ...curing],
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.3],
      [28, 1.15],
      [33, 1],
      [38, 0.9],
      [40, 0.85],
      [50, 0.75],
    ],
    sigma: 0.08,
    evidence: { kind: 'common practice' },
  },
  {
    // Soap of nine tenths olive is sold after two to four months; that it is best after half a year to a year is for `best`.
    id: 'oleic',
    acts: ['usable', 'cured'],
    reads: 'oleicPercent',
    table: [
      [0, 1],
      [45, 1],
      [50, 1.08],
      [60, 1.4],
      [70, 2],
      [80, 2.9],
      [90, 3.8],
    ],
    sigma: 0.25,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'oleic-on-best',
    acts: ['best'],
    reads: 'oleicPercent',
    table: [
      [0, 1],
      [45, 1],
      [50, 1.15],
      [55, 1.4],
      [60, 1.8],
      [65, 2.4],
      [70, 3.2],
      [80, 4.6],
      [90, 6],
    ],
    sigma: 0.3,
    evidence: { kind: 'common practice' },
  },
  {
    // Bars of much sunflower or soybean oil stay soft for months and are kept below a quarter of the fats for that.
    id: 'polyunsaturated',
    acts: curing,
    reads: 'polyunsaturatedPercent',
    table: [
      [0, 1],
      [18, 1],
      [40, 1.3],
      [60, 1.6],
      [75, 1.8],
    ],
    sigma: 0.2,
    evidence: { kind: 'common practice' },
  },
  {
    // Above a fifth bars stay sticky; soap of castor oil alone is a soft, clear gum.
    id: 'castor-on-cure',
    acts: curing,
    reads: 'castorPercent',
    table: [
      [0, 1],
      [10, 1],
      [30, 1.3],
      [100, 2.2],
    ],
    sigma: 0.2,
    evidence: { kind: 'common practice' },
  },
  {
    // Fat that is left over keeps the bar soft: laundry bars of no superfat harden first, those of 10 % and more last.
    id: 'superfat-on-cure',
    acts: curing,
    reads: 'superfatPercent',
    table: [
      [0, 0.93],
      [5, 1],
      [10, 1.08],
      [20, 1.22],
      [40, 1.4],
    ],
    sigma: 0.06,
    evidence: { kind: 'common practice' },
  },
  {
    // Salt bars are hard on the first day and sold earlier than others.
    id: 'salt-on-cure',
    acts: curing,
    reads: 'saltPercent',
    table: [
      [0, 1],
      [25, 0.9],
      [100, 0.8],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    // Thin guest soaps are dry after three weeks; an uncut block is not after months. Drying goes by the thickness, V^(1/3).
    id: 'size-on-cure',
    acts: curing,
    reads: 'pieceMl',
    table: [
      [1, 0.5],
      [10, 0.7],
      [60, 1],
      [120, 1],
      [500, 1.5],
      [1500, 2.1],
      [6000, 3],
      [50000, 5],
    ],
    sigma: 0.08,
    evidence: { kind: 'common practice' },
  },
  {
    // Water leaves faster the warmer the room: cellars take a week or two more, attics in summer less.
    id: 'room-on-cure',
    acts: [...drying, ...curing],
    reads: 'roomTemperatureC',
    table: [
      [5, 1.4],
      [10, 1.25],
      [20, 1],
      [30, 0.82],
      [35, 0.76],
    ],
    sigma: 0.08,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'room-humidity',
    acts: [...drying, ...curing],
    reads: 'roomHumidityPercent',
    table: [
      [30, 0.85],
      [50, 1],
      [80, 1.5],
    ],
    sigma: 0.1,
    evidence: { kind: 'from memory' },
  },
  {
    // A fan over the rack saves a week of five; bars in a shut box or cupboard stay soft and damp for weeks longer.
    id: 'air-on-drying',
    acts: [...drying, ...curing],
    reads: 'air',
    table: { still: 1.3, usual: 1, moving: 0.82 },
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'gel-on-cure',
    acts: curing,
    reads: 'gelPercent',
    table: [
      [0, 1],
      [100, 0.9],
    ],
    isChance: true,
    sigma: 0.08,
    evidence: { kind: 'from memory' },
  },
];
