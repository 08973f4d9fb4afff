import type { Rule } from '../rule.js';
import { stiffening, tracing } from './acts.js';

/** What a fragrance does where a rule is about another behaviour. */
const noChange = {
  none: 1,
  slowing: 1,
  mild: 1,
  brisk: 1,
  strong: 1,
  seizing: 1,
  ricing: 1,
  unknown: 1,
} as const;

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
    table: { ...noChange, mild: 0.8, brisk: 0.5, strong: 0.25, seizing: 0.05 },
    sigma: 0.35,
    evidence: { kind: 'common practice' },
  },
  {
    // Some fruity and woody oils leave more time than none.
    id: 'fragrance-slowing',
    acts: stiffening,
    reads: 'fragrance',
    table: { ...noChange, slowing: 1.3 },
    sigma: 0.25,
    evidence: { kind: 'common practice' },
  },
  {
    // Lumps are mostly stirred out again; while that takes, and if it does, the batter goes on.
    id: 'fragrance-ricing',
    acts: stiffening,
    reads: 'fragrance',
    table: { ...noChange, ricing: 0.8 },
    sigma: 0.5,
    evidence: { kind: 'common practice' },
  },
  {
    // Between none and strong, most are mild: a median between them, and wide enough for either.
    id: 'fragrance-unknown',
    acts: stiffening,
    reads: 'fragrance',
    table: { ...noChange, unknown: 0.75 },
    sigma: 0.6,
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
    id: 'emulsifying',
    acts: ['emulsion'],
    reads: 'mixing',
    table: { blender: 1, 'to-emulsion': 1, hand: 4 },
    sigma: 0.4,
    evidence: { kind: 'from memory' },
  },
  {
    // Who swirls stops the blender at the emulsion, and has some twice as long for splitting, colouring and pouring.
    id: 'mixing',
    acts: tracing,
    reads: 'mixing',
    table: { blender: 1, 'to-emulsion': 2, hand: 4 },
    sigma: 0.4,
    evidence: { kind: 'from memory' },
  },
];
