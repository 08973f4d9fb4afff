import { states, type StateId } from '#clocks';
import type { ConflictReason } from '#contract';
import type { Problem, Requirement } from '#planner';
import { localText } from '#hours';
import { minute } from '#units';
import { afterText, bandText, durationText } from '../clocks/duration-text.js';
import { bandNow } from '../observed/observe-draws.js';
import { isReadyId, READY, type RunInHand } from '../run-in-hand.js';

/** Says requirements that cannot all be met in the maker's words, one sentence each. */
export function describeConflict(
  requirements: readonly Requirement[],
  problem: Problem,
  hands: readonly RunInHand[],
  zone: string,
): ConflictReason[] {
  return requirements.map((requirement) => describe(requirement, problem, hands, zone));
}

/** One requirement in the maker's words. */
export function describe(
  requirement: Requirement,
  problem: Problem,
  hands: readonly RunInHand[],
  zone: string,
): ConflictReason {
  const code = `plan.${requirement.kind}`;
  switch (requirement.kind) {
    case 'lag-at-least':
    case 'lag-at-most':
      return { code, ...describeLag(requirement.kind, requirement.lag, hands) };
    case 'resource': {
      const names = requirement.stages.map((id) => `“${titleOfId(id, hands)}”`).join(', ');
      return { code, text: `${resourceText(requirement.resource, problem)}: ${names} cannot all have it.` };
    }
    case 'horizon':
      return { code, text: 'Nothing is looked for beyond 120 days of your hours.' };
    case 'calendar':
    case 'earliest':
    case 'latest':
    case 'fixed': {
      const [run, stage] = splitId(requirement.stage);
      const text = stageText(requirement.kind, requirement.stage, problem, hands, zone);
      return { code, text, run, ...(stage === READY ? {} : { stage }) };
    }
  }
}

function stageText(
  kind: 'calendar' | 'earliest' | 'latest' | 'fixed',
  id: string,
  problem: Problem,
  hands: readonly RunInHand[],
  zone: string,
): string {
  const title = titleOfId(id, hands);
  const stage = problem.stages.find((s) => s.id === id);
  const at = (value: number | undefined): string =>
    value === undefined ? 'then' : localText(minute(value), zone);
  switch (kind) {
    case 'calendar':
      return `“${title}” takes ${durationText(stage?.duration ?? 0)} in one go and has to fit into your hours.`;
    case 'earliest':
      return `“${title}” may not start before ${at(stage?.earliest)}.`;
    case 'latest':
      return isReadyId(id)
        ? `“${title}” must be by ${at(stage?.latest)}.`
        : `“${title}” is to start ${at(stage?.latest)}.`;
    case 'fixed':
      return `“${title}” was done ${at(stage?.fixed)}.`;
  }
}

function describeLag(
  kind: 'lag-at-least' | 'lag-at-most',
  lag: string,
  hands: readonly RunInHand[],
): Omit<ConflictReason, 'code'> {
  const [run = '', list = '', which = ''] = lag.split('/');
  const hand = hands.find((h) => h.run.order.key === run);
  const design = hand?.run.design;
  if (hand === undefined || design === undefined) throw new Error(`lag ${lag} belongs to no run`);
  const title = (stage: string): string => `“${hand.run.stages.get(stage)?.title ?? stage}”`;
  if (list === 'links') {
    const link = design.links[Number(which)];
    if (link === undefined) throw new Error(`lag ${lag} belongs to no link`);
    const text =
      kind === 'lag-at-most'
        ? `${title(link.to)} must start within ${durationText(link.atMostMin ?? 0)} of ${title(link.from)}.`
        : link.atLeastMin === 0
          ? `${title(link.to)} comes after ${title(link.from)}.`
          : `${title(link.to)} may start ${durationText(link.atLeastMin)} after ${title(link.from)}, not sooner.`;
    return { text, run, stage: link.to };
  }
  if (list === 'cure') {
    return { text: `${partTitle(hand, which)} cures for ${stateTime(hand, which, 'cured')}.`, run };
  }
  if (list === 'made') {
    const made = partTitle(hand, hand.run.stages.get(which)?.part ?? which);
    return { text: `${title(which)} comes after ${made} is made.`, run, stage: which };
  }
  const wait = design.waits[Number(which)];
  if (wait === undefined) throw new Error(`lag ${lag} belongs to no wait`);
  const part = partTitle(hand, wait.part);
  const state = kind === 'lag-at-most' ? wait.closes : wait.opens;
  const text =
    state === undefined
      ? `${title(wait.stage)} comes after ${part} is made.`
      : kind === 'lag-at-most'
        ? `${title(wait.stage)} is possible only in time. ${part}: ${states[state].title} until ` +
          `${stateTime(hand, wait.part, state)} ${afterText(state)}.`
        : `${title(wait.stage)} waits for the soap. ${part}: ${states[state].title} ` +
          `${stateTime(hand, wait.part, state)} ${afterText(state)}.`;
  return { text, run, stage: wait.stage };
}

function stateTime(hand: RunInHand, part: string, state: StateId): string {
  const times = bandNow(hand, part, state);
  if (times === undefined) throw new Error(`no clock for ${state} of ${part}`);
  return bandText(times);
}

function resourceText(resource: string, problem: Problem): string {
  const capacity = problem.resources.find((r) => r.id === resource)?.capacity ?? 0;
  if (resource === 'hands')
    return capacity === 1 ? 'You have two hands' : `There are ${String(capacity)} of you`;
  const [kind, key] = resource.split(':');
  const what = kind === 'mould' ? 'cavities of' : 'of';
  return `You own ${String(capacity)} ${what} “${key ?? resource}”`;
}

/** A part as people read it. */
export function partTitle(hand: RunInHand, part: string): string {
  return hand.run.parts.get(part)?.title ?? part;
}

/** `run/stage#1` as its run and stage. */
export function splitId(id: string): [run: string, stage: string, attempt: number] {
  const [run = '', rest = ''] = id.split('/');
  const [stage = '', attempt = '1'] = rest.split('#');
  return [run, stage, Number(attempt)];
}

/** A stage of the planner as people read it. */
export function titleOfId(id: string, hands: readonly RunInHand[]): string {
  const [run, stage] = splitId(id);
  const hand = hands.find((h) => h.run.order.key === run);
  if (stage === READY) return `${hand?.run.order.title ?? run}: cured`;
  return hand?.run.stages.get(stage)?.title ?? stage;
}
