import type { Edge } from '../learning/lag-edges.js';
import type { SearchModel } from '../learning/learning-search.js';
import type { Propagator } from '../learning/propagator.js';
import type { Trail } from '../learning/trail.js';
import { intervalAfter } from '../domains.js';
import type { ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import { CumulativePropagator } from './cumulative-propagator.js';
import { DomainPropagator, type Ranges } from './domain-propagator.js';
import { energyBound } from './energy-bound.js';
import { apart, loadConflicts, type Pair } from './load-conflicts.js';
import type { LagPaths } from './lag-paths.js';
import type { StartBounds } from './start-bounds.js';
import { SumPropagator } from './sum-propagator.js';
import type { SymmetryOrder } from './symmetry.js';

/** Nodes up to which lags that follow from others are left out; telling which takes the cube of their number. */
export const TRANSITIVE = 250;

/**
 * The network and its resources as a model for the learning search. Variables are the starts of the nodes, in minutes
 * after `origin`; then the end of each delivery; then their total; then one choice for each pair of loads that together
 * overload a resource and may still come in either order.
 */
export interface StageModel extends SearchModel {
  readonly origin: number;
  /** The variable that is the total. */
  readonly total: number;
  /** The loads of each choice; 1 when the first of them ends before the other begins. */
  readonly pairs: readonly Pair[];
  /** Resources that ask for more than that such pairs do not overlap. */
  readonly crowded: readonly ResourceLoads[];
}

/**
 * @param deliveries groups of nodes; the last ends of all groups, added up, are the total
 * @param orders of nodes that can stand in for each other
 */
export function stageModel(
  net: Network,
  all: readonly ResourceLoads[],
  within: StartBounds,
  paths: LagPaths,
  deliveries: readonly (readonly number[])[],
  orders: readonly SymmetryOrder[],
): StageModel {
  const { least, greatest } = within;
  const origin = least.reduce((a, b) => Math.min(a, b), Infinity);
  const ends = deliveries.map((_, k) => net.count + k);
  const total = net.count + ends.length;
  const { pairs, settled, crowded } = loadConflicts(net, all, within, paths);
  const edges: Edge[] = [...(paths.count <= TRANSITIVE ? paths.tightest() : lagsOf(net)), ...settled];
  for (const { before, after } of orders) {
    edges.push({ from: 2 * before, to: 2 * after, weight: 0, choice: -1 });
  }
  const bounds = new Int32Array(2 * (total + 1));
  for (let i = 0; i < net.count; i++) {
    bounds[2 * i] = least[i]! - origin;
    bounds[2 * i + 1] = origin - greatest[i]!;
  }
  deliveries.forEach((nodes, k) => {
    const end = 2 * ends[k]!;
    for (const i of nodes) edges.push({ from: 2 * i, to: end, weight: net.duration[i]!, choice: -1 });
    bounds[end] = Math.max(...nodes.map((i) => bounds[2 * i]! + net.duration[i]!));
    if (paths.count <= TRANSITIVE) {
      bounds[end] = Math.max(bounds[end], energyBound(net, all, within, paths, nodes) - origin);
    }
    bounds[end + 1] = -Math.max(...nodes.map((i) => net.duration[i]! - bounds[2 * i + 1]!));
    bounds[2 * total]! += bounds[end];
    bounds[2 * total + 1]! += bounds[end + 1]!;
  });
  const watch = (trail: Trail): Propagator[] => [
    new DomainPropagator(trail, rangesOf(net, origin, within)),
    ...(crowded.length > 0 ? [new CumulativePropagator(trail, crowded, net.duration)] : []),
    new SumPropagator(trail, total, ends),
  ];
  const plain = { origin, total, starts: total + 1, bounds, edges, pairs: [], crowded, watch };
  return withChoices(plain, net, pairs);
}

/** The model with a choice for each pair of loads besides. @param plain without choices */
export function withChoices(plain: StageModel, net: Network, pairs: readonly Pair[]): StageModel {
  const edges = [...plain.edges];
  const bounds = new Int32Array(2 * (plain.starts + pairs.length));
  bounds.set(plain.bounds);
  pairs.forEach(({ a, b }, k) => {
    const choice = 2 * (plain.starts + k);
    bounds[choice + 1] = -1;
    edges.push(apart(net, a, b, choice), apart(net, b, a, choice + 1));
  });
  return { ...plain, bounds, edges, pairs };
}

/** All values of a schedule. @param starts of all nodes, in minutes */
export function valuesOf(model: StageModel, net: Network, starts: Float64Array): Int32Array {
  const values = new Int32Array(model.bounds.length >> 1);
  for (let i = 0; i < net.count; i++) values[i] = starts[i]! - model.origin;
  model.pairs.forEach(({ a, b }, k) => {
    values[model.starts + k] = starts[a.last]! + net.duration[a.last]! <= starts[b.first]! ? 1 : 0;
  });
  return values;
}

function lagsOf(net: Network): Edge[] {
  return net.from.map((from, e) => {
    return { from: 2 * from, to: 2 * net.to[e]!, weight: net.weight[e]!, choice: -1 };
  });
}

/** The hours of every node that has any choice among them. */
function rangesOf(net: Network, origin: number, { least, greatest }: StartBounds): Ranges[] {
  return net.domains.flatMap((domain, variable): Ranges[] => {
    const first = intervalAfter(domain, least[variable]!);
    let end = first;
    while (end < domain.from.length && domain.from[end]! <= greatest[variable]!) end++;
    if (end - first < 2) return [];
    const shifted = (ends: Float64Array): Int32Array => {
      const values = new Int32Array(end - first);
      for (let k = first; k < end; k++) values[k - first] = ends[k]! - origin;
      return values;
    };
    return [{ variable, from: shifted(domain.from), to: shifted(domain.to) }];
  });
}
