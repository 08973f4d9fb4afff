import { z } from 'zod';
import { shownOnOneLine, type Issue } from '#units';

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
    return issue.keys.slice(0, most).map((name) => ({
      code: 'input.unknown-field',
      path: [...path, name],
      message: `There is no field “${shortened(shownOnOneLine(name))}” here.`,
      value: valueAt(input, [...path, name]),
      accepted: 'only the documented fields',
    }));
  }
  const value = valueAt(input, path);
  const accepted = acceptedText(issue);
  const found = value === undefined ? 'nothing' : valueText(value);
  return [
    {
      code: value === undefined ? 'input.missing' : `input.${issue.code.replaceAll('_', '-')}`,
      path,
      message: issue.code === 'custom' ? sentence(issue.message) : `Found ${found}; accepted: ${accepted}.`,
      value,
      accepted,
    },
  ];
}

function acceptedText(issue: z.core.$ZodIssue): string {
  switch (issue.code) {
    case 'too_small':
      return `${sized(issue.origin)}${issue.inclusive === false ? 'more than' : 'at least'} ${String(issue.minimum)}`;
    case 'too_big':
      return `${sized(issue.origin)}${issue.inclusive === false ? 'less than' : 'at most'} ${String(issue.maximum)}`;
    case 'invalid_type':
      return issue.expected === 'int' ? 'a whole number' : `a value of type ${issue.expected}`;
    case 'invalid_value':
      return `one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      if (!issue.message.startsWith('Invalid')) return issue.message;
      return issue.discriminator === undefined
        ? 'one of the documented forms'
        : `a known ${issue.discriminator}`;
    case 'invalid_format':
      return issue.message.startsWith('Invalid') ? formatText(issue.format) : issue.message;
    case 'invalid_key':
      return `a name of ${issue.issues.map(acceptedText).join(', ')}`;
    default:
      return issue.message;
  }
}

function formatText(format: string): string {
  const words: Record<string, string> = {
    date: 'a date as YYYY-MM-DD',
    datetime: 'a date and time such as 2026-11-27T18:00',
    uuid: 'a UUID',
  };
  return words[format] ?? format;
}

function sized(origin: string): string {
  return origin === 'string' ? 'characters: ' : origin === 'array' ? 'entries: ' : '';
}

function sentence(message: string): string {
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}${message.endsWith('.') ? '' : '.'}`;
}

/** A value as it is told: on one line, with nothing in it that steers a terminal. */
function valueText(value: unknown): string {
  // JSON has no such numbers, and would say null.
  const text = typeof value === 'number' ? String(value) : (JSON.stringify(value) ?? String(value));
  return shortened(shownOnOneLine(text));
}

function shortened(text: string): string {
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

function valueAt(input: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (at, step) =>
      at !== null && typeof at === 'object' ? (at as Record<string | number, unknown>)[step] : undefined,
    input,
  );
}
