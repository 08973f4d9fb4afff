import type { Rule } from '../rule.js';
import { inTheMould, inTheOpen } from './acts.js';

const SALT_HARDENS = 'Salt draws water away from the soap and hardens it.';

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
    why: 'Less water leaves less to be taken up before the soap is firm.',
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
    why: 'Sodium lactate hardens fresh soap, so that it leaves the mould sooner and cleaner.',
    evidence: { kind: 'common practice' },
    beyond: { above: 'More hardener than that makes edges brittle.' },
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
    why: `${SALT_HARDENS} A bar with a quarter of its fats in salt is cut within hours.`,
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
    why: SALT_HARDENS,
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
    why: 'Soap of saturated fatty acids is hard from the start; soap of oleic acid stays soft for days.',
    evidence: { kind: 'common practice' },
  },
  {
    id: 'room-temperature',
    acts: ['skinned', 'bonds-until', 'piping-skinned', ...inTheMould, ...inTheOpen],
    reads: 'roomTemperatureC',
    table: [
      [10, 1.7],
      [20, 1],
      [30, 0.65],
    ],
    sigma: 0.08,
    why: 'A warm room keeps the reaction going and dries the surface.',
    evidence: { kind: 'from memory' },
  },
  {
    id: 'gel-on-set',
    acts: inTheMould,
    reads: 'gel',
    table: { none: 1, full: 0.6 },
    sigma: 0.15,
    why: 'In full gel the reaction is over within hours.',
    evidence: { kind: 'common practice' },
  },
  {
    id: 'mould',
    acts: inTheMould,
    reads: 'mould',
    table: { 'silicone-cavity': 1, 'lined-wood': 0.65, 'lined-carton': 0.75, 'rigid-plastic': 1.25 },
    sigma: 0.1,
    why: 'A lined block keeps its warmth and is lifted by its lining; tight plastic holds on to the soap.',
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
    why: 'Melt-and-pour sets by cooling alone, so a warm room delays it.',
    evidence: {
      kind: 'from memory',
      source: 'Newton’s law of cooling, poured at 55 °C and set at 40 °C',
    },
  },
];
