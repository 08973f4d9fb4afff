import { z } from 'zod';
import { isTimeZone } from '#hours';
import type { RunsInput } from '#runs';
import type { Issue, Result } from '#units';
import type { Texts } from '#words';
import { parseArguments, type Arguments, type ReaderOptions } from './arguments.js';
import { fileSchema } from './file-schema.js';
import type { CommandName } from './options.js';
import { badInput, problemLines, told, withNotes, type Outcome } from './outcome.js';
import { problemText, readInput } from './read-run-file.js';
import { textsOf } from './texts-of.js';
import { usageOf } from './usage.js';

/** What a command that reads a run file does in its own way. */
interface FileCommand {
  /** What `--json` prints. */
  readonly document: z.ZodType;
  /** What it prints where it counts back from a day, and with remedies. */
  readonly otherDocuments?: { readonly backward: z.ZodType; readonly remedies: z.ZodType };
  /** Answers to options of this command that need no file. */
  readonly lists?: {
    readonly fats?: (reader: ReaderOptions) => string;
    readonly rules?: (json: boolean, reader: ReaderOptions) => string;
  };
  /** @returns issues with paths from the root of the input */
  readonly run: (input: RunsInput, args: Arguments) => Result<Outcome>;
}

/** Runs a command that reads a run file: help, schemas, wrong arguments and bad files are answered here. */
export function fileCommand(
  name: CommandName,
  args: readonly string[],
  { document, otherDocuments, lists, run }: FileCommand,
): Outcome {
  const parsed = parseArguments(name, args);
  switch (parsed.kind) {
    case 'help':
      return told(`${usageOf(name, parsed.language)}\n`);
    case 'schema':
      return told(jsonText(z.toJSONSchema({ document, ...otherDocuments }[parsed.of] ?? document)));
    case 'file-schema':
      return told(fileSchema());
    case 'wrong':
      return badInput([parsed.message, ...usageOf(name, parsed.language).split('\n')]);
    case 'fats':
      return told((lists?.fats ?? belongsElsewhere)(parsed.reader));
    case 'rules':
      return told((lists?.rules ?? belongsElsewhere)(parsed.json, parsed.reader));
    case 'run': {
      const { file, count } = parsed.arguments;
      const textsIn = (timeZone: string): Texts => textsOf(parsed.arguments, timeZone);
      const read = readInput(file, count, textsIn);
      if (!read.ok) return badInput(read.problems);
      const outcome = run(read.input, parsed.arguments);
      if (outcome.ok) return withNotes(outcome.value, read.notes);
      const { timeZone } = read.input.workshop;
      const texts = textsIn(isTimeZone(timeZone) ? timeZone : 'UTC');
      const lineOf = (issue: Issue): string => problemText(issue, read.locate, texts);
      return badInput(problemLines(outcome.issues, lineOf, texts.language));
    }
  }
}

/** A document as `--json` prints it. */
function jsonText(document: unknown): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}

function belongsElsewhere(): never {
  throw new Error('the option belongs to another command');
}
