import { z } from 'zod';
import { planDocument } from '#contract';
import { instantOf, isTimeZone } from '#hours';
import { planRuns } from '#runs';
import { minute, type Minute } from '#units';
import { parsePlanArguments, usage, type PlanArguments } from './arguments.js';
import { printPlan } from './print-plan.js';
import { problemText, readRunFile } from './read-run-file.js';

/** Exit statuses; 64 is EX_USAGE of sysexits(3). */
const PLANNED = 0;
const NO_PLAN = 2;
const BAD_INPUT = 64;

/** What a command says and how it ends. */
export interface Outcome {
  readonly stdout: string;
  readonly stderr: string;
  readonly status: number;
}

/** `plan`: a run file in, a tide table or JSON out. Reads nothing but the file. */
export function planCommand(args: readonly string[]): Outcome {
  const parsed = parsePlanArguments(args);
  switch (parsed.kind) {
    case 'help':
      return { stdout: `${usage}\n`, stderr: '', status: PLANNED };
    case 'schema':
      return {
        stdout: `${JSON.stringify(z.toJSONSchema(planDocument), null, 2)}\n`,
        stderr: '',
        status: PLANNED,
      };
    case 'wrong':
      return { stdout: '', stderr: `${parsed.message}\n${usage}\n`, status: BAD_INPUT };
    case 'plan':
      return planFile(parsed.arguments);
  }
}

function planFile(args: PlanArguments): Outcome {
  const read = readRunFile(args.file);
  if (!read.ok) return badInput(read.problems);
  const { timeZone } = read.file.workshop;
  if (args.at !== undefined && isTimeZone(timeZone) && instantOf(args.at, timeZone) === undefined) {
    return badInput([
      `--at ${args.at} is no day or time that exists; accepted: one such as 2026-11-27T18:00.`,
    ]);
  }
  const now = nowFor(args, timeZone, read.file.runs);
  const planned = planRuns(read.file, { now, seed: args.seed });
  if (!planned.ok) return badInput(planned.issues.map((issue) => problemText(issue, read.locate)));
  const plan = planned.value;
  return {
    stdout: args.json ? `${JSON.stringify(plan, null, 2)}\n` : printPlan(plan),
    stderr: plan.conflict.length > 0 && args.json ? `${plan.conflict.map((c) => c.text).join('\n')}\n` : '',
    status: plan.status === 'planned' ? PLANNED : NO_PLAN,
  };
}

/** Without --at a file is planned as of the first start it names: the same file gives the same plan on any day. */
function nowFor(args: PlanArguments, zone: string, runs: readonly { readonly startAfter: string }[]): Minute {
  const texts = args.at === undefined ? runs.map((run) => run.startAfter) : [args.at];
  const instants = texts.map((text) => instantOf(text, zone) ?? 0);
  return minute(Math.min(...instants));
}

function badInput(problems: readonly string[]): Outcome {
  return { stdout: '', stderr: `${problems.join('\n')}\n`, status: BAD_INPUT };
}
