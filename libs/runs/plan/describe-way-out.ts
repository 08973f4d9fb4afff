import { states } from '#clocks';
import type { ConflictReason } from '#contract';
import { instantOf, localDateOf, localText } from '#hours';
import type { Clash, Problem, Relaxation } from '#planner';
import { minute } from '#units';
import { afterText, durationText } from '../clocks/duration-text.js';
import { isReadyId, READY, type RunInHand } from '../run-in-hand.js';
import { partTitle, splitId, titleOfId } from './describe-conflict.js';
import { rangeText } from './range-text.js';

interface Telling {
  readonly problem: Problem;
  readonly hands: readonly RunInHand[];
  readonly zone: string;
  readonly clash: Clash | undefined;
}

/**
 * What would have to be so for one requirement to give way, as it reads after "there is a plan if".
 * @returns undefined where it makes no sense to ask: an order of things that cannot be turned about
 */
export function wayOutText(way: Relaxation, of: Telling): ConflictReason | undefined {
  const { requirement, enough, now } = way;
  const code = `plan.${requirement.kind}`;
  switch (requirement.kind) {
    case 'lag-at-least':
    case 'lag-at-most': {
      const told = lagText(requirement.kind, requirement.lag, { ...of, enough, now });
      return told && { code, ...told };
    }
    case 'resource':
      return enough === undefined
        ? undefined
        : { code, text: resourceText(requirement.resource, enough, now ?? 0) };
    case 'calendar':
    case 'earliest':
    case 'latest': {
      const [run, stage] = splitId(requirement.stage);
      const text = stageText(requirement.kind, requirement.stage, way, of);
      return { code, text, run, ...(stage === READY ? {} : { stage }) };
    }
    case 'fixed':
    case 'horizon':
      return undefined;
  }
}

function stageText(
  kind: 'calendar' | 'earliest' | 'latest',
  id: string,
  { enough, starts }: Relaxation,
  { problem, hands, zone, clash }: Telling,
): string {
  const title = `“${titleOfId(id, hands)}”`;
  const at = (value: number): string => localText(minute(value), zone);
  const start = starts.get(id) ?? 0;
  if (kind === 'latest') {
    return isReadyId(id)
      ? `${title} may be as late as ${dayText(enough ?? start, zone)}`
      : `${title} may start as late as ${at(enough ?? start)}`;
  }
  if (kind === 'earliest') return `${title} may start as early as ${at(enough ?? start)}`;
  const takes = durationText(problem.stages.find((stage) => stage.id === id)?.duration ?? 0);
  const window =
    clash?.kind === 'hours' && clash.stage === id && start >= clash.earliest && start <= clash.latest
      ? rangeText(clash.earliest, clash.latest, zone)
      : at(start);
  return `you can be at the bench for ${title} (${takes}) ${window}`;
}

/** The first day on whose start it can be: days are asked for, not times of day. */
function dayText(at: number, zone: string): string {
  const midnight = (of: number): number => instantOf(localDateOf(minute(of), zone), zone) ?? of;
  const same = midnight(at);
  // A day has 23 to 25 hours, so 36 on is in the next.
  const day = same === at ? same : midnight(same + 36 * 60);
  return localText(minute(day), zone).replace(/ \d\d:\d\d$/, '');
}

function lagText(
  kind: 'lag-at-least' | 'lag-at-most',
  lag: string,
  { hands, enough, now }: Telling & { readonly enough: number | undefined; readonly now: number | undefined },
): Omit<ConflictReason, 'code'> | undefined {
  const [run = '', list = '', which = ''] = lag.split('/');
  const hand = hands.find((each) => each.run.order.key === run);
  if (hand === undefined || enough === undefined || now === undefined || enough < 0) return undefined;
  const { design } = hand.run;
  const title = (stage: string): string => `“${hand.run.stages.get(stage)?.title ?? stage}”`;
  const least = kind === 'lag-at-least';
  const [would, is] = [least ? floorText(enough) : ceilText(enough), durationText(now)];
  if (list === 'links') {
    const link = design.links[Number(which)];
    if (link === undefined || now === 0) return undefined;
    const text = least
      ? `${title(link.to)} may start ${would} after ${title(link.from)} instead of ${is}`
      : `${title(link.to)} may start up to ${would} after ${title(link.from)} instead of ${is}`;
    return { text, run, stage: link.to };
  }
  if (list === 'cure')
    return { text: `${partTitle(hand, which)} is cured after ${would} instead of ${is}`, run };
  const wait = list === 'waits' ? design.waits[Number(which)] : undefined;
  const state = least ? wait?.opens : wait?.closes;
  if (wait === undefined || state === undefined) return undefined;
  const part = partTitle(hand, wait.part);
  const text = least
    ? `${part} is ${states[state].title} ${would} ${afterText(state)} instead of ${is}`
    : `${part} is ${states[state].title} until ${would} ${afterText(state)} instead of ${is}`;
  return { text, run, stage: wait.stage };
}

function resourceText(resource: string, enough: number, now: number): string {
  const [kind, key = resource] = resource.split(':');
  if (kind === 'hands') return enough === 2 ? 'somebody helps you' : `there are ${String(enough)} of you`;
  const what = kind === 'mould' ? `cavities of “${key}”` : `of “${key}”`;
  return `you own ${String(enough)} ${what} instead of ${String(now)}`;
}

/** Minutes to which a length of that size is told. */
function grain(length: number): number {
  if (length < 90) return 1;
  if (length < 20 * 60) return 5;
  if (length < 100 * 60) return 60;
  return length < 21 * 1440 ? 1440 : 1008;
}

/** A length said so that it is never longer than it is: what would be short enough stays so in words. */
function floorText(length: number): string {
  return durationText(Math.floor(length / grain(length)) * grain(length), length);
}

function ceilText(length: number): string {
  return durationText(Math.ceil(length / grain(length)) * grain(length), length);
}
