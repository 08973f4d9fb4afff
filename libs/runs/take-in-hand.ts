import type { PartAmounts } from '#contract';
import { failed, ok, under, type Issue, type Result } from '#units';
import { checkInput } from './check-input.js';
import { foldLog } from './fold-log.js';
import { checkClockInputs, forecastClocks } from './forecast-clocks.js';
import type { RunsInput } from './input.js';
import { observedDraws } from './observe-draws.js';
import { liveAttempts, makingAttempt, type RunInHand } from './run-in-hand.js';
import { sizeBatches } from './size-batches.js';
import { stageKindFacts } from './stage-kinds.js';
import { warnOfPace } from './warn-of-pace.js';
import { workingsOf, type RunWorkings } from './workings.js';

/** A run where it stands, with its batches sized. */
export interface SizedRun {
  readonly hand: RunInHand;
  readonly amounts: PartAmounts[];
}

/**
 * Takes each run of the input as far as it goes without a plan: where it stands, how its parts are forecast, how much
 * of everything it takes.
 * @returns one per run, in their order; issues for input that makes no sense, paths from its root
 */
export function takeInHand(input: RunsInput): Result<SizedRun[]> {
  const issues = checkInput(input);
  if (issues.length > 0) return failed(...(issues as [Issue, ...Issue[]]));
  const runs: SizedRun[] = [];
  for (const [i, run] of workingsOf(input).entries()) {
    const taken = takeRun(run, input);
    const sized = sizeBatches(withoutDropped(run, taken.hand), taken.counts);
    issues.push(...taken.issues);
    if (sized.ok)
      runs.push({ hand: taken.hand, amounts: sized.value.map((part) => withPace(part, taken.hand)) });
    else issues.push(...under(['runs', i], sized.issues));
  }
  return issues.length > 0 ? failed(...(issues as [Issue, ...Issue[]])) : ok(runs);
}

function takeRun(
  run: RunWorkings,
  input: RunsInput,
): { hand: RunInHand; counts: Map<string, number>; issues: Issue[] } {
  const clockIssues = checkClockInputs(run, input);
  const numbered = input.log.map((line, i) => ({ ...line, i })).filter((line) => line.run === run.order.key);
  const folded = foldLog(
    run,
    numbered.map((line) => line.entry),
  );
  const logIssues = folded.issues.map((issue) => {
    const [at = 0, ...rest] = issue.path;
    return { ...issue, path: ['log', numbered[Number(at)]?.i ?? 0, 'entry', ...rest] };
  });
  const clocks = clockIssues.length === 0 ? forecastClocks(run, input.workshop) : new Map<string, never>();
  const standing = { run, progress: folded.progress, clocks };
  const hand: RunInHand = { ...standing, draws: observedDraws(standing) };
  const counts = new Map(
    liveAttempts(hand)
      .filter((a) => stageKindFacts[a.stage.kind].makes)
      .map((a) => [a.stage.part, a.count]),
  );
  return { hand, counts, issues: [...clockIssues, ...logIssues] };
}

/** A part that is left out and was never made needs no amounts. */
function withoutDropped(run: RunWorkings, hand: RunInHand): RunWorkings {
  const parts = run.design.parts.filter(
    ({ key }) => !hand.progress.dropped.has(key) || makingAttempt(hand, key) !== undefined,
  );
  return { ...run, design: { ...run.design, parts } };
}

function withPace(part: PartAmounts, hand: RunInHand): PartAmounts {
  return { ...part, risks: [...part.risks, ...warnOfPace(hand, part.part, part.count)] };
}
