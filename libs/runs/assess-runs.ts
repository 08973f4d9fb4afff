import {
  mouldOf,
  type BatchToMix,
  type Learned,
  type PartAmounts,
  type Risk,
  type RunTeachings,
  type WorkshopFacts,
} from '#contract';
import { failed, isNonEmpty, minute, ok, under, type Issue, type Result } from '#units';
import { checkInput } from './input/check-input.js';
import { fillingRisk, fillingTimes } from './clocks/filling-time.js';
import { cureByWeight } from './observed/cure-by-weight.js';
import { foldLog, underEntries } from './log/fold-log.js';
import { checkClockInputs, clocksOf } from './clocks/forecast-clocks.js';
import type { RunsInput } from './input/input.js';
import { addedUses } from './learned/added-uses.js';
import { nothingLearned } from './clocks/nothing-learned.js';
import { learnedFrom, withObservations } from './learned/learned-from.js';
import { batchObservations, runTeachings } from './learned/run-teachings.js';
import { taughtClocks } from './clocks/taught-clocks.js';
import { observedDraws } from './observed/observe-draws.js';
import { sightingsOf } from './log/sightings.js';
import { batchNameOf, liveAttempts, makingAttempt, type AssessedRun, type RunState } from './assessed-run.js';
import { latestAttempt, type StageAttempt } from './log/run-progress.js';
import { batchesToMix } from './amounts/batches-to-mix.js';
import { mixedTogether } from './input/mixed-together.js';
import { sizeBatches, type Making } from './amounts/size-batches.js';
import { lyeRisks } from './clocks/lye-risks.js';
import { soapRisks } from './amounts/soap-risks.js';
import { stageKindFacts } from './input/stage-kinds.js';
import { piecesWith } from './input/pieces.js';
import {
  cavitiesFor,
  cavitiesOf,
  mouldUse,
  withoutOvertaken,
  withoutParts,
  resolveRuns,
  type ResolvedRun,
} from './input/resolve-run.js';

/** A run where it stands, with its batches sized. */
/** A part of a batch that is not in the pieces any more, or never came into them. */
export interface SpoiltBatch {
  readonly attempt: StageAttempt;
  readonly amounts: PartAmounts;
}

export interface SizedRun {
  readonly assessed: AssessedRun;
  readonly amounts: PartAmounts[];
  /** What of them is mixed at once. */
  readonly batches: BatchToMix[];
  /** What went into batches that were made before and spoilt, did not reach, or were given up. */
  readonly spoilt: SpoiltBatch[];
  /** What the other runs have taught. */
  readonly learned: Learned;
  /** Those of them that are at hand. */
  readonly teachings: readonly RunTeachings[];
}

/**
 * Takes each run of the input as far as it goes without a plan: where it stands, how its parts are forecast given what
 * the other runs have taught, how much of everything it takes.
 * @param options.taught false: without lessons, for what needs amounts alone
 * @returns one per run, in their order; issues for input that makes no sense, paths from its root
 */
export function assessRuns(input: RunsInput, { taught = true } = {}): Result<SizedRun[]> {
  const checked = checkInput(input);
  if (isNonEmpty(checked)) return failed(...checked);
  const begun = resolveRuns(input).map((run) => beginRun(run, input));
  const issues = begun.flatMap((run) => run.issues);
  const teachings = begun.map(({ runState }) => runTeachings(runState));
  const uses = addedUses(
    input.learned?.uses ?? [],
    teachings.flatMap((run) => run.weighings),
  );
  const runs: SizedRun[] = [];
  for (const [i, { runState: bare }] of begun.entries()) {
    const others = teachings.filter((_, other) => other !== i);
    const learned = taught ? learnedFrom(others, input.learned) : nothingLearned;
    const weighings = uses.flatMap(({ design, part, weighings: own }) =>
      design === bare.run.design.key ? own.map((each) => ({ part, ...each })) : [],
    );
    const assessed = withDraws({ ...bare, run: { ...bare.run, weighings } }, learned, input.workshop);
    const sized = sizeRun(assessed, input.workshop);
    if (sized.ok) {
      const from = [...(input.teachings ?? []), ...others];
      runs.push({ assessed, ...sized.value, spoilt: spoiltBatches(assessed), learned, teachings: from });
    } else issues.push(...under(['runs', i], sized.issues));
  }
  return isNonEmpty(issues) ? failed(...issues) : ok(runs);
}

function sizeRun(
  assessed: AssessedRun,
  workshop: WorkshopFacts,
): Result<Pick<SizedRun, 'amounts' | 'batches'>> {
  const makings = makingsOf(assessed, liveAttempts(assessed));
  const sized = sizeBatches(withoutDropped(assessed), makings);
  if (!sized.ok) return sized;
  const batches = batchesToMix(
    assessed.run,
    sized.value.map((amounts) => ({ amounts, round: makings.get(amounts.part)?.round })),
  );
  if (!batches.ok) return batches;
  const amounts = sized.value.map((part) => withRisks(part, assessed, workshop));
  return ok({ amounts, batches: batches.value.map((batch) => withLyeRisks(batch, assessed, workshop)) });
}

interface BegunRun {
  readonly runState: RunState;
  readonly issues: Issue[];
}

function beginRun(run: ResolvedRun, input: RunsInput): BegunRun {
  const numbered = input.log.map((line, i) => ({ ...line, i })).filter((line) => line.run === run.order.key);
  const clocks = clocksOf(run, input.workshop);
  const folded = foldLog(run, numbered);
  const logIssues = underEntries(['log'], folded.issues, (place) => numbered[place]?.i ?? 0);
  const { progress } = folded;
  const isDone = (stage: string): boolean => latestAttempt(progress, stage)?.status === 'done';
  const carriedOut = withoutOvertaken(withoutParts(run, progress.dropped), isDone);
  const runState = { run: carriedOut, progress, clocks };
  return { runState, issues: [...checkClockInputs(run, input), ...logIssues] };
}

function withDraws(runState: RunState, learned: Learned, workshop: WorkshopFacts): AssessedRun {
  const learnedFor = withOwnLooks(runState, learned);
  const taught = { ...runState, clocks: taughtClocks(runState.run, runState.clocks, learnedFor) };
  const assessed = { ...taught, draws: observedDraws(taught, sightingsOf(runState)) };
  return { ...assessed, scales: cureByWeight(assessed, workshop.cureRule) };
}

/**
 * What is learned for each part of a run once its own looks count too. Those at a part's own batch are left out: they tell of that
 * batch, and of it they tell by what its times can still be (`observedDraws`).
 */
function withOwnLooks(runState: RunState, learned: Learned): (part: string) => Learned {
  const own = learned === nothingLearned ? [] : batchObservations(runState);
  const known = new Map<string, Learned>();
  return (part) => {
    const batch = batchNameOf(runState.run, part);
    const name = own.some((each) => each.batch === batch) ? batch : '';
    let found = known.get(name);
    if (found === undefined) {
      const others = own.filter((each) => each.batch !== batch).map(({ observation }) => observation);
      found = others.length === 0 ? learned : withObservations(others, learned);
      known.set(name, found);
    }
    return found;
  };
}

/** A part that is left out and was never made needs no amounts. */
function withoutDropped(assessed: AssessedRun): ResolvedRun {
  const { run } = assessed;
  const parts = run.design.parts.filter(
    ({ key }) => !assessed.progress.dropped.has(key) || makingAttempt(assessed, key) !== undefined,
  );
  return { ...run, design: { ...run.design, parts } };
}

/** A sheet for more pieces than there are cavities looks fine until the pour. */
function tooFewCavities({ part, count }: PartAmounts, { run }: AssessedRun): Risk[] {
  const found = run.parts.get(part);
  const mould = found && run.moulds.get(mouldOf(found) ?? '');
  if (found === undefined || found.kind === 'decor' || mould === undefined) return [];
  const use = mouldUse(run.design, mould.key);
  const isForAll = use !== undefined && count === piecesWith(run.order, part);
  const needed = isForAll ? cavitiesOf(run, use) : cavitiesFor(found, count);
  if (needed <= mould.cavities) return [];
  return [{ code: 'mould.too-few', level: 'high', mould: mould.title, needed, owned: mould.cavities }];
}

/** For how many pieces each part is made, in which round of its batch, and when that was begun if it was. */
function makingsOf(
  { run }: RunState,
  attempts: readonly StageAttempt[],
): Map<string, Making & { readonly round?: number | undefined }> {
  const makes = attempts.filter(({ stage }) => stageKindFacts[stage.kind].makes);
  return new Map(
    makes.map(({ stage, count, round }) => {
      const together = new Set(mixedTogether(run.design, stage.part).map(({ key }) => key));
      // Once the first part of a batch is made the lye for all of them is weighed.
      const begun = makes.flatMap((a) =>
        a.stage === stage || (together.has(a.stage.part) && a.round === round) ? (a.startedAt ?? []) : [],
      );
      const madeAt = begun.length === 0 ? undefined : minute(Math.min(...begun));
      return [stage.part, { count, madeAt, round }];
    }),
  );
}

/** One round of sizing for each time a part was made before, or went wrong in the bowl and was then left out. */
function spoiltBatches(assessed: AssessedRun): SpoiltBatch[] {
  const live = new Set(liveAttempts(assessed));
  const made = assessed.progress.attempts.filter((a) => !live.has(a) && a.status !== 'open');
  return [...made, ...leftOutOfTheBowl(assessed)]
    .filter(({ stage }) => stageKindFacts[stage.kind].makes)
    .flatMap((attempt) => {
      const sized = sizeBatches(assessed.run, makingsOf(assessed, [attempt]));
      if (!sized.ok) return [];
      return sized.value
        .filter(({ part }) => part === attempt.stage.part)
        .map((amounts) => ({ attempt, amounts }));
    });
}

/** Batter that went wrong before its part was made, and was given up with it: it was mixed all the same. */
function leftOutOfTheBowl({ progress }: AssessedRun): StageAttempt[] {
  return progress.mishaps.flatMap(({ part, attempt, response, onPurpose, at }) => {
    if (response !== 'drop-part' || onPurpose === true) return [];
    const open = progress.attempts.find(
      (a) =>
        a.stage.part === part &&
        a.attempt === attempt &&
        a.status === 'open' &&
        stageKindFacts[a.stage.kind].makes,
    );
    return open === undefined ? [] : [{ ...open, status: 'spoilt' as const, startedAt: at, endedAt: at }];
  });
}

/** What may go wrong with the lye of a batch as it is prepared, beside what its recipe alone tells. */
function withLyeRisks(batch: BatchToMix, { run }: AssessedRun, workshop: WorkshopFacts): BatchToMix {
  const part = run.parts.get(batch.parts[0] ?? '');
  const lye = part?.kind === 'batch' ? lyeRisks(part, run, workshop) : [];
  return { ...batch, risks: [...batch.risks, ...lye] };
}

/** What may go wrong with a part, beside what its recipe alone tells. */
function withRisks(part: PartAmounts, assessed: AssessedRun, workshop: RunsInput['workshop']): PartAmounts {
  const found = assessed.run.parts.get(part.part);
  const recipe = found?.kind === 'batch' ? assessed.run.recipes.get(found.recipe) : undefined;
  const soap =
    found?.kind === 'batch' && recipe !== undefined ? soapRisks(found, recipe, assessed.run, workshop) : [];
  const pace = fillingTimes(assessed)
    .filter((time) => time.part === part.part)
    .flatMap((time) => fillingRisk(time, part.count));
  return { ...part, risks: [...tooFewCavities(part, assessed), ...pace, ...part.risks, ...soap] };
}
