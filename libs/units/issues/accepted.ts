import type { Dimension } from '../unit-table.js';

/** What would be accepted in a place, as data. */
export type Accepted =
  | AcceptedRange
  /** One of these, by the words of the run file. */
  | { readonly kind: 'one-of'; readonly values: readonly string[] }
  /** A text of a certain form. */
  | { readonly kind: 'form'; readonly form: AcceptedForm }
  /** A number with its unit. */
  | { readonly kind: 'measure'; readonly dimension: Dimension }
  /** An instant up to this one, or from it on; ISO text. */
  | { readonly kind: 'until' | 'since'; readonly at: string };

/** A number, in the unit given; no bound on a side that is absent. */
export interface AcceptedRange {
  readonly kind: 'range';
  readonly low?: number;
  readonly high?: number;
  /** The bounds themselves are not accepted. */
  readonly isOpen?: boolean;
  readonly unit?: AcceptedUnit;
  /** A text with a unit is read too. */
  readonly orMeasure?: Dimension;
}

export type AcceptedUnit =
  | '%'
  | 'g'
  | 'mL'
  | 'mm'
  | 'cm²'
  | '°C'
  | 'min'
  | 'h'
  | 'g/mL'
  | 'g/mL per °C'
  | 'mg KOH/g'
  | 'g/100 g'
  | 'characters'
  | 'entries'
  | 'pieces'
  | 'pixels';

/** Texts and values of a certain form. */
export type AcceptedForm = (typeof acceptedForms)[number];

export const acceptedForms = [
  'number',
  'whole-number',
  'text',
  'yes-or-no',
  'list',
  'group',
  'nothing',
  'documented-form',
  'date',
  'date-in-years',
  'local-date-time',
  'local-date-time-in-years',
  'instant',
  'instant-in-years',
  'time-of-day',
  'uuid',
  'key',
  'key-of-its-own',
  'currency',
  'run-ids',
  'saponification',
  'some-text',
  'jpeg',
] as const;
