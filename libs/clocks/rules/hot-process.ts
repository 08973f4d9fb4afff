import type { Rule } from '../rule.js';
import { curing, inTheMould, inTheOpen } from './acts.js';

/** What comes of soap in the mould after its making, however it was made. */
export const once = [
  'holds-layer',
  'skinned',
  'takes-decor-until',
  'bonds-until',
  'piping-skinned',
  ...inTheMould,
  ...inTheOpen,
] as const;

/**
 * Hot process: soap that is cooked until its lye is used up, and spooned into the mould at 70 to 90 °C. It only has to cool
 * and to lose its water. Common practice, no source, two facts for each table:
 *
 * - Set: a lined loaf is unmoulded and cut the next morning, after 8 to 24 h; nobody does so before it is cold, some 4 h.
 * - Ash: it has none to speak of, as no lye reaches the air; what comes within the first hours is said to be from the cook
 *   not having been finished. Soap that was melted again has as little.
 * - Cure: it can be used once it is tested, but is better after 1 to 2 weeks at the least, and many leave it as long as any other,
 *   4 to 6 weeks, because it is wetter. So the middle is three weeks, and wide.
 *
 * Batter that is mixed hot and poured as batter is none of this: its temperature hurries it, and its lye is at work in the mould.
 */
export const hotProcessRules: readonly Rule[] = [
  {
    id: 'hot-process-on-set',
    acts: once,
    reads: 'process',
    table: { cold: 1, cooked: 0.25, rebatched: 1 },
    sigma: 0.25,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'hot-process-on-ash',
    acts: ['ash-safe'],
    reads: 'process',
    table: { cold: 1, cooked: 0.05, rebatched: 0.05 },
    sigma: 0.5,
    evidence: { kind: 'common practice' },
  },
  {
    id: 'hot-process-on-cure',
    acts: curing,
    reads: 'process',
    table: { cold: 1, cooked: 0.6, rebatched: 1 },
    sigma: 0.35,
    evidence: { kind: 'common practice' },
  },
];
