import type { Accepted } from './issues/accepted.js';
import type { IssueParams } from './issues/issue-params.js';

/** Stable, dotted, lower case: `lye.concentration-out-of-range`. */
export type IssueCode = keyof IssueParams;

/** What every issue has. */
interface IssueFacts {
  /** Where in the input: property names and array positions from the root. */
  readonly path: readonly (string | number)[];
  /** The offending value as read. */
  readonly value?: unknown;
  /** What would be accepted there, where that is one thing. */
  readonly accepted?: Accepted;
}

/** The issue of a code. */
export type IssueOf<C extends IssueCode> = IssueFacts & { readonly code: C } & IssueParams[C];

/**
 * Something wrong with what a person entered, as data. Libraries return issues; apps turn them into an exit status or
 * a problem document, and `libs/words` into sentences.
 */
export type Issue = { readonly [C in IssueCode]: IssueOf<C> }[IssueCode];

/** A computed value, or the issues that stand in its way. */
export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[] };

/** @returns a successful result */
export function ok<T>(value: T): Result<T> {
  return { ok: true, value };
}

/** @returns a failed result; at least one issue is needed to explain it */
export function failed<T = never>(...issues: [Issue, ...Issue[]]): Result<T> {
  return { ok: false, issues };
}

/** Whether there is anything in a list, so that `failed` can take it. */
export function isNonEmpty<T>(list: T[]): list is [T, ...T[]] {
  return list.length > 0;
}

/** The same issues seen from further up: `prefix` goes before each path. */
export function under(prefix: readonly (string | number)[], issues: readonly Issue[]): Issue[] {
  return issues.map((issue) => ({ ...issue, path: [...prefix, ...issue.path] }));
}

/** `['recipes', 0, 'fats']` as `recipes[0].fats`, as shown to people. */
export function pathText(path: readonly (string | number)[]): string {
  return path.reduce<string>(
    (text, step) => (typeof step === 'number' ? `${text}[${step}]` : text === '' ? step : `${text}.${step}`),
    '',
  );
}
