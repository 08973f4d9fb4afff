import type { Random } from '#units';
import { firstOverload, type Load, type ResourceLoads } from '../loads.js';
import type { Network } from '../network.js';
import { ListScheduler, mirrorModel, type LagEdge, type ListModel } from './list-scheduler.js';
import type { StartBounds } from './start-bounds.js';

/** Share of the neighbours in a list that are swapped. */
const MUTATED = 0.05;

/** How often the nodes of a list are placed anew for the sake of maximum lags and holds. */
const REPAIRS = 20;

/** What is to be placed: a network, its resources, and what is to come early. */
export interface ListTask {
  readonly net: Network;
  readonly all: readonly ResourceLoads[];
  readonly within: StartBounds;
  /** Groups of nodes. */
  readonly deliveries: readonly (readonly number[])[];
  /** The ends of all deliveries added up, or that less a constant. */
  readonly totalOf: (starts: Float64Array) => number;
}

export interface ListSchedule {
  /** The nodes that can move, in the order in which they were placed or, where nothing placed them, by their starts. */
  readonly list: Int32Array;
  /** Of all nodes. */
  readonly starts: Float64Array;
  /** As the task's `totalOf` says. */
  readonly total: number;
}

/** Schedules from activity lists: orders of the nodes that can move, in which lags of 0 or more point forward. */
export class ListSchedules {
  private readonly forward: ListScheduler;
  private readonly backward: ListScheduler;
  /** The nodes that can move, in an order that is a list, and the place of each node in it. */
  private readonly inOrder: Int32Array;
  private readonly rank: Int32Array;
  /** The nodes that come right after and right before each one in every list. */
  private readonly after: readonly number[][];
  private readonly before: readonly number[][];
  /** How long it takes at least from the start of each node to the end of what comes after it. */
  private readonly tail: Float64Array;

  /** Whether the scheduler sees each load by itself although one stage begins or ends several of a resource. */
  private readonly isLoose: boolean;

  /** @param edges what lags there are; those of the network when left out */
  constructor(
    private readonly task: ListTask,
    edges: readonly LagEdge[] = lagsOf(task.net),
  ) {
    const { net, all, within } = task;
    this.isLoose = all.some(({ loads }) => {
      const nodes = loads.map(({ first }) => first);
      return new Set(nodes).size < nodes.length || loads.some(({ first, last }) => first !== last);
    });
    const { duration, domains, fixed } = net;
    const ahead: ListModel = { duration, domains, fixed, edges, all };
    const span = (first: number, last: number): number =>
      Math.max(0, within.least[last]! - within.least[first]!) + duration[last]!;
    const lengthOf = ({ first, last }: Load): number => span(first, last);
    this.forward = new ListScheduler(ahead, lengthOf);
    this.backward = new ListScheduler(mirrorModel(ahead), ({ first, last }) => span(last, first));
    const forced = edges.filter(
      ({ from, to, weight }) => weight >= 0 && fixed[from] === 0 && fixed[to] === 0,
    );
    this.inOrder = topological(net.count, fixed, forced, within.least);
    this.rank = new Int32Array(net.count).fill(-1);
    this.inOrder.forEach((i, k) => (this.rank[i] = k));
    this.after = domains.map(() => []);
    this.before = domains.map(() => []);
    this.tail = duration.slice();
    // Two that must start together are in one order only.
    const arcs = forced.filter(({ from, to }) => this.rank[from]! < this.rank[to]!);
    for (const { from, to } of arcs) {
      this.after[from]!.push(to);
      this.before[to]!.push(from);
    }
    for (const { from, to, weight } of arcs.sort((a, b) => this.rank[b.from]! - this.rank[a.from]!)) {
      this.tail[from] = Math.max(this.tail[from]!, weight + this.tail[to]!);
    }
  }

  /** The schedule of a list, each node as early as those before it let it; null where the list leads to none. */
  early(list: Int32Array): ListSchedule | null {
    return this.forward.place(list, this.task.within.least, REPAIRS) ? this.current(list) : null;
  }

  /**
   * Forward-backward improvement: pushes all towards the ends of their deliveries, what ends last first, and back to the
   * beginning (Tormos and Lova, Annals of Operations Research 102, 2001).
   * @param repairs as for `ListScheduler.place`
   * @returns the better of before and after
   */
  forwardBackward(given: ListSchedule, repairs = REPAIRS): ListSchedule {
    const { forward, backward, task, inOrder } = this;
    const { duration } = task.net;
    const floor = this.endsOf(given.starts).map((end) => -end);
    const back = this.sorted(inOrder.slice().reverse(), (i) => -given.starts[i]! - duration[i]!);
    if (!backward.place(back, floor, repairs)) return given;
    const late = backward.starts;
    const list = this.sorted(inOrder, (i) => -late[i]! - duration[i]!);
    if (!forward.place(list, task.within.least, repairs)) return given;
    const pushed = this.current(list);
    // Lists in the order of starts make better parents than those they came from.
    return pushed !== null && pushed.total <= given.total ? this.of(pushed.starts) : given;
  }

  /** A list by chance, in which nodes with much after them tend to come early; `pull` from 1 says how strongly. */
  sample(random: Random, pull: number): Int32Array {
    const { before, after, tail, inOrder } = this;
    const open = before.map((nodes) => nodes.length);
    const ready = [...inOrder].filter((i) => open[i] === 0);
    return inOrder.map(() => {
      let chosen = Math.floor(random.next() * ready.length);
      for (let k = 1; k < pull && ready.length > 1; k++) {
        const other = Math.floor(random.next() * ready.length);
        if (tail[ready[other]!]! > tail[ready[chosen]!]!) chosen = other;
      }
      const i = ready[chosen]!;
      ready[chosen] = ready.at(-1)!;
      ready.pop();
      for (const j of after[i]!) if (--open[j]! === 0) ready.push(j);
      return i;
    });
  }

  /** Swaps some neighbours that may come in either order. */
  mutate(list: Int32Array, random: Random): Int32Array {
    for (let k = 1; k < list.length; k++) {
      const [a, b] = [list[k - 1]!, list[k]!];
      if (random.next() >= MUTATED || this.before[b]!.includes(a)) continue;
      list[k - 1] = b;
      list[k] = a;
    }
    return list;
  }

  /** A schedule found elsewhere. @param starts of all nodes */
  of(starts: Float64Array): ListSchedule {
    const { inOrder, task } = this;
    const list = this.sorted(inOrder, (i) => starts[i]!);
    return { list, starts, total: task.totalOf(starts) };
  }

  /** What the forward pass has just placed; null where loads of one stage overload a resource together. */
  private current(list: Int32Array): ListSchedule | null {
    const { all, net } = this.task;
    const starts = this.forward.starts.slice();
    const isSound = !this.isLoose || firstOverload(all, starts, net.duration) === undefined;
    return isSound ? { list, starts, total: this.task.totalOf(starts) } : null;
  }

  /** When each node has to have ended, so that no delivery ends later than at the given starts. */
  private endsOf(starts: Float64Array): Float64Array {
    const { net, within, deliveries } = this.task;
    const last = (nodes: Iterable<number>): number => {
      let end = -Infinity;
      for (const i of nodes) end = Math.max(end, starts[i]! + net.duration[i]!);
      return end;
    };
    const end = last(this.inOrder);
    const ends = within.greatest.map((at, i) => Math.min(end, at + net.duration[i]!));
    for (const nodes of deliveries) {
      const until = last(nodes);
      for (const i of nodes) ends[i] = Math.min(ends[i]!, until);
    }
    return ends;
  }

  /** Nodes by a key, a whole number; equals stay in their order. */
  private sorted(nodes: Int32Array, keyOf: (node: number) => number): Int32Array {
    const { length } = nodes;
    const keys = new Float64Array(length);
    let least = Infinity;
    for (let k = 0; k < length; k++) {
      keys[k] = keyOf(nodes[k]!);
      least = Math.min(least, keys[k]!);
    }
    for (let k = 0; k < length; k++) keys[k] = (keys[k]! - least) * length + k;
    keys.sort();
    const sorted = new Int32Array(length);
    for (let k = 0; k < length; k++) sorted[k] = nodes[keys[k]! % length]!;
    return sorted;
  }
}

function lagsOf(net: Network): LagEdge[] {
  return net.from.map((from, e) => ({ from, to: net.to[e]!, weight: net.weight[e]! }));
}

/** The nodes that can move, each after those from which an edge leads to it as far as edges lead in no circle. */
function topological(
  count: number,
  fixed: Uint8Array,
  edges: readonly LagEdge[],
  least: Float64Array,
): Int32Array {
  const open = new Int32Array(count);
  const out: number[][] = Array.from({ length: count }, () => []);
  for (const { from, to } of edges) {
    open[to]!++;
    out[from]!.push(to);
  }
  const left = new Set([...Array(count).keys()].filter((i) => fixed[i] === 0));
  const order: number[] = [];
  while (left.size > 0) {
    let next = -1;
    for (const i of left) {
      if (next < 0) next = i;
      const isReady = open[i]! <= 0;
      const isNextReady = open[next]! <= 0;
      if (isReady === isNextReady ? least[i]! < least[next]! : isReady) next = i;
    }
    left.delete(next);
    order.push(next);
    for (const to of out[next]!) open[to]!--;
  }
  return Int32Array.from(order);
}
