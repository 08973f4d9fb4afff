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
    ],
    sigma: 0.08,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'oleic',
    acts: curing,
    reads: 'oleicPercent',
    table: [
      [0, 1],
      [50, 1],
      [60, 1.5],
      [70, 6.5],
      [85, 8.5],
    ],
    sigma: 0.3,
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
    id: 'gel-on-cure',
    acts: curing,
    reads: 'gel',
    table: { none: 1, full: 0.9 },
    sigma: 0.08,
    evidence: { kind: 'from memory' },
  },
];
