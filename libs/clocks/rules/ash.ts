import type { Rule } from '../rule.js';

/**
 * What keeps lye free at the surface for longer, where the air turns it to carbonate. The directions are common
 * practice; the sizes are from memory.
 */
export const ashRules: readonly Rule[] = [
  {
    id: 'lye-on-ash',
    acts: ['ash-safe'],
    reads: 'lyeConcentrationPercent',
    table: [
      [25, 1.5],
      [33, 1],
      [40, 0.7],
    ],
    sigma: 0.15,
    why: 'Weak lye leaves more water, which carries lye up to the air.',
    evidence: { kind: 'common practice' },
  },
  {
    id: 'room-on-ash',
    acts: ['ash-safe'],
    reads: 'roomTemperatureC',
    table: [
      [10, 1.5],
      [20, 1],
      [30, 0.75],
    ],
    sigma: 0.15,
    why: 'In a cool room the lye is used up slowly.',
    evidence: { kind: 'common practice' },
  },
  {
    id: 'humidity-on-ash',
    acts: ['ash-safe'],
    reads: 'roomHumidityPercent',
    table: [
      [30, 0.85],
      [50, 1],
      [80, 1.4],
    ],
    sigma: 0.15,
    why: 'Damp air keeps the surface wet, and carbonate forms where it is wet.',
    evidence: { kind: 'common practice' },
  },
  {
    id: 'gel-on-ash',
    acts: ['ash-safe'],
    reads: 'gel',
    table: { none: 1, full: 0.4 },
    sigma: 0.2,
    why: 'In full gel the lye is used up within hours.',
    evidence: { kind: 'common practice' },
  },
];
