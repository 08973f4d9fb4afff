import { parseArgs } from 'node:util';
import { isLanguage, type Language } from '#words';
import type { PrintedWords } from './words/index.js';

export type CommandName = 'plan' | 'amounts' | 'clocks';

/** Each with an example of its value, or false where it has none. */
const options = {
  json: false,
  units: 'us',
  lang: 'de',
  count: '26',
  at: '2026-11-27T18:00',
  seed: '7',
  odds: '0.9',
  'ready-by': '2027-01-16',
  run: 'harbour-market',
  remedies: false,
  schema: false,
  'file-schema': false,
  rules: false,
  fats: false,
  help: false,
} as const;

type Option = keyof typeof options;
type Flag = { [O in Option]: (typeof options)[O] extends false ? O : never }[Option];

/** Options that belong to one command alone. */
const ownTo: Readonly<Partial<Record<Option, CommandName>>> = {
  at: 'plan',
  seed: 'plan',
  odds: 'plan',
  'ready-by': 'plan',
  run: 'plan',
  remedies: 'plan',
  rules: 'clocks',
  fats: 'amounts',
};

/** Options as they were given; what stands for a number is text still. */
export type Given = { readonly [O in Flag]: boolean } & {
  readonly [O in Exclude<Option, Flag>]: string | undefined;
};

export type ReadOptions =
  | { readonly ok: true; readonly given: Given; readonly positionals: readonly string[] }
  | { readonly ok: false; readonly wrong: string };

type Token = NonNullable<ReturnType<typeof tokensOf>>[number];

function tokensOf(args: readonly string[]) {
  const flags = Object.entries(options).map(
    ([name, example]) => [name, { type: example === false ? 'boolean' : 'string' }] as const,
  );
  // Not strict, as the parser’s own complaints are in English; all of them are made here.
  return parseArgs({
    args: [...args],
    allowPositionals: true,
    strict: false,
    tokens: true,
    options: { ...Object.fromEntries(flags), help: { type: 'boolean', short: 'h' } },
  }).tokens;
}

/**
 * In which language to answer: the last that `--lang` names, known before anything else is looked at, so that even what is
 * wrong with the options is said in it; English without one.
 */
export function languageOf(args: readonly string[]): Language {
  const named = tokensOf(args).flatMap((token) =>
    token.kind === 'option' && token.name === 'lang' && token.value !== undefined ? [token.value] : [],
  );
  return named.findLast(isLanguage) ?? 'en';
}

/** Reads the options of a command, or says what the first wrong one should be. */
export function readOptions(
  command: CommandName,
  args: readonly string[],
  words: PrintedWords['options'],
): ReadOptions {
  const tokens = tokensOf(args);
  for (const token of tokens) {
    const wrong = faultOf(token, command, words);
    if (wrong !== undefined) return { ok: false, wrong };
  }
  const valueOf = new Map(
    tokens.flatMap((token) => (token.kind === 'option' ? [[token.name, token.value ?? true] as const] : [])),
  );
  const given = Object.fromEntries(
    Object.entries(options).map(([name, example]) => [
      name,
      valueOf.get(name) ?? (example === false ? false : undefined),
    ]),
  );
  const positionals = tokens.flatMap((token) => (token.kind === 'positional' ? [token.value] : []));
  return { ok: true, given: given as Given, positionals };
}

function faultOf(token: Token, command: CommandName, words: PrintedWords['options']): string | undefined {
  if (token.kind !== 'option') return undefined;
  const { name, rawName, value } = token;
  if (!isOption(name)) return unknownOption(name, rawName, words);
  const owner = ownTo[name] ?? command;
  if (owner !== command) return words.belongsTo(rawName, owner);
  const example = options[name];
  if (example === false) return value === undefined ? undefined : words.takesNone(rawName);
  // “--count --json” leaves the number out, and “--seed -5” does not.
  const isLeftOut = value === undefined || (!token.inlineValue && /^-\D/.test(value));
  if (isLeftOut) return words.needsValue(rawName, `${rawName} ${example}`);
  return undefined;
}

function unknownOption(name: string, rawName: string, words: PrintedWords['options']): string {
  const near = Object.keys(options).find((known) => name.length > 1 && known.startsWith(name.slice(0, 3)));
  return near === undefined ? words.unknown(rawName) : words.meant(rawName, `--${near}`);
}

function isOption(name: string): name is Option {
  return Object.hasOwn(options, name);
}
