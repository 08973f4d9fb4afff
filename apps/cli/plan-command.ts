import { z } from 'zod';
import { planDocument } from '#contract';
import { instantOf, isTimeZone } from '#hours';
import { planRuns } from '#runs';
import { minute, type Minute } from '#units';
import { fileSchema } from './file-schema.js';
import { parseArguments, usageOf, type Arguments } from './arguments.js';
import { badInput, DONE, NO_PLAN, told, type Outcome } from './outcome.js';
import { printPlan } from './print-plan.js';
import { problemText, readInput } from './read-run-file.js';

/** `plan`: a run file in, a tide table or JSON out. Reads nothing but the file. */
export function planCommand(args: readonly string[]): Outcome {
  const parsed = parseArguments('plan', args);
  switch (parsed.kind) {
    case 'help':
      return told(`${usageOf('plan')}\n`);
    case 'schema':
      return told(`${JSON.stringify(z.toJSONSchema(planDocument), null, 2)}\n`);
    case 'file-schema':
      return told(fileSchema());
    case 'rules':
    case 'fats':
      throw new Error(`--${parsed.kind} belongs to another command`);
    case 'wrong':
      return badInput([parsed.message, usageOf('plan')]);
    case 'run':
      return planFile(parsed.arguments);
  }
}

function planFile(args: Arguments): Outcome {
  const read = readInput(args.file, args.count);
  if (!read.ok) return badInput(read.problems);
  const { timeZone } = read.input.workshop;
  if (args.at !== undefined && isTimeZone(timeZone) && instantOf(args.at, timeZone) === undefined) {
    return badInput([
      `--at ${args.at} is no day or time that exists; accepted: one such as 2026-11-27T18:00.`,
    ]);
  }
  const now = nowFor(args, timeZone, read.input.runs);
  const planned = planRuns(read.input, { now, seed: args.seed });
  if (!planned.ok) return badInput(planned.issues.map((issue) => problemText(issue, read.locate)));
  const plan = planned.value;
  return {
    stdout: args.json ? `${JSON.stringify(plan, null, 2)}\n` : printPlan(plan, args.units),
    stderr: plan.conflict.length > 0 && args.json ? `${plan.conflict.map((c) => c.text).join('\n')}\n` : '',
    status: plan.status === 'planned' ? DONE : NO_PLAN,
  };
}

/** Without --at a file is planned as of the first start it names: the same file gives the same plan on any day. */
function nowFor(args: Arguments, zone: string, runs: readonly { readonly startAfter: string }[]): Minute {
  const texts = args.at === undefined ? runs.map((run) => run.startAfter) : [args.at];
  const instants = texts.map((text) => instantOf(text, zone) ?? 0);
  return minute(Math.min(...instants));
}
