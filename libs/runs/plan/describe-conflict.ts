import type { Band } from '#clocks';
import type { ConflictReason, SoapState } from '#contract';
import type { Problem, Requirement } from '#planner';
import { isoInstant, minute } from '#units';
import { bandNow } from '../observed/observe-draws.js';
import type { AssessedRun } from '../assessed-run.js';
import {
  dayOf,
  lagNamed,
  partReference,
  resourceNamed,
  stageNamed,
  type Network,
  type NetworkReferences,
} from './network-references.js';

/** Requirements that cannot all be met, one reason each. */
export function describeConflict(requirements: readonly Requirement[], network: Network): ConflictReason[] {
  return requirements.map((requirement) => describeRequirement(requirement, network));
}

function describeRequirement(requirement: Requirement, network: Network): ConflictReason {
  const { problem, references } = network;
  switch (requirement.kind) {
    case 'lag-at-least':
    case 'lag-at-most':
      return describeLag(requirement.kind, requirement.lag, references);
    case 'resource': {
      const { id: resource, capacity: owned } = resourceOf(problem, requirement.resource);
      const stages = requirement.stages.map((id) => stageNamed(references, id));
      return { code: 'conflict.shared', resource: resourceNamed(references, resource), owned, stages };
    }
    case 'horizon':
      return { code: 'conflict.horizon', days: references.hoursAheadDays };
    case 'calendar':
    case 'earliest':
    case 'latest':
    case 'fixed':
      return describeStage(requirement.kind, requirement.stage, network);
  }
}

function describeStage(
  kind: 'calendar' | 'earliest' | 'latest' | 'fixed',
  id: string,
  { problem, references }: Network,
): ConflictReason {
  const stage = stageNamed(references, id);
  const found = plannerStage(problem, id);
  const at = (value: number | undefined): string => isoInstant(minute(value ?? problem.from));
  switch (kind) {
    case 'calendar':
      return { code: 'conflict.hours', stage, minutes: found.duration };
    case 'earliest':
      return { code: 'conflict.earliest', stage, at: at(found.earliest) };
    case 'latest': {
      const day = stage.stage === null ? dayOf(references, id) : undefined;
      return day === undefined
        ? { code: 'conflict.start', stage, at: at(found.latest) }
        : { code: 'conflict.ready-by', stage, day };
    }
    case 'fixed':
      return { code: 'conflict.done', stage, at: at(found.fixed) };
  }
}

function describeLag(
  kind: 'lag-at-least' | 'lag-at-most',
  id: string,
  references: NetworkReferences,
): ConflictReason {
  const lag = lagNamed(references, id);
  const { assessed, reason } = lag;
  const [after, stage] = [stageNamed(references, lag.from), stageNamed(references, lag.to)];
  switch (reason.kind) {
    case 'link': {
      const { atLeastMin, atMostMin = 0 } = reason;
      if (kind === 'lag-at-most') return { code: 'conflict.at-most', stage, after, minutes: atMostMin };
      return atLeastMin === 0
        ? { code: 'conflict.after', stage, after }
        : { code: 'conflict.at-least', stage, after, minutes: atLeastMin };
    }
    case 'cure': {
      const part = partReference(assessed, reason.part);
      return { code: 'conflict.cures', part, band: demandBand(assessed, reason.part, 'cured') };
    }
    case 'made':
      return { code: 'conflict.made', stage, part: partReference(assessed, reason.part) };
    case 'wait': {
      const { part: key, opens, closes } = reason.wait;
      const part = partReference(assessed, key);
      const state = kind === 'lag-at-most' ? closes : opens;
      if (state === undefined) return { code: 'conflict.made', stage, part };
      const code = kind === 'lag-at-most' ? 'conflict.closes' : 'conflict.opens';
      return { code, stage, part, state, band: demandBand(assessed, key, state) };
    }
  }
}

/** When a state comes, in minutes from what starts its clock. @throws Error where the part has no such clock */
export function demandBand(assessed: AssessedRun, part: string, state: SoapState): Band {
  const times = bandNow(assessed, part, state);
  if (times === undefined) throw new Error(`no clock for ${state} of ${part}`);
  const { low, likely, high } = times;
  return { low, likely, high };
}

/** @throws Error for a name that is not of this problem */
export function plannerStage({ stages }: Problem, id: string): Problem['stages'][number] {
  const found = stages.find((stage) => stage.id === id);
  if (found === undefined) throw new Error(`no stage is named ${id}`);
  return found;
}

function resourceOf({ resources }: Problem, id: string): Problem['resources'][number] {
  const found = resources.find((resource) => resource.id === id);
  if (found === undefined) throw new Error(`no resource is named ${id}`);
  return found;
}
