import type { Random } from '#units';
import type { Edge } from '../learning/lag-edges.js';
import type { Load, ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import { apart } from './load-conflicts.js';
import { withChoices, type StageModel } from './stage-model.js';

/**
 * The model with most of a schedule's order kept: of loads of which neither end is free, those that follow each other on
 * the units of a resource keep doing so (Godard, Laborie and Nuijten, "Randomized large neighborhood search for
 * cumulative scheduling", ICAPS 2005). Starts can still shift.
 * @param starts a schedule, of all nodes
 */
export function repairModel(
  model: StageModel,
  net: Network,
  starts: Float64Array,
  isFree: Uint8Array,
  random: Random,
): StageModel {
  const stays = ({ first, last }: Load): boolean => isFree[first] === 0 && isFree[last] === 0;
  const edges: Edge[] = model.edges.filter(({ choice }) => choice < 0);
  const pairs = model.pairs.filter(({ a, b }) => {
    if (!stays(a) || !stays(b)) return true;
    const isFirst = starts[a.last]! + net.duration[a.last]! <= starts[b.first]!;
    edges.push(isFirst ? apart(net, a, b) : apart(net, b, a));
    return false;
  });
  for (const resource of model.crowded) edges.push(...handovers(resource, net, starts, stays, random));
  const plain = { ...model, edges, pairs: [], bounds: model.bounds.slice(0, 2 * model.starts) };
  return withChoices(plain, net, pairs);
}

/** Who takes over units of a resource from whom, among the loads that stay. */
function handovers(
  { capacity, loads }: ResourceLoads,
  net: Network,
  starts: Float64Array,
  stays: (load: Load) => boolean,
  random: Random,
): Edge[] {
  const endOf = (load: Load): number => starts[load.last]! + net.duration[load.last]!;
  const kept = loads.filter((load) => stays(load) && endOf(load) > starts[load.first]!);
  kept.sort((a, b) => starts[a.first]! - starts[b.first]!);
  const edges: Edge[] = [];
  // Who had units last, and how many.
  let holders: { load: Load | null; units: number }[] = [{ load: null, units: capacity }];
  for (const taker of kept) {
    const ended = holders.filter(({ load }) => load === null || endOf(load) <= starts[taker.first]!);
    const begin = Math.floor(random.next() * ended.length);
    let needed = taker.amount;
    // Loads that cannot move may be more than there is.
    for (let k = 0; k < ended.length && needed > 0; k++) {
      const holder = ended[(begin + k) % ended.length]!;
      const taken = Math.min(needed, holder.units);
      holder.units -= taken;
      needed -= taken;
      const { load } = holder;
      if (load !== null && !(load.constant && taker.constant)) edges.push(apart(net, load, taker));
    }
    holders = [...holders.filter(({ units }) => units > 0), { load: taker, units: taker.amount }];
  }
  return edges;
}
