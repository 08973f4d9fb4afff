import { z } from 'zod';
import { inputRules, type Accepted, type AcceptedForm, type Issue } from '#units';
import { acceptedIn } from './accepted-error.js';

/** Nobody reads more, and telling one takes time: there may be as many as there are values in what was sent. */
const MOST_ISSUES = 100;

/** What a schema makes of input, or why it cannot: the first hundred issues, and how many there are besides. */
export type Parsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly issues: readonly Issue[]; readonly more: number };

/**
 * Checks input against a schema and says what is wrong in the project's own terms.
 * @returns the parsed value with defaults filled in, or one issue per problem with the value found there
 */
export function parseWith<T extends z.ZodType>(schema: T, input: unknown): Parsed<z.output<T>> {
  const parsed = schema.safeParse(input, { reportInput: true });
  if (parsed.success) return { ok: true, value: parsed.data };
  const found = parsed.error.issues;
  const issues: Issue[] = [];
  for (const issue of found) {
    const room = MOST_ISSUES - issues.length;
    if (room === 0) break;
    issues.push(...toIssues(issue, input, room));
  }
  const all = found.reduce(
    (sum, issue) => sum + (issue.code === 'unrecognized_keys' ? issue.keys.length : 1),
    0,
  );
  return { ok: false, issues, more: all - issues.length };
}

/** One zod issue as issues of ours; unknown properties become one each, up to `most` of them. */
function toIssues(issue: z.core.$ZodIssue, input: unknown, most: number): Issue[] {
  const path = issue.path.map((step) => (typeof step === 'symbol' ? String(step) : step));
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.slice(0, most).map((field) => ({
      code: 'input.unknown-field',
      path: [...path, field],
      value: valueAt(input, [...path, field]),
      field,
    }));
  }
  const value = valueAt(input, path);
  if (issue.code === 'custom') {
    const rule = ruleOf(issue);
    return [
      value === undefined
        ? { code: 'input.missing', path, value, rule }
        : { code: 'input.custom', path, value, rule },
    ];
  }
  const accepted = acceptedBy(issue);
  const code = value === undefined ? 'input.missing' : codes[issue.code];
  return [{ code, path, value, ...(accepted !== undefined && { accepted }) }];
}

type ShapeCode = Exclude<z.core.$ZodIssue['code'], 'custom' | 'unrecognized_keys'>;

const codes = {
  too_small: 'input.too-small',
  too_big: 'input.too-big',
  invalid_type: 'input.invalid-type',
  invalid_value: 'input.invalid-value',
  invalid_union: 'input.invalid-union',
  invalid_format: 'input.invalid-format',
  invalid_key: 'input.invalid-key',
  invalid_element: 'input.invalid-element',
  not_multiple_of: 'input.not-multiple-of',
} as const satisfies Readonly<Record<ShapeCode, Issue['code']>>;

/** @throws where a schema's rule has no name: a fault of the schema, not of the input */
function ruleOf({ params }: z.core.$ZodIssueCustom): (typeof inputRules)[number] {
  const rule = inputRules.find((each) => each === params?.['rule']);
  if (rule === undefined) throw new Error('a rule of a schema has no name: give it one with ruleError');
  return rule;
}

function acceptedBy(issue: z.core.$ZodIssue): Accepted | undefined {
  const told = acceptedIn(issue.message);
  if (told !== undefined) return told;
  switch (issue.code) {
    case 'too_small':
      return { kind: 'range', low: Number(issue.minimum), ...sized(issue) };
    case 'too_big':
      return { kind: 'range', high: Number(issue.maximum), ...sized(issue) };
    case 'invalid_type':
      return form(typeForms[issue.expected] ?? 'documented-form');
    case 'invalid_value':
      return { kind: 'one-of', values: issue.values.map(String) };
    case 'invalid_union':
      return form('documented-form');
    case 'invalid_format':
      return form(formatForms[issue.format] ?? 'documented-form');
    case 'invalid_key':
      return issue.issues[0] === undefined ? undefined : acceptedBy(issue.issues[0]);
    default:
      return undefined;
  }
}

function form(name: AcceptedForm): Accepted {
  return { kind: 'form', form: name };
}

const typeForms: Readonly<Record<string, AcceptedForm>> = {
  int: 'whole-number',
  number: 'number',
  string: 'text',
  boolean: 'yes-or-no',
  array: 'list',
  object: 'group',
  record: 'group',
  never: 'nothing',
};

const formatForms: Readonly<Record<string, AcceptedForm>> = {
  date: 'date',
  datetime: 'local-date-time',
  uuid: 'uuid',
};

/** Whether the bound itself is left out, and what it counts. */
function sized({
  origin,
  inclusive,
}: z.core.$ZodIssueTooSmall | z.core.$ZodIssueTooBig): Pick<
  Extract<Accepted, { kind: 'range' }>,
  'isOpen' | 'unit'
> {
  return {
    ...(inclusive === false && { isOpen: true }),
    ...(origin === 'string' && { unit: 'characters' }),
    ...(origin === 'array' && { unit: 'entries' }),
  };
}

function valueAt(input: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (at, step) =>
      at !== null && typeof at === 'object' ? (at as Record<string | number, unknown>)[step] : undefined,
    input,
  );
}
