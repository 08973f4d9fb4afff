import type { Relaxation } from '#contract';
import { instantOf, localDateOf } from '#hours';
import type { TimingConflict, Relaxation as Relaxed } from '#planner';
import { isoInstant, minute } from '#units';
import { plannerStage } from './describe-conflict.js';
import type { Network } from './network-references.js';
import { lagNamed, partReference, resourceNamed, stageNamed } from './network-references.js';

interface Context extends Network {
  readonly zone: string;
  readonly timing: TimingConflict | undefined;
}

/**
 * What would have to give way, and by how much.
 * @returns undefined where it makes no sense to ask: an order of things that cannot be turned about
 */
export function describeRelaxation(relaxed: Relaxed, of: Context): Relaxation | undefined {
  const { requirement, enough, now } = relaxed;
  switch (requirement.kind) {
    case 'lag-at-least':
    case 'lag-at-most':
      return enough === undefined || now === undefined || enough < 0
        ? undefined
        : describeLag(requirement.kind, requirement.lag, { ...of, enough, now });
    case 'resource': {
      if (enough === undefined) return undefined;
      const resource = resourceNamed(of.references, requirement.resource);
      return { code: 'relaxation.owned', resource, count: enough, insteadOf: now ?? 0 };
    }
    case 'calendar':
    case 'earliest':
    case 'latest':
      return describeStage(requirement.kind, requirement.stage, relaxed, of);
    case 'fixed':
    case 'horizon':
      return undefined;
  }
}

function describeStage(
  kind: 'calendar' | 'earliest' | 'latest',
  id: string,
  { enough, starts }: Relaxed,
  { problem, references, zone, timing }: Context,
): Relaxation {
  const stage = stageNamed(references, id);
  const instant = (at: number): string => isoInstant(minute(at));
  const start = starts.get(id) ?? 0;
  const at = enough ?? start;
  if (kind === 'latest') {
    return stage.stage === null
      ? { code: 'relaxation.ready-by', stage, day: firstDay(at, zone) }
      : { code: 'relaxation.start', stage, at: instant(at) };
  }
  if (kind === 'earliest') return { code: 'relaxation.earliest', stage, at: instant(at) };
  const minutes = plannerStage(problem, id).duration;
  const inWindow =
    timing?.kind === 'hours' && timing.stage === id && start >= timing.earliest && start <= timing.latest;
  const [from, to] = inWindow ? [timing.earliest, timing.latest] : [start, start];
  const end = Number.isFinite(to) ? instant(to) : null;
  return { code: 'relaxation.hours', stage, minutes, from: instant(from), to: end };
}

/** The first day on whose start it can be: days are asked for, not times of day. */
function firstDay(at: number, zone: string): string {
  const midnight = (of: number): number => instantOf(localDateOf(minute(of), zone), zone) ?? of;
  const same = midnight(at);
  // A day has 23 to 25 hours, so 36 on is in the next.
  return localDateOf(minute(same === at ? same : midnight(same + 36 * 60)), zone);
}

function describeLag(
  kind: 'lag-at-least' | 'lag-at-most',
  id: string,
  { references, enough, now }: Context & { readonly enough: number; readonly now: number },
): Relaxation | undefined {
  const lag = lagNamed(references, id);
  const { assessed, reason } = lag;
  const [after, stage] = [stageNamed(references, lag.from), stageNamed(references, lag.to)];
  const least = kind === 'lag-at-least';
  const lengths = { minutes: least ? roundedDown(enough) : roundedUp(enough), insteadOf: now };
  switch (reason.kind) {
    case 'link': {
      if (now === 0) return undefined;
      return { code: least ? 'relaxation.at-least' : 'relaxation.at-most', stage, after, ...lengths };
    }
    case 'cure':
      return { code: 'relaxation.cures', part: partReference(assessed, reason.part), ...lengths };
    case 'made':
      return undefined;
    case 'wait': {
      const { part: key, opens, closes } = reason.wait;
      const state = least ? opens : closes;
      if (state === undefined) return undefined;
      const part = partReference(assessed, key);
      return { code: least ? 'relaxation.opens' : 'relaxation.closes', stage, part, state, ...lengths };
    }
  }
}

/** Minutes to which a length of that size is told. */
function grain(length: number): number {
  if (length < 90) return 1;
  if (length < 20 * 60) return 5;
  if (length < 100 * 60) return 60;
  return length < 21 * 1440 ? 1440 : 1008;
}

/** A length that is never longer than it is once it is told: what would be short enough stays so in words. */
function roundedDown(length: number): number {
  return Math.floor(length / grain(length)) * grain(length);
}

function roundedUp(length: number): number {
  return Math.ceil(length / grain(length)) * grain(length);
}
