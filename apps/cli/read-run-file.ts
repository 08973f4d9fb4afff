import { LineCounter, parseDocument, type Document, type YAMLError } from 'yaml';
import { isEarlierRunFile, parseWith, runFile, type RunFile } from '#contract';
import { isTimeZone } from '#hours';
import { runFileInput, withPieces, type RunsInput } from '#runs';
import { pathText, type Issue } from '#units';
import type { Texts } from '#words';
import { problemLines } from './outcome.js';
import { readText } from './read-text.js';
import { repeatedKeys, type RepeatedKey } from './repeated-keys.js';
import { printed } from './words/index.js';
import { unfoldingFault, yamlFault } from './yaml-faults.js';

/** A run file as read, or what is wrong with it; every problem carries the file and, where known, the line. */
export type ReadOutcome =
  | { readonly ok: true; readonly file: RunFile; readonly locate: Locate; readonly notes: readonly string[] }
  | { readonly ok: false; readonly problems: readonly string[] };

/** `FILE:LINE` of a field, or of the nearest thing around it that is there. */
export type Locate = (path: readonly (string | number)[]) => string;

/**
 * Reads a run file in YAML (JSON is YAML too) and checks it against the contract.
 * @param path as given by the person; shown in problems as it is
 */
function readRunFile(path: string, texts: Texts): ReadOutcome {
  const words = printed[texts.language].file;
  const read = readText(path);
  if (!read.ok) {
    const place = read.line === undefined ? path : `${path}:${String(read.line)}`;
    return { ok: false, problems: [`${place}: ${words.unreadable(read.why)}`] };
  }
  const lines = new LineCounter();
  const at = (offset: number): string => `${path}:${String(lines.linePos(offset).line)}`;
  const document = parseDocument(read.text, { lineCounter: lines, prettyErrors: false, uniqueKeys: false });
  if (document.errors.length > 0) {
    const lineOf = ({ pos: [offset], code }: YAMLError): string =>
      `${at(offset)}: ${yamlText(code, lines.linePos(offset), texts)}`;
    return { ok: false, problems: problemLines(document.errors, lineOf, texts.language) };
  }
  let content: unknown;
  try {
    const repeated = repeatedKeys(document);
    if (repeated.length > 0) {
      const lineOf = ({ name, offset }: RepeatedKey): string => `${at(offset)}: ${words.twice(name)}`;
      return { ok: false, problems: problemLines(repeated, lineOf, texts.language) };
    }
    content = document.toJS({ maxAliasCount: 100 });
  } catch (cause) {
    // Aliases without end, or more levels than the stack holds.
    return { ok: false, problems: [`${path}: ${words.yaml(unfoldingFault(cause))}`] };
  }
  const locate = locator(path, document, lines);
  const parsed = parseWith(runFile, content);
  if (!parsed.ok) {
    const lineOf = (issue: Issue): string => problemText(issue, locate, texts);
    return { ok: false, problems: problemLines(parsed.issues, lineOf, texts.language, parsed.more) };
  }
  const notes = isEarlierRunFile(content) ? [`${locate(['schema'])}: ${words.earlierForm}`] : [];
  return { ok: true, file: parsed.value, locate, notes };
}

/** What a command is to work on, or what is wrong with the file. */
export type InputOutcome =
  | {
      readonly ok: true;
      readonly input: RunsInput;
      readonly locate: Locate;
      /** What the maker should know of the file, though it could be read. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly string[] };

/**
 * The input that a run file is.
 * @param count pieces of its one run instead of what it says
 * @param textsIn sentences with times of a zone
 */
export function readInput(
  path: string,
  count: number | undefined,
  textsIn: (timeZone: string) => Texts,
): InputOutcome {
  const inUtc = textsIn('UTC');
  const read = withCount(readRunFile(path, inUtc), count, inUtc);
  if (!read.ok) return read;
  const { file, locate, notes } = read;
  const input = runFileInput(file);
  if (input.ok) return { ok: true, input: input.value, locate, notes };
  const { timeZone } = file.workshop;
  const texts = textsIn(isTimeZone(timeZone) ? timeZone : 'UTC');
  const lineOf = (issue: Issue): string => problemText(issue, locate, texts);
  return { ok: false, problems: problemLines(input.issues, lineOf, texts.language) };
}

function withCount(read: ReadOutcome, count: number | undefined, { language }: Texts): ReadOutcome {
  if (!read.ok || count === undefined) return read;
  const [run, ...more] = read.file.runs;
  if (run === undefined || more.length > 0) {
    return { ok: false, problems: [printed[language].options.oneRun(String(read.file.runs.length))] };
  }
  return { ...read, file: { ...read.file, runs: [withPieces(run, count)] } };
}

function yamlText(code: string, { line, col }: LinePosition, { language }: Texts): string {
  const words = printed[language].file;
  const fault = yamlFault(code);
  return fault === undefined ? words.unknownYaml(String(line), String(col)) : words.yaml(fault);
}

type LinePosition = ReturnType<LineCounter['linePos']>;

/** `FILE:LINE: field: what is wrong`. */
export function problemText(issue: Issue, locate: Locate, texts: Texts): string {
  const path = pathText(issue.path);
  const place = path === '' ? [locate(issue.path)] : [locate(issue.path), path];
  return [...place, texts.issue(issue)].join(': ');
}

function locator(path: string, document: Document, lines: LineCounter): Locate {
  return (fieldPath) => {
    for (let length = fieldPath.length; length >= 0; length -= 1) {
      const offset = offsetOf(document, fieldPath.slice(0, length));
      if (offset !== undefined) return `${path}:${String(lines.linePos(offset).line)}`;
    }
    return path;
  };
}

function offsetOf(document: Document, path: readonly (string | number)[]): number | undefined {
  const node = document.getIn(path, true) as { range?: [number, number, number] | null } | undefined;
  return node?.range?.[0];
}
