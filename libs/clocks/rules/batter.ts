import type { Rule } from '../rule.js';
import { stiffening, thickening, tracing } from './acts.js';

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
    // Lye of 50 % as it is sold, with no water added, is thick within minutes: half of the usual time or less, and no lye for swirls.
    id: 'lye-on-batter',
    acts: stiffening,
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.7],
      [28, 1.35],
      [33, 1],
      [38, 0.75],
      [40, 0.65],
      [45, 0.5],
      [50, 0.4],
    ],
    sigma: 0.1,
    evidence: { kind: 'common practice' },
  },
  {
    // Olive, sunflower and other liquid oils take twice as long as palm and tallow, and coconut is quicker still.
    id: 'fats-on-batter',
    acts: thickening,
    reads: 'hardFattyAcidsPercent',
    table: [
      [10, 2.1],
      [15, 1.95],
      [30, 1.35],
      [45, 1],
      [60, 0.85],
      [80, 0.7],
    ],
    sigma: 0.15,
    evidence: { kind: 'common practice' },
  },
  {
    // Lard is slow for so hard a fat, which is why swirls are made with it.
    id: 'lard',
    acts: thickening,
    reads: 'lardPercent',
    table: [
      [0, 1],
      [50, 1.2],
      [100, 1.45],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    // Acids that are free turn to soap at once: shaving soap of a third stearic acid is mixed hot, as it seizes else.
    id: 'free-acids',
    acts: stiffening,
    reads: 'freeAcidsPercent',
    table: [
      [0, 1],
      [2, 0.8],
      [5, 0.5],
      [10, 0.25],
      [20, 0.1],
      [50, 0.05],
    ],
    sigma: 0.3,
    evidence: { kind: 'common practice' },
  },
  {
    // Waxes set as the batter cools and thicken it from a few per cent on, so that they are mixed above 60 °C.
    id: 'wax',
    acts: stiffening,
    reads: 'waxPercent',
    table: [
      [0, 1],
      [2, 0.85],
      [5, 0.55],
      [8, 0.4],
      [20, 0.2],
    ],
    sigma: 0.25,
    evidence: { kind: 'common practice' },
  },
  {
    // Clay takes up water; makers wet it first so that the batter does not thicken.
    id: 'clay',
    acts: stiffening,
    reads: 'clayPercent',
    table: [
      [0, 1],
      [3, 0.85],
      [10, 0.65],
      [30, 0.5],
    ],
    sigma: 0.12,
    evidence: { kind: 'common practice' },
  },
  {
    // Beer that was not boiled, and spirits, make batter seize; who makes clear soap warms it with spirits of a third of the fats.
    id: 'alcohol',
    acts: stiffening,
    reads: 'alcoholPercent',
    table: [
      [0, 1],
      [1, 0.8],
      [3, 0.5],
      [10, 0.2],
      [30, 0.1],
    ],
    sigma: 0.3,
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
    // Against other olive oil, which is slow: pomace alone traces in less than half of its time.
    id: 'olive-pomace',
    acts: stiffening,
    reads: 'olivePomacePercent',
    table: [
      [0, 1],
      [40, 0.62],
      [80, 0.42],
      [100, 0.36],
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
      [5, 0.65],
      [20, 0.5],
    ],
    sigma: 0.12,
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
