import { domainOf, type Domain } from './domains.js';
import { lengthAt } from './length.js';
import { addEdge, emptyNetwork, type Network } from './network.js';
import type { Certainty, Lag, Precedence, Problem, Requirement, Stage } from './problem.js';

/**
 * The problem as a temporal network of numbered nodes, lags taken at the given certainty.
 * Resources are left out; busy intervals are there as fixed nodes, so that precedences can point at them.
 * @param knownOnly leave out the uncertain lags
 * @throws RangeError on a reference to a stage that does not exist: the problem was not checked
 */
export function compileProblem(
  p: Problem,
  certainty: Certainty,
  extra: readonly Precedence[] = [],
  knownOnly = false,
): Network {
  const busy = p.resources.flatMap((resource) => resource.busy);
  const net = emptyNetwork(
    p.stages.length,
    Float64Array.from([...p.stages.map((s) => s.duration), ...busy.map((b) => b.to - b.from)]),
    [...p.stages.map((stage) => stageDomain(p, stage)), ...busy.map((b) => point(b.from))],
    Uint8Array.from([...p.stages.map((s) => (s.fixed === undefined ? 0 : 1)), ...busy.map(() => 1)]),
  );
  const index = stageIndex(p);
  for (const lag of p.lags) addLag(net, p, lag, certainty, index, knownOnly);
  for (const { before, after, resource } of extra) {
    const [i, j] = [index(before), index(after)];
    const tag: Requirement = { kind: 'resource', resource, stages: [before, after] };
    if (!bothFixed(net, i, j)) addEdge(net, i, j, net.duration[i]!, tag);
  }
  return net;
}

/** Looks up the position of a stage; @throws RangeError when there is none of that name */
export function stageIndex(p: Problem): (id: string) => number {
  const positions = new Map(p.stages.map((stage, i) => [stage.id, i]));
  return (id) => {
    const i = positions.get(id);
    if (i === undefined) throw new RangeError(`no stage "${id}"`);
    return i;
  };
}

function addLag(
  net: Network,
  p: Problem,
  lag: Lag,
  certainty: Certainty,
  index: (id: string) => number,
  knownOnly: boolean,
): void {
  const [i, j] = [index(lag.from), index(lag.to)];
  if (bothFixed(net, i, j)) return;
  const offset = lag.point === 'end' ? net.duration[i]! : 0;
  const { atLeast, atMost } = lag;
  if (atLeast !== undefined && !(knownOnly && atLeast.kind === 'uncertain')) {
    const weight = offset + lengthAt(atLeast, certainty, 'at-least', p.draws);
    addEdge(net, i, j, weight, { kind: 'lag-at-least', lag: lag.id });
  }
  if (atMost !== undefined && !(knownOnly && atMost.kind === 'uncertain')) {
    const last = lag.until === 'end' ? net.duration[j]! : 0;
    const weight = -(offset - last + lengthAt(atMost, certainty, 'at-most', p.draws));
    addEdge(net, j, i, weight, { kind: 'lag-at-most', lag: lag.id });
  }
}

function stageDomain(p: Problem, stage: Stage): Domain {
  if (stage.fixed !== undefined) return point(stage.fixed);
  const least = Math.max(p.from, stage.earliest ?? -Infinity);
  const greatest = Math.min(p.until, stage.latest ?? Infinity);
  const calendar = stage.calendar === undefined ? undefined : p.calendars[stage.calendar];
  if (stage.calendar !== undefined && calendar === undefined) {
    throw new RangeError(`no calendar "${stage.calendar}"`);
  }
  return domainOf(stage.duration, calendar, least, greatest);
}

function point(at: number): Domain {
  return { from: Float64Array.of(at), to: Float64Array.of(at) };
}

/** Between two things that cannot move, a lag is history. */
function bothFixed(net: Network, i: number, j: number): boolean {
  return net.fixed[i] === 1 && net.fixed[j] === 1;
}
