import type { PlanDocument, PlanJudgement } from '#contract';
import { odds, standingSchedule, withoutDueDates, type Odds, type Schedule } from '#planner';
import { minuteOfIso, ok, type Result } from '#units';
import { liveAttempts, stageId, type AssessedRun } from '../assessed-run.js';
import { assessRuns } from '../assess-runs.js';
import type { RunsInput } from '../input/input.js';
import { buildNetwork } from './build-network.js';
import type { Network } from './network-references.js';
import { withPaceOdds } from './pace-odds.js';
import { presentGuarantee } from './present-guarantee.js';
import { presentOdds } from './present-odds.js';
import { cureDays } from './present-run.js';
import { hasEarliest, withoutEarliest } from './solve-runs.js';

/** What is taken so long after the last stage of a plan bears on it no more, in minutes: no wait for soap at hand is as long. */
const BEARS_FOR = 14 * 1440;

/** Counts up where the same plan comes to something else than before, or to more, so that kept judgements are renewed. */
const JUDGES = 2;

/** A plan as it is stored, and what its run is planned from now. */
export interface StandingPlan {
  readonly input: RunsInput;
  readonly document: PlanDocument;
}

/**
 * What a stored plan comes to as it stands: its stages stay where it has them, and hours, what other runs take and what was
 * learned count as they are now. It is judged as of when it was made, from the same seed, so it has the odds that it was stored
 * with for as long as nothing of that has changed.
 *
 * Where hours have changed so that a stage cannot be where the plan has it, it is judged as if it came as soon after that as
 * can be; where nothing can be kept so, nothing comes of it.
 * @param isKnown told all that the judgement rests on, as text; what it knows is not judged again
 * @returns undefined where it is known, or there is no plan to judge; issues for input that makes no sense any more
 */
export function judgeStanding(
  { input, document }: StandingPlan,
  isKnown: (basis: string) => boolean = () => false,
): Result<PlanJudgement | undefined> {
  if (document.status !== 'planned' || document.odds === null) return ok(undefined);
  const taken = assessRuns(input);
  if (!taken.ok) return taken;
  const assessed = taken.value.map((run) => run.assessed);
  const now = minuteOfIso(document.madeAt);
  const around = { ...input, busy: bearing(input, document) };
  const { seed, scenarios } = document.odds;
  const judgeAs = (runs: readonly AssessedRun[]): Judged => {
    const network = buildNetwork(around, runs, { now, seed, scenarios });
    const starts = startsIn(document, runs);
    return { runs, network, starts, schedule: standingSchedule(network.problem, starts) };
  };
  const kept = judgeAs(assessed);
  const judged =
    isAsPlanned(kept) || !assessed.some(hasEarliest) ? kept : judgeAs(assessed.map(withoutEarliest));
  if (isKnown(basisOf(judged))) return ok(undefined);
  const missed = document.runs.some(({ cautions }) =>
    cautions.some(({ code }) => code === 'caution.missed-day'),
  );
  return ok(judgement(judged, { seed, scenarios, missed }));
}

/** A plan that is to be judged, and the planner's question that it answers. */
interface Judged {
  readonly runs: readonly AssessedRun[];
  readonly network: Network;
  readonly starts: ReadonlyMap<string, number>;
  readonly schedule: Schedule | undefined;
}

function bearing({ busy = [] }: RunsInput, { runs }: PlanDocument): NonNullable<RunsInput['busy']> {
  const open = runs.flatMap(({ stages }) => stages.filter(({ status }) => status === 'planned'));
  const end = Math.max(...open.map(({ endAt }) => minuteOfIso(endAt))) + BEARS_FOR;
  const start = Math.min(...open.map(({ startAt }) => minuteOfIso(startAt)));
  return busy.filter(({ from, to }) => from < end && to > start);
}

function startsIn({ runs }: PlanDocument, assessed: readonly AssessedRun[]): Map<string, number> {
  return new Map(
    assessed.flatMap((each) => {
      const { key } = each.run.order;
      const stages = runs.find(({ run }) => run === key)?.stages ?? [];
      return liveAttempts(each).flatMap(({ stage, attempt }): [string, number][] => {
        const found = stages.find((s) => s.key === stage.key && s.attempt === attempt);
        return found === undefined ? [] : [[stageId(key, stage.key, attempt), minuteOfIso(found.startAt)]];
      });
    }),
  );
}

function isAsPlanned({ starts, schedule }: Judged): boolean {
  return schedule !== undefined && [...starts].every(([id, at]) => schedule.starts.get(id) === at);
}

function basisOf({ network: { problem }, starts, runs }: Judged): string {
  const bowls = runs.map(({ clocks }) => [...clocks.values()].map((states) => [...states.values()]));
  return JSON.stringify([JUDGES, problem, [...starts], bowls]);
}

interface JudgingOptions {
  readonly seed: number;
  readonly scenarios: number;
  /** The plan gave up a day that could not be kept: only the odds tell of it. */
  readonly missed: boolean;
}

function judgement({ runs, network, schedule }: Judged, options: JudgingOptions): PlanJudgement {
  const problem = options.missed ? withoutDueDates(network.problem) : network.problem;
  const found = schedule === undefined ? hopeless(options) : odds(network.problem, schedule, options);
  const along = schedule ?? { starts: new Map<string, number>(), precedences: [], certainty: 0.5 };
  const told = withPaceOdds(presentOdds(found, network, along), runs);
  return {
    ...told,
    guarantee: schedule === undefined ? null : presentGuarantee({ ...network, problem }, schedule, runs),
    ready: runs.map((run) => ({
      run: run.run.order.key,
      ...cureDays(run, schedule && { schedule, countOn: found.countOn }),
    })),
  };
}

function hopeless({ seed, scenarios }: JudgingOptions): Odds {
  return {
    ...{ atAll: 0, onTime: 0, asPlanned: 0, standardError: 0 },
    ...{ countOn: new Map<string, number>(), scenarios, seed, losses: [] },
  };
}
