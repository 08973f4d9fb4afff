import { readFileSync } from 'node:fs';
import { parse } from 'yaml';
import { parseWith, runFile, type RunFile } from '#contract';

// From the project folder: compiled benches do not lie where their sources do.
const folders = { demo: 'apps/cli/examples', ok: 'tests/fixtures/ok' };

/** The text of a run file. @param name without ending */
export function runFileText(kind: keyof typeof folders, name: string): string {
  return readFileSync(`${folders[kind]}/${name}.yaml`, 'utf8');
}

/** A run file that must be well-formed, fresh at each call so that a test may change it. */
export function loadRunFile(kind: keyof typeof folders, name: string): RunFile {
  const parsed = parseWith(runFile, parse(runFileText(kind, name)));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues, null, 2));
  return parsed.value;
}
