import type { ConflictReason } from '#contract';
import type { OpenInterval } from '#hours';
import {
  odds,
  pinned,
  plan,
  type Odds,
  type PlanOptions as PlannerOptions,
  type Problem,
  type ScheduleOutcome,
  withoutDueDates,
} from '#planner';
import type { PlanOptions, RunsInput } from '../input/input.js';
import { liveAttempts, stageId, type AssessedRun } from '../assessed-run.js';
import { buildNetwork } from './build-network.js';
import { checkCapacity } from './capacity-check.js';
import type { Network } from './network-references.js';
import { stageNamed, type NetworkReferences } from './network-references.js';

const DEFAULT_SCENARIOS = 2000;

/** What the planner makes of runs in hand, before any of it is told. */
export interface SolvedRuns {
  /** What the names of the problem stand for. */
  readonly references: NetworkReferences;
  /** The question that was answered; pins are part of it only where there is no plan, which they may be why. */
  readonly problem: Problem;
  /** The question that the odds are about: the same, with the day asked for even where no plan can keep it. */
  readonly judged: Problem;
  /** What there is too little of, whatever the plan; then nothing was planned. */
  readonly scarce: readonly ConflictReason[];
  readonly outcome: ScheduleOutcome | undefined;
  readonly odds: Odds | null;
  /** It is planned without a day that cannot be kept any more. */
  readonly missed: boolean;
}

/**
 * Plans runs that were taken in hand.
 * @param open when the maker can be at the bench, where that was looked up before; else as the hours say
 */
export function solveRuns(
  input: RunsInput,
  assessedRuns: readonly AssessedRun[],
  options: PlanOptions,
  open?: readonly OpenInterval[],
): SolvedRuns {
  const solved = solve(input, assessedRuns, options, open);
  // How soon the maker has ever done something is no law of soap: where it leaves no plan, it does not count.
  if (solved.outcome?.status !== 'conflict' || !assessedRuns.some(hasEarliest)) return solved;
  return solve(input, assessedRuns.map(withoutEarliest), options, open);
}

/** Whether a plan keeps to how soon the maker has ever done something, which is no law of soap. */
export function hasEarliest({ clocks }: AssessedRun): boolean {
  return [...clocks.values()].some((states) =>
    [...states.values()].some(({ earliestMin }) => earliestMin !== undefined),
  );
}

export function withoutEarliest(assessed: AssessedRun): AssessedRun {
  const clocks = new Map(
    [...assessed.clocks].map(([part, states]) => [
      part,
      new Map([...states].map(([state, { earliestMin: _earliest, ...forecast }]) => [state, forecast])),
    ]),
  );
  return { ...assessed, clocks };
}

function solve(
  input: RunsInput,
  assessedRuns: readonly AssessedRun[],
  options: PlanOptions,
  open?: readonly OpenInterval[],
): SolvedRuns {
  const network = buildNetwork(input, assessedRuns, options, open);
  const { references } = network;
  const scarce = checkCapacity(network);
  if (scarce.length > 0) {
    return { ...network, judged: network.problem, scarce, outcome: undefined, odds: null, missed: false };
  }
  const { seed = 1, scenarios = DEFAULT_SCENARIOS, stop } = options;
  const pins = pinsById(assessedRuns, options);
  const solved = planOrMiss(network, assessedRuns, { seed, scenarios, pins, ...(stop && { stop }) });
  if (solved.outcome.status === 'planned') return { ...solved, references, scarce };
  return { ...solved, references, problem: pinned(solved.problem, pins), scarce };
}

function pinsById(assessedRuns: readonly AssessedRun[], { pins = [] }: PlanOptions): Map<string, number> {
  return new Map(
    assessedRuns.flatMap((assessed) =>
      liveAttempts(assessed).flatMap(({ stage, attempt, status }) => {
        const key = assessed.run.order.key;
        const at = pins.find((pin) => pin.run === key && pin.stage === stage.key)?.startAt;
        return at === undefined || status !== 'open' ? [] : [[stageId(key, stage.key, attempt), at] as const];
      }),
    ),
  );
}

/**
 * Plans; where a run that has begun cannot be ready by its day any more, plans it all the same without that day, since
 * soap in the mould has to be seen through. The odds still tell how likely the day is.
 */
function planOrMiss(
  { problem, references }: Network,
  assessedRuns: readonly AssessedRun[],
  options: PlannerOptions,
): ReturnType<typeof plan> & Pick<SolvedRuns, 'problem' | 'judged' | 'missed'> {
  const first = plan(problem, options);
  const { outcome } = first;
  const late =
    outcome.status === 'conflict' &&
    outcome.requirements.some(
      (each) => each.kind === 'latest' && stageNamed(references, each.stage).stage === null,
    );
  const begun = assessedRuns.some(({ progress }) => progress.attempts.some((a) => a.status !== 'open'));
  if (!late || !begun) return { ...first, problem, judged: problem, missed: false };
  const open = withoutDueDates(problem);
  const made = plan(open, options);
  const judged =
    made.outcome.status === 'planned' && made.odds !== null
      ? odds(problem, made.outcome.schedule, { seed: options.seed, scenarios: made.odds.scenarios })
      : null;
  return { ...made, odds: judged, problem: open, judged: problem, missed: true };
}
