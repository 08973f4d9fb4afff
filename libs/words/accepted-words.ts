import type { AcceptedForm, Dimension, InputRule } from '#units';

/** How what is accepted is said. */
export interface AcceptedWords {
  /** What is accepted, as a sentence of its own. */
  readonly sentence: (accepted: string) => string;
  readonly forms: Readonly<Record<AcceptedForm, string>>;
  /** A text with a unit, with examples. */
  readonly measures: Readonly<Record<Dimension, string>>;
  readonly atLeast: (amount: string) => string;
  readonly atMost: (amount: string) => string;
  readonly moreThan: (amount: string) => string;
  readonly lessThan: (amount: string) => string;
  readonly characters: (count: string, isOne: boolean) => string;
  readonly entries: (count: string, isOne: boolean) => string;
  readonly pieces: (count: string, isOne: boolean) => string;
  readonly pixels: (count: string) => string;
  readonly until: (at: string) => string;
  readonly since: (at: string) => string;
}

/** Sentences for the rules over several fields. */
export type RuleWords = Readonly<Record<InputRule, string>>;
