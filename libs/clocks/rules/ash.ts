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
      [50, 0.45],
    ],
    sigma: 0.15,
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
    evidence: { kind: 'common practice' },
  },
  {
    // Covered loaves show next to none; before a fan or in a draught fresh soap dries at once, and shows the most.
    id: 'air-on-ash',
    acts: ['ash-safe'],
    reads: 'air',
    table: { still: 0.75, usual: 1, moving: 1.2 },
    sigma: 0.15,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'gel-on-ash',
    acts: ['ash-safe'],
    reads: 'gelPercent',
    table: [
      [0, 1],
      [100, 0.4],
    ],
    isChance: true,
    sigma: 0.2,
    evidence: { kind: 'common practice' },
  },
];
