import type { Rule } from '../rule.js';
import { curing } from './acts.js';
import { once } from './hot-process.js';

/**
 * Rebatch: finished soap, grated and melted again with some liquid. Its lye is used up, and the liquid has to dry out again. Common
 * practice, no source, two facts for each table:
 *
 * - Set: it is left in its mould for a day or two before it is firm, longer than cooked soap; with much liquid it takes most of a
 *   week.
 * - Cure: two to four weeks are usual; it shrinks and warps more than other soap meanwhile, as it is wetter.
 */
export const rebatchRules: readonly Rule[] = [
  {
    id: 'rebatch-on-set',
    acts: once,
    reads: 'process',
    table: { cold: 1, cooked: 1, rebatched: 0.65 },
    sigma: 0.35,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'rebatch-on-cure',
    acts: curing,
    reads: 'process',
    table: { cold: 1, cooked: 1, rebatched: 0.65 },
    sigma: 0.3,
    evidence: { kind: 'common practice' },
  },
];
