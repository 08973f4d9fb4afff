import type { ClockInput, Message, Risk } from '#contract';
import type { Issue, IssueCode, IssueOf } from '#units';
import type { AcceptedWords } from './accepted-words.js';
import type { AcceptedTexts } from './format/accepted.js';
import type { Amounts } from './format/amounts.js';
import type { Lengths } from './format/lengths.js';
import type { Times } from './format/times.js';
import type { Names } from './names.js';
import type { Phrases } from './phrases.js';
import type { Language } from './reader.js';

/** Makes sentences for one reader. */
export interface Texts extends Times, Amounts, Lengths, Phrases, AcceptedTexts {
  readonly language: Language;
  readonly names: Names;
  /** What the clocks read, as it is written: `28 %`, `29 °C`, `lined wood`. */
  readonly read: (input: ClockInput, value: number | string) => string;
  /** What a fat or material is called: a shipped one in the language, any other by the title that it was given. */
  readonly titled: (key: string, title: string) => string;
  /** What a shipped fat does, with temperatures in the reader's unit. @param english as its table says it */
  readonly behaviourOf: (fat: string, english: string) => string;
  /** The sentence of a message. */
  readonly of: (told: Message) => string;
  /** What would help against a risk, as a sentence. */
  readonly remedyOf: (risk: Risk) => string;
  /** What is wrong with an input, and what would be accepted. */
  readonly issue: (issue: Issue) => string;
  /** What the field at the end of a path is called; undefined where it has no name, as in a list. */
  readonly fieldName: (path: readonly (string | number)[]) => string | undefined;
  /** `a, b and c`. */
  readonly and: (items: readonly string[]) => string;
  /** `a, b or c`. */
  readonly or: (items: readonly string[]) => string;
}

/** A sentence for each message of a family. */
export type MessageWords<M extends { readonly code: string }> = {
  readonly [C in M['code']]: (told: Extract<M, { readonly code: C }>, texts: Texts) => string;
};

/** What is said of an issue: what is wrong, with what is accepted after it. */
export type Said =
  | string
  | {
      readonly wrong: string;
      /** Stands after what is accepted. */
      readonly why?: string;
      /** The sentence says itself what to do, so what is accepted is not said once more. */
      readonly isWhole?: boolean;
    };

/** What is said of each issue of some codes. */
export type IssueWordsOf<C extends IssueCode> = {
  readonly [Code in C]: (issue: IssueOf<Code>, texts: Texts) => Said;
};
export type IssueWords = IssueWordsOf<IssueCode>;

/** All that is said in one language. */
export interface Words {
  readonly phrases: Phrases;
  readonly names: Names;
  readonly messages: MessageWords<Message>;
  /** What would help against each risk. */
  readonly riskRemedies: MessageWords<Risk>;
  readonly issues: IssueWords;
  readonly accepted: AcceptedWords;
  /** Names of fields as forms show them. */
  readonly fields: Readonly<Record<string, string>>;
}
