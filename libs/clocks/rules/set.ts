import type { Rule } from '../rule.js';
import { inTheMould, inTheOpen } from './acts.js';

/** What hurries or slows the soap while it sets. */
export const setRules: readonly Rule[] = [
  {
    id: 'lye-on-set',
    acts: [...inTheMould, ...inTheOpen],
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.6],
      [28, 1.3],
      [33, 1],
      [38, 0.8],
      [40, 0.72],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'sodium-lactate',
    acts: ['bonds-until', ...inTheMould, ...inTheOpen],
    reads: 'sodiumLactatePercent',
    table: [
      [0, 1],
      [1, 0.82],
      [2, 0.68],
      [3, 0.6],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'salt-in-mould',
    acts: inTheMould,
    reads: 'saltPercent',
    table: [
      [0, 1],
      [1, 0.85],
      [2, 0.75],
      [25, 0.1],
      [100, 0.08],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'salt-in-the-open',
    acts: inTheOpen,
    reads: 'saltPercent',
    table: [
      [0, 1],
      [1, 0.85],
      [2, 0.75],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'hard-fatty-acids',
    acts: ['bonds-until', ...inTheMould, ...inTheOpen],
    reads: 'hardFattyAcidsPercent',
    table: [
      [10, 2.2],
      [15, 2],
      [30, 1.35],
      [45, 1],
      [60, 0.8],
      [80, 0.5],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'room-temperature',
    acts: ['skinned', 'takes-decor-until', 'bonds-until', 'piping-skinned', ...inTheMould, ...inTheOpen],
    reads: 'roomTemperatureC',
    table: [
      [10, 1.7],
      [20, 1],
      [30, 0.65],
    ],
    sigma: 0.08,
    evidence: { kind: 'from memory' },
  },
  {
    id: 'gel-on-set',
    acts: inTheMould,
    reads: 'gel',
    table: { none: 1, full: 0.6 },
    sigma: 0.15,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'mould',
    acts: inTheMould,
    reads: 'mould',
    table: { 'silicone-cavity': 1, 'lined-wood': 0.65, 'lined-carton': 0.75, 'rigid-plastic': 1.25 },
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'room-on-glaze',
    acts: ['glaze-set', 'glaze-turnable'],
    reads: 'roomTemperatureC',
    table: [
      [10, 0.72],
      [20, 1],
      [30, 1.64],
    ],
    sigma: 0.15,
    evidence: {
      kind: 'from memory',
      source: 'Newton’s law of cooling, poured at 55 °C and set at 40 °C',
    },
  },
];
