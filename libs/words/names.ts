import type {
  ClockChoice,
  ClockInput,
  ClockRuleId,
  Evidence,
  Influence,
  SoapState,
  StageKind,
  clockChoices,
  paces,
} from '#contract';
import type { materials } from './en/materials.js';
import type { Amounts } from './format/amounts.js';

/** How things are called that many sentences speak of. */
export interface Names {
  readonly states: Readonly<Record<SoapState, StateName>>;
  /** What hurried or slowed a change of state, fit for “slower, because …”: “the batter is cool (29 °C)”. */
  readonly influences: Readonly<Record<ClockInput, (read: Influence, amounts: Amounts) => string>>;
  /** What a clock reads: `lye concentration`. */
  readonly inputs: Readonly<Record<Exclude<ClockInput, 'log'>, string>>;
  readonly choices: {
    readonly [C in ClockChoice]: Readonly<Record<(typeof clockChoices)[C][number], string>>;
  };
  /** Why the soap does what a rule says, as a sentence. */
  readonly rules: Readonly<Record<ClockRuleId, string>>;
  /** What to know beyond the ends of a rule, besides that it does not reach there. */
  readonly beyondRules: Partial<
    Readonly<Record<ClockRuleId, { readonly below?: string; readonly above?: string }>>
  >;
  /** What the log teaches about: `how the soap sets`. */
  readonly paces: Readonly<Record<(typeof paces)[number], string>>;
  /** The act of a stage as a verb, as it stands after “to”: `pour a layer`. */
  readonly stageKinds: Readonly<Record<StageKind, string>>;
  /** How well a figure is known: `common practice, no source`. */
  readonly evidence: (evidence: Evidence) => string;
  /** What shipped fats do in batter and bar, by key, where it is not said as in their table. */
  readonly fatBehaviours: Readonly<Partial<Record<string, string>>>;
  /** Where figures come from, by how their table cites it, where it is not cited in the same way. */
  readonly sources: Readonly<Partial<Record<string, string>>>;
  /** Shipped fats, liquids and materials with keys of their own; `Texts.titled` looks here. */
  readonly materials: Readonly<Record<keyof typeof materials, string>>;
  /** The same in English, as they ship: a title that differs was given by somebody. */
  readonly englishMaterials: Readonly<Record<keyof typeof materials, string>>;
}

export interface StateName {
  /** What the soap is once the state has come, or until then where it closes a window; fits “the base is …”. */
  readonly is: string;
  /** What it is until then, of a state that opens one thing and closes another; fits “the base stays …”. */
  readonly until?: string;
  /** What has the state, where that is not the part itself: `the lye for “Base”`, within a sentence. */
  readonly of?: (part: string) => string;
  /** From when its clock counts, after a length of time: `after the end of the pour`. */
  readonly after: string;
}
