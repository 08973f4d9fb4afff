import type { Lag, Precedence, Problem, Requirement, Stage } from './problem.js';

/** Everything the problem asks of the starts, one requirement each, resources included. */
export function requirementsOf(p: Problem): Requirement[] {
  const all: Requirement[] = [{ kind: 'horizon' }];
  for (const stage of p.stages) {
    if (stage.fixed !== undefined) {
      all.push({ kind: 'fixed', stage: stage.id });
      continue;
    }
    if (stage.calendar !== undefined) all.push({ kind: 'calendar', stage: stage.id });
    if (stage.earliest !== undefined) all.push({ kind: 'earliest', stage: stage.id });
    if (stage.latest !== undefined) all.push({ kind: 'latest', stage: stage.id });
  }
  const fixed = new Set(p.stages.flatMap((stage) => (stage.fixed === undefined ? [] : [stage.id])));
  for (const lag of p.lags) {
    if (fixed.has(lag.from) && fixed.has(lag.to)) continue;
    if (lag.atLeast !== undefined) all.push({ kind: 'lag-at-least', lag: lag.id });
    if (lag.atMost !== undefined) all.push({ kind: 'lag-at-most', lag: lag.id });
  }
  for (const { id } of p.resources) {
    const stages = stagesOn(p, id);
    if (stages.length > 0) all.push({ kind: 'resource', resource: id, stages });
  }
  return all;
}

/** The problem with nothing asked but the given requirements. What was fixed and is no longer, is free. */
export function restrict(p: Problem, kept: readonly Requirement[]): Problem {
  const has = keySet(kept);
  const on = resourceStages(kept);
  const uses = (resource: string, ...stages: string[]): boolean =>
    stages.every((stage) => on.get(resource)?.has(stage) === true);
  return {
    ...p,
    until: has('horizon') ? p.until : Infinity,
    stages: p.stages.map((stage) => ({
      ...restrictStage(stage, has),
      uses: stage.uses.filter((use) => uses(use.resource, stage.id)),
    })),
    lags: p.lags.map((lag) => restrictLag(lag, has)),
    holds: p.holds.filter((hold) => uses(hold.resource, hold.from, hold.to)),
  };
}

/** The precedences that the given requirements speak of. */
export function restrictPrecedences(
  extra: readonly Precedence[],
  kept: readonly Requirement[],
): Precedence[] {
  return extra.filter(({ before, after, resource }) =>
    kept.some(
      (r) =>
        r.kind === 'resource' && r.resource === resource && r.stages[0] === before && r.stages[1] === after,
    ),
  );
}

function stagesOn(p: Problem, resource: string): string[] {
  const stages = new Set<string>();
  for (const stage of p.stages) {
    if (stage.uses.some((use) => use.resource === resource)) stages.add(stage.id);
  }
  for (const hold of p.holds) if (hold.resource === resource) stages.add(hold.from).add(hold.to);
  return [...stages];
}

type Has = (kind: Requirement['kind'], of?: string) => boolean;

function keySet(kept: readonly Requirement[]): Has {
  const keys = new Set(kept.map((r) => `${r.kind} ${'lag' in r ? r.lag : 'stage' in r ? r.stage : ''}`));
  return (kind, of = '') => keys.has(`${kind} ${of}`);
}

function resourceStages(kept: readonly Requirement[]): Map<string, Set<string>> {
  return new Map(kept.flatMap((r) => (r.kind === 'resource' ? [[r.resource, new Set(r.stages)]] : [])));
}

function restrictStage(stage: Stage, has: Has): Stage {
  const { id, duration, calendar, earliest, latest, fixed } = stage;
  if (fixed !== undefined && has('fixed', id)) return { id, duration, uses: [], fixed };
  return {
    id,
    duration,
    uses: [],
    ...(calendar !== undefined && has('calendar', id) && { calendar }),
    ...(earliest !== undefined && has('earliest', id) && { earliest }),
    ...(latest !== undefined && has('latest', id) && { latest }),
  };
}

function restrictLag(lag: Lag, has: Has): Lag {
  const { id, from, point, to, until, atLeast, atMost } = lag;
  return {
    id,
    from,
    point,
    to,
    ...(until !== undefined && { until }),
    ...(atLeast !== undefined && has('lag-at-least', id) && { atLeast }),
    ...(atMost !== undefined && has('lag-at-most', id) && { atMost }),
  };
}
