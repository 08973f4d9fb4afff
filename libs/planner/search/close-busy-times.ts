import type { Domain } from '../domains.js';
import type { ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import { busyProfile } from './busy-profile.js';

/**
 * The network without the starts at which a stage would meet what cannot move: where busy intervals and fixed stages
 * leave too little of a resource, it is closed like out of hours. Edges are shared with `net`.
 */
export function closeBusyTimes(net: Network, all: readonly ResourceLoads[]): Network {
  const closed = new Map<number, { from: number; to: number }[]>();
  for (const { capacity, loads } of all) {
    const constant = loads.filter((load) => load.constant);
    if (constant.length === 0) continue;
    const startOf = (node: number): number => net.domains[node]!.from[0]!;
    const profile = busyProfile(
      constant.map(({ first, last, amount }) => ({
        ...{ from: startOf(first), to: startOf(last) + net.duration[last]!, amount },
      })),
    );
    for (const { first, last, amount, constant: cannotMove } of loads) {
      // What is held from one stage to another has no length of its own.
      if (cannotMove || first !== last) continue;
      const duration = net.duration[first]!;
      const without = profile
        .filter((taken) => taken.amount + amount > capacity)
        .map(({ from, to }) => ({ from: from - duration + 1, to: to - 1 }));
      closed.set(first, [...(closed.get(first) ?? []), ...without]);
    }
  }
  if (closed.size === 0) return net;
  return {
    ...net,
    domains: net.domains.map((domain, i) => {
      const without = closed.get(i);
      return without === undefined || without.length === 0 ? domain : withoutStarts(domain, without);
    }),
  };
}

/** @param closed closed intervals of starts that are not allowed, in any order */
function withoutStarts(domain: Domain, closed: readonly { from: number; to: number }[]): Domain {
  const gaps = merged(closed);
  const from: number[] = [];
  const to: number[] = [];
  let next = 0;
  for (let k = 0; k < domain.from.length; k++) {
    let at = domain.from[k]!;
    const end = domain.to[k]!;
    while (next < gaps.length && gaps[next]!.to < at) next++;
    // The last of them may reach into the next stretch of hours as well.
    for (let g = next; g < gaps.length && gaps[g]!.from <= end; g++) {
      if (gaps[g]!.from > at) {
        from.push(at);
        to.push(gaps[g]!.from - 1);
      }
      at = gaps[g]!.to + 1;
    }
    if (at > end) continue;
    from.push(at);
    to.push(end);
  }
  return { from: Float64Array.from(from), to: Float64Array.from(to) };
}

function merged(closed: readonly { from: number; to: number }[]): { from: number; to: number }[] {
  const inOrder = [...closed].sort((a, b) => a.from - b.from);
  const found: { from: number; to: number }[] = [];
  for (const { from, to } of inOrder) {
    const last = found.at(-1);
    if (last && from <= last.to + 1) last.to = Math.max(last.to, to);
    else found.push({ from, to });
  }
  return found;
}
