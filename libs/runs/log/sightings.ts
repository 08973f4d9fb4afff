import type { StateId } from '#clocks';
import type { Minute } from '#units';
import { countsFrom } from '../input/counts-from.js';
import { handsOnOf } from '../input/stage-kinds.js';
import { startingStage } from '../input/stage-order.js';
import { cureStarts, liveAttempts, makingAttempt, type RunState } from '../assessed-run.js';
import { latestAttempt, type StageAttempt } from './run-progress.js';

/** One look at one state of one part: it had come already, not yet, or just then. */
export interface Sighting {
  readonly part: string;
  readonly state: StateId;
  readonly saw: 'not-yet' | 'already' | 'just-now';
  /** Whether the maker looked for it, or it follows from a stage that was done. */
  readonly by: 'look' | 'done';
  /** From the start of the state's clock. */
  readonly minutes: number;
  /** Minutes since 1970. */
  readonly at: number;
  /** When a plan asked for it, from the start of the state's clock; absent where none did. */
  readonly openedMin?: number;
  /** What the log calls the entry behind it, and where that stands. */
  readonly entry: string;
  readonly place: number;
}

/**
 * What the bench log tells of the states of the soap that is there now.
 * - “Not ready yet for a stage” at t: of several states that the stage waits for, the one that is forecast last had
 *   not come.
 * - “Stage done”, begun at t: every state that it waited for had come, and none that would have closed it.
 * - “Seen”: as it says.
 * @returns in the order of the log, so that of two that contradict each other the later counts
 */
export function sightingsOf(runState: RunState): Sighting[] {
  const { progress, run } = runState;
  const sightings: Sighting[] = [];
  const note = (
    part: string,
    state: StateId,
    at: number,
    saw: Sighting['saw'],
    { opened, ...from }: Pick<Sighting, 'by' | 'entry' | 'place'> & { readonly opened?: Minute | undefined },
  ): void => {
    const since = clockStart(runState, part, state);
    if (since !== undefined && at > since) {
      const openedMin = opened !== undefined && opened > since ? opened - since : undefined;
      sightings.push({
        ...{ part, state, saw, minutes: at - since, at, ...from },
        ...(openedMin !== undefined && { openedMin }),
      });
    }
  };
  for (const { stage, attempt, at, entry, place, opened } of progress.notYet) {
    if (latestAttempt(progress, stage)?.attempt !== attempt) continue;
    const blamed = lastToOpen(runState, stage);
    if (blamed !== undefined)
      note(blamed.part, blamed.state, at, 'not-yet', { by: 'look', entry, place, opened });
  }
  for (const { stage, status, startedAt, endedAt, entry, place = 0, opened } of progress.attempts) {
    if (status !== 'done' || startedAt === undefined || endedAt === undefined || entry === undefined)
      continue;
    // Mixing for a layer may begin before what it is poured on holds it.
    const handled = Math.min(startedAt + handsOnOf(stage).setupMin, endedAt);
    const from = { by: 'done', entry, place, opened } as const;
    for (const wait of run.design.waits) {
      if (wait.stage !== stage.key) continue;
      if (wait.opens !== undefined) note(wait.part, wait.opens, handled, 'already', from);
      if (wait.closes !== undefined) note(wait.part, wait.closes, handled, 'not-yet', from);
    }
  }
  for (const { part, attempt, state, saw, at, since, entry, place } of progress.seen) {
    if (makingAttempt(runState, part)?.attempt !== attempt) continue;
    if (since === undefined) note(part, state, at, saw, { by: 'look', entry, place });
    else sightings.push({ part, state, saw, by: 'look', minutes: at - since, at, entry, place });
  }
  return sightings.sort((a, b) => a.place - b.place);
}

/** When the clock of a state started, as the log has it. */
function clockStart(runState: RunState, part: string, state: StateId): Minute | undefined {
  return clockStarter(runState, part, state)?.endedAt;
}

/** The stage at whose end a part's clock begins: its making, for the cure its unmoulding, or what prepares its batch. */
export function clockStarter(
  runState: RunState,
  part: string,
  state: StateId | undefined,
): StageAttempt | undefined {
  const beginning = state === undefined ? 'making' : countsFrom(state);
  if (state === undefined || beginning === 'making') return makingAttempt(runState, part);
  if (beginning === 'unmoulding') return cureStarts(runState).find((start) => start.part === part)?.attempt;
  const from = startingStage(runState.run.design, part, state);
  return liveAttempts(runState).find((attempt) => attempt.stage === from);
}

function lastToOpen(
  runState: RunState,
  stage: string,
): { readonly part: string; readonly state: StateId } | undefined {
  let last: { readonly part: string; readonly state: StateId; readonly at: number } | undefined;
  for (const wait of runState.run.design.waits) {
    if (wait.stage !== stage || wait.opens === undefined) continue;
    const since = clockStart(runState, wait.part, wait.opens);
    if (since === undefined) continue;
    const at = since + (runState.clocks.get(wait.part)?.get(wait.opens)?.medianMin ?? 0);
    if (last === undefined || at > last.at) last = { part: wait.part, state: wait.opens, at };
  }
  return last;
}
