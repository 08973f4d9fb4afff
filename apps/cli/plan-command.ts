import {
  latestStartDocument,
  planDocument,
  planWithRemedies,
  type PlanDocument,
  type PlanWithRemedies,
} from '#contract';
import { instantOf, isTimeZone } from '#hours';
import { findLatestStart, planRuns, suggestRemedies, type RunsInput } from '#runs';
import { minute, ok, type Minute, type Result } from '#units';
import type { Arguments } from './arguments.js';
import { fileCommand } from './file-command.js';
import { badInput, DONE, NO_PLAN, type Outcome } from './outcome.js';
import { printLatestStart } from './print-latest-start.js';
import { printPlan } from './print-plan.js';
import { printRemedies } from './print-remedies.js';
import { sentences } from './text-layout.js';
import { jsonWithTexts, textsOf } from './texts-of.js';
import { printed } from './words/index.js';

/** `plan`: a run file in, a tide table or JSON out. Reads nothing but the file. */
export function planCommand(args: readonly string[]): Outcome {
  return fileCommand('plan', args, {
    document: planDocument,
    otherDocuments: { backward: latestStartDocument, remedies: planWithRemedies },
    run: planInput,
  });
}

function planInput(input: RunsInput, args: Arguments): Result<Outcome> {
  const { timeZone } = input.workshop;
  if (args.at !== undefined && isTimeZone(timeZone) && instantOf(args.at, timeZone) === undefined) {
    return ok(badInput([printed[args.language].options.noSuchTime(args.at)]));
  }
  const now = nowFor(args, timeZone, input.runs);
  if (args.odds !== undefined) return countBack(input, args, args.odds, now);
  const planned = planRuns(input, { now, seed: args.seed });
  if (!planned.ok) return planned;
  const plan = planned.value;
  if (args.remedies) return helped(input, args, plan, now);
  return ok(
    planOutcome(
      plan,
      args,
      args.json ? jsonWithTexts(plan, args) : printPlan(plan, textsOf(args, plan.timeZone)),
    ),
  );
}

function helped(input: RunsInput, args: Arguments, plan: PlanDocument, now: Minute): Result<Outcome> {
  const remedies = suggestRemedies(input, { now, seed: args.seed });
  if (!remedies.ok) return remedies;
  const both: PlanWithRemedies = { schema: 'benchtide.plan-with-remedies/3', plan, remedies: remedies.value };
  const texts = textsOf(args, plan.timeZone);
  const text = args.json
    ? jsonWithTexts(both, args)
    : `${printPlan(plan, texts)}\n${printRemedies(both, texts)}`;
  return ok(planOutcome(plan, args, text));
}

function planOutcome(plan: PlanDocument, args: Arguments, stdout: string): Outcome {
  return {
    stdout,
    stderr:
      plan.conflict.length > 0 && args.json
        ? `${sentences(plan.conflict, textsOf(args, plan.timeZone))}\n`
        : '',
    status: plan.status === 'planned' ? DONE : NO_PLAN,
  };
}

function countBack(input: RunsInput, args: Arguments, odds: number, now: Minute): Result<Outcome> {
  const { run, readyBy, seed } = args;
  const answer = findLatestStart(input, { run, readyBy, odds }, { now, seed });
  if (!answer.ok) return answer;
  const texts = textsOf(args, input.workshop.timeZone);
  return ok({
    stdout: args.json ? jsonWithTexts(answer.value, args) : printLatestStart(answer.value, texts),
    stderr: answer.value.status !== 'found' && args.json ? `${sentences(answer.value.why, texts)}\n` : '',
    status: answer.value.status === 'found' ? DONE : NO_PLAN,
  });
}

/** Without --at a file is planned as of the first start it names: the same file gives the same plan on any day. */
function nowFor(args: Arguments, zone: string, runs: readonly { readonly startAfter: string }[]): Minute {
  const texts = args.at === undefined ? runs.map((run) => run.startAfter) : [args.at];
  const instants = texts.map((text) => instantOf(text, zone) ?? 0);
  return minute(Math.min(...instants));
}
