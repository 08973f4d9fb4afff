import { compileProblem } from './compile-problem.js';
import { minimalConflict } from './conflict.js';
import { firstStarts, leastSolution } from './fixed-point.js';
import { mirror, type Network } from './network.js';
import type {
  Binding,
  Certainty,
  Precedence,
  Problem,
  Requirement,
  Stage,
  Window,
  WindowsOutcome,
} from './problem.js';
import { requirementsOf, restrict, restrictPrecedences } from './requirements.js';

/**
 * The earliest and the latest start of every stage that honour all lags and calendars at once; resources only
 * through `extra`. Constraints of the form x[j] ≥ x[i] + a, x[j] in a closed set, are kept by the pointwise
 * minimum and maximum of two solutions, so a least and a greatest solution exist and the bounds are exact.
 * @param certainty 0.5 (likely) up to below 1
 * @param extra precedences to honour besides
 * @returns windows by stage id, each bound with the constraint that set it; or a minimal set of
 *   requirements in conflict: leave out any one of them and the others can be met
 */
export function windows(p: Problem, certainty: Certainty, extra: readonly Precedence[] = []): WindowsOutcome {
  const net = compileProblem(p, certainty, extra);
  const least = leastSolution(net);
  const back = mirror(net);
  const greatest = leastSolution(back);
  if (least === null || greatest === null) {
    return { status: 'conflict', requirements: lagConflict(p, certainty, extra) };
  }
  const lasts = firstStarts(back);
  const found = new Map<string, Window>();
  p.stages.forEach((stage, i) => {
    const earliest = least[i]!;
    const latest = -greatest[i]!;
    found.set(stage.id, {
      earliest,
      latest,
      earliestBy: edgeOf(net, i) ?? lowBinding(p, stage, earliest),
      latestBy: edgeOf(back, i) ?? highBinding(p, stage, latest, -lasts[i]!),
    });
  });
  return { status: 'windows', windows: found };
}

/** A minimal set of requirements, resources aside, that cannot be met together. There must be one. */
export function lagConflict(
  p: Problem,
  certainty: Certainty,
  extra: readonly Precedence[] = [],
): Requirement[] {
  const posted = extra.map(({ before, after, resource }): Requirement => ({
    kind: 'resource',
    resource,
    stages: [before, after],
  }));
  const candidates = [...requirementsOf(p).filter((r) => r.kind !== 'resource'), ...posted];
  return minimalConflict(candidates, (part) => {
    const net = compileProblem(restrict(p, part), certainty, restrictPrecedences(extra, part));
    return leastSolution(net) === null;
  });
}

function edgeOf(net: Network, node: number): Requirement | undefined {
  return net.tags[net.scratch.by[node]!] ?? undefined;
}

function lowBinding(p: Problem, stage: Stage, at: number): Binding {
  if (stage.fixed !== undefined) return { kind: 'fixed', stage: stage.id };
  if (at === stage.earliest) return { kind: 'earliest', stage: stage.id };
  return at === p.from ? { kind: 'origin' } : { kind: 'calendar', stage: stage.id };
}

/** @param last the last start that its calendar, `latest` and the horizon leave it */
function highBinding(p: Problem, stage: Stage, at: number, last: number): Binding {
  if (stage.fixed !== undefined) return { kind: 'fixed', stage: stage.id };
  if (at < last) return { kind: 'calendar', stage: stage.id };
  return (stage.latest ?? Infinity) <= p.until ? { kind: 'latest', stage: stage.id } : { kind: 'horizon' };
}
