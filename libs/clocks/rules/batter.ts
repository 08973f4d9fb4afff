import type { Rule } from '../rule.js';
import { inTheBowl, stiffening } from './acts.js';

/** What hurries or slows the batter: in the bowl, and while it stiffens in the mould or on the piece. */
export const batterRules: readonly Rule[] = [
  {
    id: 'lye-on-batter',
    acts: stiffening,
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.7],
      [28, 1.35],
      [33, 1],
      [38, 0.75],
      [40, 0.65],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'batter-temperature',
    acts: stiffening,
    reads: 'batterTemperatureC',
    table: [
      [28, 1.8],
      [38, 1],
      [48, 0.55],
      [58, 0.3],
    ],
    sigma: 0.12,
    evidence: {
      kind: 'from memory',
      source: 'activation energies of 42 to 60 kJ/mol for alkaline ester hydrolysis',
    },
  },
  {
    id: 'fragrance',
    acts: stiffening,
    reads: 'fragrance',
    table: { none: 1, mild: 0.8, brisk: 0.5, strong: 0.25, seizing: 0.05 },
    sigma: 0.35,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'olive-pomace',
    acts: stiffening,
    reads: 'olivePomacePercent',
    table: [
      [0, 1],
      [40, 0.75],
      [80, 0.55],
    ],
    sigma: 0.15,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'castor',
    acts: stiffening,
    reads: 'castorPercent',
    table: [
      [0, 1],
      [10, 1],
      [15, 0.8],
      [30, 0.8],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'butters',
    acts: stiffening,
    reads: 'buttersPercent',
    table: [
      [0, 1],
      [15, 1],
      [25, 0.8],
      [60, 0.8],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'sugar',
    acts: stiffening,
    reads: 'sugarPercent',
    table: [
      [0, 1],
      [2, 0.8],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'mixing',
    acts: inTheBowl,
    reads: 'mixing',
    table: { blender: 1, hand: 4 },
    sigma: 0.4,
    evidence: { kind: 'from memory' },
  },
];
