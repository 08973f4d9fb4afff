import type { Caution, PlanDocument, RunPlan } from '#contract';
import { instantOf } from '#hours';
import { sittings, type Schedule } from '#planner';
import {
  failed,
  isNonEmpty,
  isoInstant,
  minute,
  ok,
  under,
  type Issue,
  type Minute,
  type Result,
} from '#units';
import { checkHours } from '../input/check-input.js';
import { unknownName } from '../input/name-issues.js';
import { describeConflict } from './describe-conflict.js';
import type { Network } from './network-references.js';
import { describeResolution } from './describe-timing.js';
import { stageNamed } from './network-references.js';
import type { PlanOptions, RunsInput } from '../input/input.js';
import { withPaceOdds } from './pace-odds.js';
import { presentOdds } from './present-odds.js';
import type { AssessedRun } from '../assessed-run.js';
import { presentRun } from './present-run.js';
import { solveRuns, type SolvedRuns } from './solve-runs.js';
import { stageWindows } from './stage-windows.js';
import { presentGuarantee } from './present-guarantee.js';
import { assessRuns, type SizedRun } from '../assess-runs.js';
import { MOST_KOH_PERCENT, potashOf } from '../clocks/forecast-clocks.js';

/** Two years, in minutes. */
const FURTHEST_START = 2 * 365 * 1440;

/**
 * Plans one or several runs together, from recipe to tide table: amounts, clocks, windows, placements, odds and
 * weak links, or the conflict that stands in the way.
 *
 * Pure and reproducible: the same input and options give the same document.
 * @returns the plan document, whose status may be a conflict; issues only for input that makes no sense
 */
export function planRuns(input: RunsInput, options: PlanOptions): Result<PlanDocument> {
  const full = planInFull(input, options);
  return full.ok ? ok(full.value.document) : full;
}

/** A plan with what it was told from, for those who compare plans. */
export interface FullPlan {
  readonly document: PlanDocument;
  readonly assessedRuns: readonly AssessedRun[];
  readonly solved: SolvedRuns;
}

/** `planRuns`, together with what the document was written from. */
export function planInFull(input: RunsInput, options: PlanOptions): Result<FullPlan> {
  const taken = assessRuns(input);
  const late = [
    ...under(['workshop'], checkHours(input.workshop)),
    ...farStarts(input, options.now),
    ...unknownPins(input, options),
    ...(taken.ok ? potashIssues(input, taken.value) : []),
  ];
  if (!taken.ok) return { ok: false, issues: [...taken.issues, ...late] };
  if (isNonEmpty(late)) return failed(...late);
  const assessedRuns = taken.value.map(({ assessed }) => assessed);
  const bare = taken.value.map((run) => presentRun(run.assessed, run, undefined));
  const solved = solveRuns(input, assessedRuns, options);
  return ok({ document: document(input, options, { assessedRuns, bare, solved }), assessedRuns, solved });
}

/** Hours are looked up from now to past the last start, so a start in another century would take as long. */
function farStarts({ runs, workshop }: RunsInput, now: Minute): Issue[] {
  return runs.flatMap((run, i) => {
    const start = instantOf(run.startAfter, workshop.timeZone);
    if (start === undefined || start <= now + FURTHEST_START) return [];
    const { startAfter } = run;
    return [{ code: 'run.start-too-far', path: ['runs', i, 'startAfter'], value: startAfter, startAfter }];
  });
}

/** Potash soap is a paste, and no clock tells when it can be handled: see `potashOf`. */
function potashIssues({ recipes }: RunsInput, sized: readonly SizedRun[]): Issue[] {
  const potash = sized.flatMap(({ assessed: { run } }) =>
    run.design.parts.flatMap((part) =>
      part.kind === 'batch' && potashOf(part, run) !== undefined ? [part.recipe] : [],
    ),
  );
  return recipes.flatMap(({ key, title, kohSharePercent }, i): Issue[] => {
    if (!potash.includes(key)) return [];
    const path = ['recipes', i, 'kohSharePercent'];
    const accepted = { kind: 'range', low: 0, high: MOST_KOH_PERCENT, unit: '%' } as const;
    const percent = kohSharePercent;
    return [{ code: 'plan.potash', path, value: percent, accepted, recipe: title, percent }];
  });
}

function unknownPins({ runs, designs }: RunsInput, { pins = [] }: PlanOptions): Issue[] {
  return pins.flatMap((pin, i) => {
    const order = runs.find(({ key }) => key === pin.run);
    if (order === undefined) return [unknownName(['pins', i, 'run'], 'run', pin.run, runs)];
    const stages = designs.find(({ key }) => key === order.design)?.stages ?? [];
    const isKnown = stages.some(({ key }) => key === pin.stage);
    return isKnown ? [] : [unknownName(['pins', i, 'stage'], 'stage', pin.stage, stages)];
  });
}

function document(
  input: RunsInput,
  options: PlanOptions,
  found: {
    readonly assessedRuns: readonly AssessedRun[];
    readonly bare: readonly RunPlan[];
    readonly solved: SolvedRuns;
  },
): PlanDocument {
  const zone = input.workshop.timeZone;
  const { assessedRuns, bare } = found;
  const { scarce, problem, references, outcome, odds, missed } = found.solved;
  const network = { problem, references };
  const base: PlanDocument = {
    schema: 'benchtide.plan/4',
    madeAt: isoInstant(options.now),
    timeZone: zone,
    status: 'conflict',
    runs: [...bare],
    sittings: [],
    odds: null,
    weakLinks: [],
    guarantee: null,
    conflict: [],
  };
  if (outcome === undefined) return { ...base, conflict: [...scarce] };
  if (outcome.status === 'undecided') return { ...base, status: 'undecided' };
  if (outcome.status === 'conflict') {
    const { requirements } = outcome;
    const conflict = describeConflict(requirements, network);
    const { seed = 1, stop } = options;
    const resolution = describeResolution(requirements, { ...network, zone, seed, stop });
    return { ...base, conflict, resolution };
  }
  const placed = {
    windows: stageWindows(problem, outcome.schedule),
    schedule: outcome.schedule,
    countOn: odds?.countOn ?? new Map<string, number>(),
  };
  const planned: PlanDocument = {
    ...base,
    status: 'planned',
    runs: assessedRuns.map((assessed, i) => {
      const run = presentRun(
        assessed,
        { amounts: bare[i]?.amounts ?? [], batches: bare[i]?.batches ?? [] },
        placed,
      );
      return missed ? { ...run, cautions: [...run.cautions, ...missedDay(assessed)] } : run;
    }),
    sittings: sittingsOf(network, outcome.schedule),
    ...presentOdds(odds, network, outcome.schedule),
    guarantee: presentGuarantee(network, outcome.schedule, assessedRuns),
  };
  return withPaceOdds(planned, assessedRuns);
}

function missedDay({ run }: AssessedRun): Caution[] {
  const { readyBy } = run.order;
  if (readyBy === undefined) return [];
  return [{ code: 'caution.missed-day', readyBy }];
}

function sittingsOf({ problem, references }: Network, schedule: Schedule): PlanDocument['sittings'] {
  const open = problem.stages.filter((s) => s.fixed === undefined);
  return sittings({ ...problem, stages: open }, schedule.starts).map((sitting) => ({
    startAt: isoInstant(minute(sitting.start)),
    endAt: isoInstant(minute(sitting.end)),
    stages: sitting.stages.flatMap((id) => {
      const { run, stage, attempt } = stageNamed(references, id);
      return stage === null ? [] : [{ run, stage, attempt }];
    }),
  }));
}
