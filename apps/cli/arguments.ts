import { relative } from 'node:path';
import { parseArgs } from 'node:util';
import { fileURLToPath } from 'node:url';
import { existsSync, readdirSync } from 'node:fs';
import { LARGEST_INT4 } from '#contract';
import type { UnitSystem } from '#units';
import { isLanguage, languages, type Language } from '#words';

export type CommandName = 'plan' | 'amounts' | 'clocks';

/** What a command was asked to do. */
export interface Arguments {
  readonly file: string;
  readonly json: boolean;
  readonly units: UnitSystem;
  readonly language: Language;
  /** Pieces to make instead of what the file says. */
  readonly count: number | undefined;
  /** Local date and time that stands for the present; absent: when the first run may start. */
  readonly at: string | undefined;
  readonly seed: number;
  /** Odds to keep: asks for the latest start that does, instead of a plan from the first. */
  readonly odds: number | undefined;
  /** With odds: local date on whose start the lot must be cured, instead of what the file says. */
  readonly readyBy: string | undefined;
  /** With odds: which run of the file. */
  readonly run: string | undefined;
  /** Asks for what would help the plan, too. */
  readonly remedies: boolean;
}

/** For whom something is printed. */
export type ReaderOptions = Pick<Arguments, 'language' | 'units'>;

export type Parsed =
  | { readonly kind: 'run'; readonly arguments: Arguments }
  | { readonly kind: 'schema'; readonly of: 'document' | 'backward' | 'remedies' }
  /** `--rules` of clocks. */
  | { readonly kind: 'rules'; readonly json: boolean; readonly reader: ReaderOptions }
  /** `--fats` of amounts. */
  | { readonly kind: 'fats'; readonly reader: ReaderOptions }
  /** `--file-schema`: what a run file may hold. */
  | { readonly kind: 'file-schema' }
  | { readonly kind: 'help' }
  | { readonly kind: 'wrong'; readonly message: string };

const options = {
  json: { type: 'boolean' },
  units: { type: 'string' },
  lang: { type: 'string' },
  count: { type: 'string' },
  at: { type: 'string' },
  seed: { type: 'string' },
  odds: { type: 'string' },
  'ready-by': { type: 'string' },
  run: { type: 'string' },
  remedies: { type: 'boolean' },
  schema: { type: 'boolean' },
  'file-schema': { type: 'boolean' },
  rules: { type: 'boolean' },
  fats: { type: 'boolean' },
  help: { type: 'boolean', short: 'h' },
} as const;

/** Options that belong to one command alone. */
const ownTo = {
  at: 'plan',
  seed: 'plan',
  odds: 'plan',
  'ready-by': 'plan',
  run: 'plan',
  remedies: 'plan',
  rules: 'clocks',
  fats: 'amounts',
} as const;

/** How a command is called. */
export function usageOf(command: CommandName): string {
  const own = command === 'plan' ? ' [--at 2026-11-27T18:00] [--seed N] [--remedies]' : '';
  const also = {
    plan: [
      '       --remedies prints up to five changes that would help, with all that each makes better and worse',
      '       npm run plan -- FILE --odds 0.9 [--ready-by 2027-01-16] [--run KEY]',
      '                                           the latest start with such odds to be cured by that day',
    ],
    amounts: ['       npm run amounts -- --fats          the fats that need no entry of their own'],
    clocks: ['       npm run clocks -- --rules          every state and rule, with its evidence'],
  };
  const statuses =
    command === 'plan'
      ? 'Exit status: 0 planned, 2 no plan (the reasons are printed), 64 something is wrong with the input.'
      : 'Exit status: 0 done, 64 something is wrong with the input.';
  return [
    `Usage: npm run ${command} -- FILE [--count N] [--lang en|de] [--units metric|us] [--json]${own}`,
    ...also[command],
    `       npm run ${command} -- --schema         the JSON Schema of what --json prints`,
    `       npm run ${command} -- --file-schema    the JSON Schema of a run file`,
    `FILE is a run file, or the bare name of a demo: ${demoNames().join(', ')}.`,
    '--count makes the one run of the file for that many pieces instead.',
    statuses,
  ].join('\n');
}

/** Reads the command line after the command's name. */
export function parseArguments(command: CommandName, args: readonly string[]): Parsed {
  const unknown = unknownOption(args);
  if (unknown !== undefined) return { kind: 'wrong', message: unknown };
  let parsed: ReturnType<typeof parse>;
  try {
    parsed = parse(args);
  } catch (cause) {
    return { kind: 'wrong', message: cause instanceof Error ? cause.message : String(cause) };
  }
  const { values, positionals } = parsed;
  if (values.help === true) return { kind: 'help' };
  for (const [option, owner] of Object.entries(ownTo)) {
    if (values[option as keyof typeof ownTo] !== undefined && owner !== command) {
      return { kind: 'wrong', message: `--${option} belongs to ${owner}.` };
    }
  }
  if (values['file-schema'] === true) return { kind: 'file-schema' };
  const { units = 'metric', lang = 'en', count, seed = '1', at } = values;
  if (units !== 'metric' && units !== 'us') {
    return { kind: 'wrong', message: `--units ${units} is not known; accepted: metric, us.` };
  }
  if (!isLanguage(lang)) {
    const accepted = Object.keys(languages).join(', ');
    return { kind: 'wrong', message: `--lang ${lang} is not known; accepted: ${accepted}.` };
  }
  const reader: ReaderOptions = { language: lang, units };
  if (values.rules === true) return { kind: 'rules', json: values.json === true, reader };
  if (values.fats === true) return { kind: 'fats', reader };
  if (values.schema === true) return { kind: 'schema', of: schemaAsked(values) };
  const [file, ...more] = positionals;
  if (file === undefined) return { kind: 'wrong', message: 'Which run file?' };
  if (more.length > 0)
    return { kind: 'wrong', message: `One file at a time; “${more.join(' ')}” is too many.` };
  if (count !== undefined && !(/^[1-9]\d{0,3}$/.test(count) && Number(count) <= 5000)) {
    return { kind: 'wrong', message: `--count ${count} is no count; accepted: a whole number, 1 to 5000.` };
  }
  if (!/^-?\d{1,10}$/.test(seed) || Math.abs(Number(seed)) > LARGEST_INT4) {
    const accepted = `a whole number, -${String(LARGEST_INT4)} to ${String(LARGEST_INT4)}`;
    return { kind: 'wrong', message: `--seed ${seed} is no seed; accepted: ${accepted}.` };
  }
  if (at !== undefined && !/^2[01]\d{2}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(at)) {
    const accepted = 'a date and time such as 2026-11-27T18:00, in the years 2000 to 2199';
    return { kind: 'wrong', message: `--at ${at} is no local time; accepted: ${accepted}.` };
  }
  const back = backwardFault(values);
  if (back !== undefined) return { kind: 'wrong', message: back };
  return {
    kind: 'run',
    arguments: {
      file: resolveFile(file),
      json: values.json === true,
      ...reader,
      count: count === undefined ? undefined : Number(count),
      at,
      seed: Number(seed),
      odds: values.odds === undefined ? undefined : Number(values.odds),
      readyBy: values['ready-by'],
      run: values.run,
      remedies: values.remedies === true,
    },
  };
}

/** Which of the documents that `--json` may print. */
function schemaAsked(values: {
  readonly odds?: string | undefined;
  readonly remedies?: boolean | undefined;
}): Extract<Parsed, { kind: 'schema' }>['of'] {
  if (values.odds !== undefined) return 'backward';
  return values.remedies === true ? 'remedies' : 'document';
}

/** What is wrong with the options that count back from a day. */
function backwardFault(values: {
  readonly odds?: string | undefined;
  readonly 'ready-by'?: string | undefined;
  readonly run?: string | undefined;
  readonly remedies?: boolean | undefined;
}): string | undefined {
  const { odds, 'ready-by': readyBy, run, remedies } = values;
  if (odds === undefined) {
    const lone = readyBy === undefined ? run && '--run' : '--ready-by';
    return lone && `${lone} goes with --odds, such as --odds 0.9.`;
  }
  if (!/^0?\.\d+$/.test(odds) || Number(odds) < 0.01 || Number(odds) > 0.999) {
    return `--odds ${odds} are none to ask for; accepted: a number from 0.01 to 0.999 such as 0.9.`;
  }
  if (remedies === true) return '--remedies are those of a plan from the first start; leave --odds out.';
  if (readyBy !== undefined && !/^2[01]\d{2}-\d{2}-\d{2}$/.test(readyBy)) {
    return `--ready-by ${readyBy} is no day; accepted: a date such as 2027-01-16, in the years 2000 to 2199.`;
  }
  return undefined;
}

/** Said here, because the parser would go on about how to pass a file that is called like an option. */
function unknownOption(args: readonly string[]): string | undefined {
  const names = Object.keys(options);
  const found = args
    .filter((arg) => arg.startsWith('--') && arg.length > 2)
    .map((arg) => arg.slice(2).split('=')[0] ?? '')
    .find((name) => !names.includes(name));
  if (found === undefined) return undefined;
  const near = names.find((name) => name.startsWith(found.slice(0, 3)));
  const meant = near === undefined ? '' : `; did you mean --${near}?`;
  return `There is no option --${found}${meant}`;
}

function parse(args: readonly string[]) {
  return parseArgs({ args: [...args], allowPositionals: true, options });
}

/** A bare name means the demo of that name, unless a file of that name is there. */
function resolveFile(file: string): string {
  if (/[./\\]/.test(file) || existsSync(file)) return file;
  const demo = `${demoFolder()}${file}.yaml`;
  return existsSync(demo) ? relative(process.cwd(), demo) : file;
}

/** Names of the demos that ship with the project. */
function demoNames(): string[] {
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
