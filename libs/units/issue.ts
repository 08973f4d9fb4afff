/**
 * Something wrong with what a person entered, as a value. Libraries return issues; apps turn them into an
 * exit status or a problem document. `code` is stable and dotted; `message` is for people and may change.
 */
export interface Issue {
  /** Stable, dotted, lower case: `lye.concentration-out-of-range`. */
  readonly code: string;
  /** Where in the input: property names and array positions from the root. */
  readonly path: readonly (string | number)[];
  /** One or two plain sentences: what is wrong and what is accepted. */
  readonly message: string;
  /** The offending value as read. */
  readonly value?: unknown;
  /** What would be accepted, in words: `20 to 50 %`. */
  readonly accepted?: string;
}

/** A computed value, or the issues that stand in its way. */
export type Result<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: readonly Issue[] };

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
