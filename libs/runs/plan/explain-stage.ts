import { states, type StateId } from '#clocks';
import { localText } from '#hours';
import type { Binding } from '#planner';
import { minute } from '#units';
import { afterText, bandText, durationText } from '../clocks/duration-text.js';
import { bandNow } from '../observed/observe-draws.js';
import type { StageAttempt } from '../log/run-progress.js';
import { makingAttempt, type RunInHand } from '../run-in-hand.js';
import type { StageWindow } from './stage-windows.js';

/**
 * Why a stage lies where it does, in a sentence or two: what it waits for, with the factors that count most, and
 * what closes it.
 */
export function explainStage(
  hand: RunInHand,
  attempt: StageAttempt,
  window: StageWindow,
  zone: string,
): string {
  const { design } = hand.run;
  const sentences: string[] = [];
  for (const wait of design.waits) {
    if (wait.stage !== attempt.stage.key) continue;
    if (wait.opens !== undefined) sentences.push(opening(hand, wait.part, wait.opens));
    if (wait.closes !== undefined) sentences.push(closing(hand, wait.part, wait.closes));
  }
  for (const link of design.links) {
    if (link.to !== attempt.stage.key) continue;
    const from = hand.run.stages.get(link.from)?.title ?? link.from;
    if (link.atLeastMin > 0) sentences.push(`at least ${durationText(link.atLeastMin)} after “${from}”`);
    if (link.atMostMin !== undefined) sentences.push(`within ${durationText(link.atMostMin)} of “${from}”`);
  }
  const hours = hoursSentence(window.likely.earliestBy, window, zone);
  if (hours !== undefined) sentences.push(hours);
  if (sentences.length === 0) sentences.push(orderSentence(hand, attempt));
  const text = sentences.filter((s) => s !== '').join('; ');
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** What a stage follows when nothing but order, hours and hands decides. */
function orderSentence(hand: RunInHand, attempt: StageAttempt): string {
  const before = hand.run.design.links
    .filter((link) => link.to === attempt.stage.key)
    .map((link) => `“${hand.run.stages.get(link.from)?.title ?? link.from}”`);
  return before.length === 0
    ? 'free: nothing but your hours and hands decides'
    : `any time after ${before.join(' and ')}`;
}

function opening(hand: RunInHand, part: string, state: StateId): string {
  const reasons = hand.clocks.get(part)?.get(state)?.reasons ?? [];
  return `${stateText(hand, part, state, 'from')}${factorsText(reasons)}`;
}

function closing(hand: RunInHand, part: string, state: StateId): string {
  return stateText(hand, part, state, 'until');
}

/** `Sand layer: firm enough to unmould 36 h (24 h to 54 h) after the end of the pour`. */
function stateText(hand: RunInHand, part: string, state: StateId, when: 'from' | 'until'): string {
  const times = bandNow(hand, part, state);
  if (times === undefined) throw new Error(`no clock for ${state} of ${part}`);
  const attempt = makingAttempt(hand, part)?.attempt ?? 1;
  const again = attempt === 1 ? '' : ` (attempt ${String(attempt)})`;
  return (
    `${hand.run.parts.get(part)?.title ?? part}${again}: ${states[state].title} ${when === 'until' ? 'until ' : ''}` +
    `${bandText(times)} ${afterText(state)}`
  );
}

/** The two factors that move the clock most. */
function factorsText(reasons: readonly { readonly read: string; readonly factor: number }[]): string {
  const strongest = [...reasons]
    .filter((reason) => Math.abs(Math.log(reason.factor)) > 0.02)
    .sort((a, b) => Math.abs(Math.log(b.factor)) - Math.abs(Math.log(a.factor)))
    .slice(0, 2)
    .map((reason) => `${reason.read} ×${reason.factor.toFixed(2)}`);
  return strongest.length === 0 ? '' : `, from ${strongest.join(' and ')}`;
}

function hoursSentence(by: Binding, window: StageWindow, zone: string): string | undefined {
  if (by.kind !== 'calendar') return undefined;
  return `your hours open ${localText(minute(window.opens), zone)}`;
}
