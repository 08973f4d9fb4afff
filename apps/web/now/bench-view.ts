import type { PlanDocument, PlannedStage, PieceDesign, RunView } from '#contract';
import type { QueuedEntry } from '../offline/queue-order.js';
import { openBefore, waitsForSoap, withAdded } from './stage-order.js';

/** A break as long as this is time to go and do something else; the planner groups by the same. */
const GAP_MS = 45 * 60_000;

/** A run that is still to be made, with what is known of it. */
export interface BenchRun {
  readonly run: RunView;
  readonly document: PlanDocument;
  /** Absent: it is not in the library any more. */
  readonly design?: PieceDesign;
}

/** A stage as it is met at the bench. */
export interface BenchStage {
  readonly runId: string;
  readonly runTitle: string;
  readonly stage: PlannedStage;
  /** `logged`: done, but not with the API yet. */
  readonly state: 'open' | 'logged' | 'done';
  /** Another entry about it waits to be sent. */
  readonly isNoted: boolean;
  readonly canBeNotFirm: boolean;
  /** Titles of stages that come first and are open. */
  readonly after: readonly string[];
}

/** One stretch at the bench, over all runs. */
export interface BenchSitting {
  readonly startAt: number;
  readonly endAt: number;
  readonly stages: readonly BenchStage[];
}

/**
 * The sittings of all runs, by start. Those that meet, or nearly so, are one: the maker is one person.
 * @param queue what was logged and not sent; it counts as done here already
 */
export function sittingsOf(runs: readonly BenchRun[], queue: readonly QueuedEntry[]): BenchSitting[] {
  const single = runs
    .flatMap((run) => sittingsOfRun(run, queue))
    .sort((a, b) => a.startAt - b.startAt || a.endAt - b.endAt);
  const merged: BenchSitting[] = [];
  for (const sitting of single) {
    const last = merged.at(-1);
    if (last === undefined || sitting.startAt - last.endAt > GAP_MS) merged.push(sitting);
    else {
      const stages = [...last.stages, ...sitting.stages].sort((a, b) => startOf(a) - startOf(b));
      merged[merged.length - 1] = { ...last, endAt: Math.max(last.endAt, sitting.endAt), stages };
    }
  }
  return merged;
}

/**
 * The sittings to show: those that have begun and hold something open, the latest first, so that a stage nobody logged
 * does not stand before what is to be done now; where none has begun, the next.
 * @param now in milliseconds since 1970
 */
export function sittingsToShow(sittings: readonly BenchSitting[], now: number): readonly BenchSitting[] {
  const open = sittings.filter(({ stages }) => stages.some(({ state }) => state === 'open'));
  const begun = open.filter(({ startAt }) => startAt <= now).reverse();
  return begun.length > 0 ? begun : open.slice(0, 1);
}

/** What was done longer ago than this is found in the log of the run. */
const LATELY_MS = 12 * 60 * 60_000;

/**
 * What was done in the last half day, in that order, and what is logged and not sent. A plan made after it need not
 * count it to the sitting any more.
 */
export function doneLately(sittings: readonly BenchSitting[], now: number): BenchStage[] {
  const isLate = ({ state, stage }: BenchStage): boolean =>
    state === 'logged' || (state === 'done' && Date.parse(stage.endAt) >= now - LATELY_MS);
  return sittings.flatMap(({ stages }) => stages.filter(isLate)).sort((a, b) => startOf(a) - startOf(b));
}

/** How long the screen is kept awake after a sitting should have ended. */
const OVERRUN_MS = 60 * 60_000;

/** Whether a sitting is going on, as far as the plan knows. */
export function isGoingOn({ startAt, endAt }: BenchSitting, now: number): boolean {
  return now >= startAt && now <= endAt + OVERRUN_MS;
}

/** So long before a sitting its plan is of more use than its stages one by one. */
const NEAR_MS = 60 * 60_000;

/** Whether a sitting is so far off that nobody begins it yet. */
export function isAhead({ startAt }: BenchSitting, now: number): boolean {
  return now < startAt - NEAR_MS;
}

function sittingsOfRun({ run, document, design }: BenchRun, queue: readonly QueuedEntry[]): BenchSitting[] {
  const plan = document.runs.find((each) => each.run === run.key);
  if (plan === undefined) return [];
  const own = queue.filter((queued) => queued.runId === run.id);
  const isLogged = (key: string): boolean =>
    own.some(({ entry, refusal }) => entry.kind === 'done' && entry.stage === key && refusal === undefined);
  const stages = plan.stages
    // What was spoilt is made again as another attempt.
    .filter(({ status }) => status !== 'spoilt')
    .map((stage): BenchStage => {
      const { key, status } = stage;
      const open = status === 'planned';
      return {
        runId: run.id,
        runTitle: plan.title,
        stage,
        state: !open ? 'done' : isLogged(key) ? 'logged' : 'open',
        isNoted: own.some(({ entry }) => noteOn(entry, stage)),
        canBeNotFirm: open && waitsForSoap(withAdded(design, plan), plan.stages, key, isLogged),
        after: open ? openBefore(design, plan.stages, key, isLogged) : [],
      };
    });
  const groups = document.sittings.map(({ startAt, endAt, stages: members }) => ({
    startAt: Date.parse(startAt),
    endAt: Date.parse(endAt),
    stages: stages.filter(({ stage }) => members.some((m) => isSame(m, run.key, stage))),
  }));
  // Without a plan the open stages stay where they were, in no sitting.
  const rest = stages
    .filter((each) => !groups.some((group) => group.stages.includes(each)))
    .map((each) => ({ startAt: startOf(each), endAt: Date.parse(each.stage.endAt), stages: [each] }));
  return [...groups.filter((group) => group.stages.length > 0), ...rest];
}

function isSame(
  member: { readonly run: string; readonly stage: string; readonly attempt: number },
  run: string,
  { key, attempt }: PlannedStage,
): boolean {
  return member.run === run && member.stage === key && member.attempt === attempt;
}

function noteOn(entry: QueuedEntry['entry'], { key, part }: PlannedStage): boolean {
  if (entry.kind === 'mishap') return entry.part === part;
  return entry.kind === 'not-yet' && entry.stage === key;
}

function startOf({ stage }: BenchStage): number {
  return Date.parse(stage.startAt);
}
