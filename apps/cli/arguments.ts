import { relative } from 'node:path';
import { parseArgs } from 'node:util';
import { fileURLToPath } from 'node:url';
import { existsSync, readdirSync } from 'node:fs';

/** What `plan` was asked to do. */
export interface PlanArguments {
  readonly file: string;
  readonly json: boolean;
  /** Local date and time that stands for the present; absent: when the first run may start. */
  readonly at: string | undefined;
  readonly seed: number;
}

export type Parsed =
  | { readonly kind: 'plan'; readonly arguments: PlanArguments }
  | { readonly kind: 'schema' }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly message: string };

export const usage = `Usage: npm run plan -- FILE [--json] [--at 2026-11-27T18:00] [--seed N]
       npm run plan -- --schema     the JSON Schema of what --json prints
FILE is a run file, or the bare name of a demo: ${demoNames().join(', ')}.
Exit status: 0 planned, 2 no plan (the reasons are printed), 64 something is wrong with the input.`;

/** Reads the command line after `plan`. */
export function parsePlanArguments(args: readonly string[]): Parsed {
  let values: ReturnType<typeof parse>['values'];
  let positionals: string[];
  try {
    ({ values, positionals } = parse(args));
  } catch (cause) {
    return { kind: 'wrong', message: cause instanceof Error ? cause.message : String(cause) };
  }
  if (values.help === true) return { kind: 'help' };
  if (values.schema === true) return { kind: 'schema' };
  const [file, ...more] = positionals;
  if (file === undefined) return { kind: 'wrong', message: 'Which run file?' };
  if (more.length > 0)
    return { kind: 'wrong', message: `One file at a time; “${more.join(' ')}” is too many.` };
  const seed = Number(values.seed ?? '1');
  if (!Number.isSafeInteger(seed)) {
    return { kind: 'wrong', message: `--seed ${String(values.seed)} is no seed; accepted: a whole number.` };
  }
  if (values.at !== undefined && !/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(values.at)) {
    return {
      kind: 'wrong',
      message: `--at ${values.at} is no local time; accepted: a date and time such as 2026-11-27T18:00.`,
    };
  }
  return {
    kind: 'plan',
    arguments: { file: resolveFile(file), json: values.json === true, at: values.at, seed },
  };
}

function parse(args: readonly string[]) {
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      at: { type: 'string' },
      seed: { type: 'string' },
      schema: { type: 'boolean' },
      help: { type: 'boolean', short: 'h' },
    },
  });
}

/** A bare name means the demo of that name, unless a file of that name is there. */
function resolveFile(file: string): string {
  if (/[./\\]/.test(file) || existsSync(file)) return file;
  const demo = `${demoFolder()}${file}.yaml`;
  return existsSync(demo) ? relative(process.cwd(), demo) : file;
}

/** Names of the demos that ship with the project. */
export function demoNames(): string[] {
  return readdirSync(demoFolder())
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => name.slice(0, -'.yaml'.length));
}

/** The demos stay beside their sources; built code looks for them from where it was built to. */
function demoFolder(): string {
  const here = new URL('./examples/', import.meta.url);
  const fromBuilt = new URL('../../../apps/cli/examples/', import.meta.url);
  return fileURLToPath(existsSync(here) ? here : fromBuilt);
}
