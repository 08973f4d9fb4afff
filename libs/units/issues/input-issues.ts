import type { Dimension, Unit } from '../unit-table.js';
import type { None } from './none.js';

/** What the shape of an input can have against it. */
export interface InputIssues {
  /** @param rule over several fields that nothing meets while this one is missing */
  'input.missing': { readonly rule?: InputRule };
  'input.unknown-field': { readonly field: string };
  'input.repeated-key': { readonly list: string };
  'input.too-small': None;
  'input.too-big': None;
  'input.invalid-type': None;
  'input.invalid-value': None;
  'input.invalid-union': None;
  'input.invalid-format': None;
  'input.invalid-key': None;
  'input.not-multiple-of': None;
  'input.invalid-element': None;
  'input.custom': { readonly rule: InputRule };
  'input.no-run': None;
  'input.unstorable-text': None;
  'input.too-deep': { readonly most: number };
  'input.too-many-values': { readonly most: number };
  'measure.unreadable': { readonly dimension: Dimension };
  'measure.wrong-dimension': { readonly dimension: Dimension; readonly unit: Unit };
  /** A field for a number holds a text. */
  'form.no-number': None;
}

/** A rule over several fields. */
export type InputRule = (typeof inputRules)[number];

export const inputRules = [
  'cavity-stated-once',
  'water-temperature-without-weight',
  'rising-figures',
  'rising-pair',
  'amount-stated-once',
  'cavity-needs-mould',
  'losses-stated-once',
  'portions-hold-colours',
  'portion-sized-once',
  'one-rest',
  'nothing-left-for-rest',
  'grams-need-rest',
  'portions-not-100',
  'pieces-or-cavities',
  'longest-under-shortest',
  'wait-without-state',
  'late-without-closing',
  'ends-before-it-begins',
  'code-or-key',
  'empty-note',
  'one-wish',
  'too-many-fatty-acids',
  'run-ids',
] as const;
