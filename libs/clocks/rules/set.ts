import type { Rule } from '../rule.js';
import { inTheMould, inTheOpen, surfacing } from './acts.js';

/** What hurries or slows the soap while it sets. */
export const setRules: readonly Rule[] = [
  {
    // Lye of 50 % is out of the mould the next evening, and its loaves crumble when they are cut on the day after that.
    id: 'lye-on-set',
    acts: [...inTheMould, ...inTheOpen],
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.6],
      [28, 1.3],
      [33, 1],
      [38, 0.8],
      [40, 0.72],
      [45, 0.62],
      [50, 0.55],
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
    // A salt bar stiffens while it is poured: layers and decor wait for nobody.
    id: 'salt-early',
    acts: [...surfacing, 'bonds-until'],
    reads: 'saltPercent',
    table: [
      [0, 1],
      [2, 1],
      [25, 0.4],
      [100, 0.3],
    ],
    sigma: 0.15,
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
    acts: ['bonds-until', ...inTheMould.filter((state) => state !== 'cuttable-until'), ...inTheOpen],
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
    // Soap of hard fats alone splinters early: a coconut loaf is cut within half a day or not at all.
    id: 'cutting-end',
    acts: ['cuttable-until'],
    reads: 'hardFattyAcidsPercent',
    table: [
      [10, 2.2],
      [15, 2],
      [30, 1.35],
      [45, 1],
      [60, 0.65],
      [80, 0.22],
    ],
    sigma: 0.2,
    evidence: { kind: 'common practice' },
  },
  {
    // Poured cold it takes about a day more; poured hot it is out of the mould the next morning.
    id: 'batter-on-set',
    acts: [...inTheMould, ...inTheOpen],
    reads: 'batterTemperatureC',
    table: [
      [20, 1.12],
      [38, 1],
      [55, 0.88],
      [90, 0.72],
    ],
    sigma: 0.06,
    evidence: { kind: 'common practice' },
  },
  {
    // Soap of potash is soft: some per cent are put in for a creamier, softer bar, and shaving soap of half potash stays a dough.
    id: 'koh-on-set',
    acts: [...inTheMould, ...inTheOpen],
    reads: 'kohSharePercent',
    table: [
      [0, 1],
      [5, 1.15],
      [10, 1.35],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    // A small piece loses its warmth and stays soft: guest soaps and embeds are frozen to get them out, loaves lift out the next day.
    id: 'cast-size',
    acts: inTheMould,
    reads: 'castMl',
    table: [
      [1, 1.3],
      [10, 1.18],
      [50, 1],
      [150, 1],
      [1200, 0.9],
      [6000, 0.85],
      [50000, 0.82],
    ],
    sigma: 0.08,
    evidence: { kind: 'common practice' },
  },
  {
    // A wash of half a millimetre is dry within hours, a frosting of two centimetres sets as slowly as a loaf.
    id: 'coat-thickness',
    acts: ['coat-tacky-until', 'coat-turnable'],
    reads: 'coatMm',
    table: [
      [0.5, 0.6],
      [2, 1],
      [5, 1.5],
      [10, 2.1],
      [20, 3],
      [50, 5],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    // Fine lines are firm in the evening, big rosettes the day after next.
    id: 'bead-width',
    acts: ['piping-firm', 'piping-turnable'],
    reads: 'beadMm',
    table: [
      [2, 0.7],
      [8, 1],
      [15, 1.3],
      [30, 1.8],
      [100, 3.5],
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
    reads: 'gelPercent',
    table: [
      [0, 1],
      [100, 0.6],
    ],
    isChance: true,
    sigma: 0.15,
    evidence: { kind: 'common practice' },
  },
  {
    // A coconut loaf in gel is cut while it is still warm, four to eight hours after the pour, and shatters after eight to twelve.
    id: 'hard-fats-in-gel',
    acts: inTheMould,
    reads: 'hardGelPercent',
    table: [
      [0, 1],
      [100, 0.65],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    // Beside what its size does: lined wood of a loaf comes to 0.65 in all, carton to 0.75.
    id: 'mould',
    acts: inTheMould,
    reads: 'mould',
    table: { 'silicone-cavity': 1, 'lined-wood': 0.72, 'lined-carton': 0.83, 'rigid-plastic': 1.25 },
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    // Cooling takes as much longer as there is more to cool than surface to cool it by, and a thick layer keeps its own warmth.
    id: 'melt-size',
    acts: ['glaze-set', 'glaze-turnable'],
    reads: 'meltMl',
    table: [
      [0.5, 0.55],
      [5, 1],
      [20, 1.5],
      [80, 2.3],
      [200, 3],
      [1000, 5],
    ],
    sigma: 0.15,
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
