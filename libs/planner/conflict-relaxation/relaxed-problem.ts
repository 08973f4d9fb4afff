import { lengthAt } from '../length.js';
import type { Certainty, Lag, Length, Problem, Requirement, Stage } from '../problem.js';

/** The problem without a requirement. A resource that is not asked about is there without end. */
export function without(p: Problem, requirement: Requirement): Problem {
  switch (requirement.kind) {
    case 'lag-at-least':
      return withLag(p, requirement.lag, ({ atLeast: _none, ...lag }) => lag);
    case 'lag-at-most':
      return withLag(p, requirement.lag, ({ atMost: _none, ...lag }) => lag);
    case 'calendar':
      return withStage(p, requirement.stage, ({ calendar: _none, ...stage }) => stage);
    case 'earliest':
      return withStage(p, requirement.stage, ({ earliest: _none, ...stage }) => stage);
    case 'latest':
      return withStage(p, requirement.stage, ({ latest: _none, ...stage }) => stage);
    case 'fixed':
      return withStage(p, requirement.stage, ({ fixed: _none, ...stage }) => stage);
    case 'resource':
      return withValue(p, requirement, mostUsed(p, requirement.resource));
    case 'horizon':
      return { ...p, until: Infinity };
  }
}

/** A requirement that is a number, and so may be relaxed by a part. */
export type Measured = Requirement & { readonly kind: keyof typeof measured };

const measured = {
  'lag-at-least': true,
  'lag-at-most': true,
  earliest: true,
  latest: true,
  resource: true,
};

export function isMeasured(requirement: Requirement): requirement is Measured {
  return requirement.kind in measured;
}

/**
 * The problem with another number in a requirement: minutes of a lag, the minute of a bound, the capacity of a
 * resource.
 */
export function withValue(p: Problem, requirement: Measured, value: number): Problem {
  const length: Length = { kind: 'known', minutes: value };
  switch (requirement.kind) {
    case 'lag-at-least':
      return withLag(p, requirement.lag, (lag) => ({ ...lag, atLeast: length }));
    case 'lag-at-most':
      return withLag(p, requirement.lag, (lag) => ({ ...lag, atMost: length }));
    case 'earliest':
      return withStage(p, requirement.stage, (stage) => ({ ...stage, earliest: value }));
    case 'latest':
      return withStage(p, requirement.stage, (stage) => ({ ...stage, latest: value }));
    case 'resource': {
      const resources = p.resources.map((each) =>
        each.id === requirement.resource ? { ...each, capacity: value } : each,
      );
      return { ...p, resources };
    }
  }
}

/** The number as it is, and one relaxed as far as it makes sense to ask. */
export function rangeOf(
  p: Problem,
  requirement: Measured,
  certainty: Certainty,
): { now: number; most: number } {
  switch (requirement.kind) {
    case 'lag-at-least': {
      const now = lagMinutes(p, requirement.lag, 'atLeast', certainty);
      return { now, most: Math.min(0, now - 1) };
    }
    case 'lag-at-most':
      return { now: lagMinutes(p, requirement.lag, 'atMost', certainty), most: p.until - p.from };
    case 'earliest':
      return { now: stageOf(p, requirement.stage).earliest ?? p.from, most: p.from };
    case 'latest':
      return { now: stageOf(p, requirement.stage).latest ?? p.until, most: p.until };
    case 'resource': {
      const now = p.resources.find(({ id }) => id === requirement.resource)?.capacity ?? 0;
      return { now, most: mostUsed(p, requirement.resource) };
    }
  }
}

function lagMinutes(p: Problem, id: string, side: 'atLeast' | 'atMost', certainty: Certainty): number {
  const length = p.lags.find((lag) => lag.id === id)?.[side];
  if (length === undefined) throw new RangeError(`lag "${id}" has no such side`);
  return lengthAt(length, certainty, side === 'atLeast' ? 'at-least' : 'at-most', p.draws);
}

function stageOf(p: Problem, id: string): Stage {
  const stage = p.stages.find((each) => each.id === id);
  if (stage === undefined) throw new RangeError(`no stage "${id}"`);
  return stage;
}

/** As much as could ever be asked of a resource at once. */
function mostUsed(p: Problem, resource: string): number {
  const uses = [...p.stages.flatMap((stage) => stage.uses), ...p.holds].filter(
    (use) => use.resource === resource,
  );
  const busy = p.resources.find(({ id }) => id === resource)?.busy ?? [];
  return [...uses, ...busy].reduce((sum, { amount }) => sum + amount, 0);
}

function withLag(p: Problem, id: string, change: (lag: Lag) => Lag): Problem {
  return { ...p, lags: p.lags.map((lag) => (lag.id === id ? change(lag) : lag)) };
}

function withStage(p: Problem, id: string, change: (stage: Stage) => Stage): Problem {
  return { ...p, stages: p.stages.map((stage) => (stage.id === id ? change(stage) : stage)) };
}
