import type { AcceptedUnit } from './accepted.js';
import type { None } from './none.js';

/** What the clocks cannot be read for; `input` is its name among what they read. */
export interface ClockIssues {
  'clocks.out-of-range': { readonly input: string; readonly found: number; readonly unit: AcceptedUnit };
  'clocks.unknown-choice': { readonly input: string };
  'clocks.more-than-whole': { readonly inputs: readonly string[]; readonly sum: number };
  'clocks.batter-colder-than-room': { readonly batterC: number; readonly roomC: number };
}

export interface CureIssues {
  'cure.too-few-weighings': { readonly count: number };
  'cure.day-out-of-range': None;
  'cure.mass-out-of-range': None;
  'cure.water-share-out-of-range': None;
  'cure.scale-out-of-range': None;
  'cure.mass-gained': { readonly massG: number; readonly days: number; readonly mostG: number };
  'cure.lost-more-than-water': { readonly massG: number; readonly days: number; readonly leastG: number };
}
