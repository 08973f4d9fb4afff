import { band, conditioned, zOf, type Band, type StateId } from '#clocks';
import type { Truncation } from '#planner';
import type { Minute } from '#units';
import { drawOf, makingAttempt, type RunInHand, type RunStanding } from './run-in-hand.js';
import { latestAttempt } from './run-progress.js';

/**
 * What the bench log tells about the draws behind a run's clocks.
 * "Not firm yet at t" means the state comes after t: of several states that the stage waits for, the one that is
 * forecast last is blamed. "Done at t" means that every state it waited for had come by t.
 */
export function observedDraws(hand: RunStanding): Record<string, Truncation> {
  const draws: Record<string, Truncation> = {};
  const note = (part: string, state: StateId, at: Minute, side: 'above' | 'below'): void => {
    const seen = placeOf(hand, part, state, at);
    if (seen === undefined) return;
    draws[seen.draw] = conditioned(draws[seen.draw] ?? {}, { [side]: seen.z });
  };
  for (const { stage, attempt, at } of hand.progress.notYet) {
    if (latestAttempt(hand.progress, stage)?.attempt !== attempt) continue;
    const blamed = lastToOpen(hand, stage);
    if (blamed !== undefined) note(blamed.part, blamed.state, at, 'above');
  }
  for (const attempt of hand.progress.attempts) {
    const { status, startedAt } = attempt;
    if (status !== 'done' || startedAt === undefined) continue;
    for (const wait of hand.run.design.waits) {
      if (wait.stage !== attempt.stage.key || wait.opens === undefined) continue;
      note(wait.part, wait.opens, startedAt, 'below');
    }
  }
  return draws;
}

/** The band of a state as it stands now: the forecast, given what the log has told. @returns undefined without a clock */
export function bandNow(hand: RunInHand, part: string, state: StateId): Band | undefined {
  const forecast = hand.clocks.get(part)?.get(state);
  if (forecast === undefined) return undefined;
  return band(forecast, hand.draws[drawOf(hand.run, part, state)]);
}

function placeOf(
  hand: RunStanding,
  part: string,
  state: StateId,
  at: Minute,
): { readonly draw: string; readonly z: number } | undefined {
  const made = makingAttempt(hand, part);
  const forecast = hand.clocks.get(part)?.get(state);
  if (made?.endedAt === undefined || forecast === undefined || at <= made.endedAt) return undefined;
  return {
    draw: drawOf(hand.run, part, state),
    z: zOf(forecast, at - made.endedAt),
  };
}

function lastToOpen(
  hand: RunStanding,
  stage: string,
): { readonly part: string; readonly state: StateId } | undefined {
  let last: { readonly part: string; readonly state: StateId; readonly at: number } | undefined;
  for (const wait of hand.run.design.waits) {
    const made = makingAttempt(hand, wait.part);
    if (wait.stage !== stage || wait.opens === undefined || made?.endedAt === undefined) continue;
    const at = made.endedAt + (hand.clocks.get(wait.part)?.get(wait.opens)?.medianMin ?? 0);
    if (last === undefined || at > last.at) last = { part: wait.part, state: wait.opens, at };
  }
  return last;
}
