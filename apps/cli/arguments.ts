import { LARGEST_INT4 } from '#contract';
import type { UnitSystem } from '#units';
import { isLanguage, languages, type Language } from '#words';
import { fileOrDemo } from './demos.js';
import { languageOf, readOptions, type CommandName, type Given } from './options.js';
import { printed, type PrintedWords } from './words/index.js';

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
  | { readonly kind: 'help'; readonly language: Language }
  | { readonly kind: 'wrong'; readonly message: string; readonly language: Language };

/** Reads the command line after the command's name. What is wrong with it is said in its language. */
export function parseArguments(command: CommandName, args: readonly string[]): Parsed {
  const language = languageOf(args);
  const words = printed[language].options;
  const wrong = (message: string): Parsed => ({ kind: 'wrong', message, language });
  const read = readOptions(command, args, words);
  if (!read.ok) return wrong(read.wrong);
  const { given, positionals } = read;
  if (given.help) return { kind: 'help', language };
  if (given['file-schema']) return { kind: 'file-schema' };
  const { units = 'metric', lang = 'en', count, seed = '1', at } = given;
  if (units !== 'metric' && units !== 'us') return wrong(words.notKnown('--units', units, 'metric, us'));
  if (!isLanguage(lang)) {
    return wrong(words.notKnown('--lang', lang, Object.keys(languages).join(', ')));
  }
  const reader: ReaderOptions = { language, units };
  if (given.rules) return { kind: 'rules', json: given.json, reader };
  if (given.fats) return { kind: 'fats', reader };
  if (given.schema) return { kind: 'schema', of: schemaAsked(given) };
  const [file, ...more] = positionals;
  if (file === undefined) return wrong(words.whichFile);
  if (more.length > 0) return wrong(words.oneFile(more.join(' ')));
  if (count !== undefined && !(/^[1-9]\d{0,3}$/.test(count) && Number(count) <= 5000)) {
    return wrong(words.count(count));
  }
  if (!/^-?\d{1,10}$/.test(seed) || Math.abs(Number(seed)) > LARGEST_INT4) {
    return wrong(words.seed(seed, String(-LARGEST_INT4), String(LARGEST_INT4)));
  }
  if (at !== undefined && !/^2[01]\d{2}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(at)) return wrong(words.at(at));
  const back = backwardFault(given, words);
  if (back !== undefined) return wrong(back);
  return {
    kind: 'run',
    arguments: {
      file: fileOrDemo(file),
      json: given.json,
      ...reader,
      count: count === undefined ? undefined : Number(count),
      at,
      seed: Number(seed),
      odds: given.odds === undefined ? undefined : Number(given.odds),
      readyBy: given['ready-by'],
      run: given.run,
      remedies: given.remedies,
    },
  };
}

/** Which of the documents that `--json` may print. */
function schemaAsked({ odds, remedies }: Given): Extract<Parsed, { kind: 'schema' }>['of'] {
  if (odds !== undefined) return 'backward';
  return remedies ? 'remedies' : 'document';
}

/** What is wrong with the options that count back from a day. */
function backwardFault(
  { odds, 'ready-by': readyBy, run, remedies }: Given,
  words: PrintedWords['options'],
): string | undefined {
  if (odds === undefined) {
    if (readyBy !== undefined) return words.goesWithOdds('--ready-by');
    return run === undefined ? undefined : words.goesWithOdds('--run');
  }
  if (!/^0?\.\d+$/.test(odds) || Number(odds) < 0.01 || Number(odds) > 0.999) return words.odds(odds);
  if (remedies) return words.remediesWithOdds;
  if (readyBy !== undefined && !/^2[01]\d{2}-\d{2}-\d{2}$/.test(readyBy)) return words.readyBy(readyBy);
  return undefined;
}
