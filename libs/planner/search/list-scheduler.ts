import { nextIn, type Domain } from '../domains.js';
import type { Load, ResourceLoads } from '../loads.js';
import { StepProfile } from './step-profile.js';

/** x[to] ≥ x[from] + weight, between starts. */
export interface LagEdge {
  readonly from: number;
  readonly to: number;
  readonly weight: number;
}

/** What list schedules are made of: nodes as in a network, all times in minutes. */
export interface ListModel {
  readonly duration: Float64Array;
  readonly domains: readonly Domain[];
  /** 1 where the start is a constant. */
  readonly fixed: Uint8Array;
  readonly edges: readonly LagEdge[];
  readonly all: readonly ResourceLoads[];
}

/** The same backwards in time: a node starts at minus what was its end. */
export function mirrorModel({ duration, domains, fixed, edges, all }: ListModel): ListModel {
  const negated = (ends: Float64Array, length: number): Float64Array =>
    ends.map((x) => -x - length).reverse();
  return {
    duration,
    fixed,
    domains: domains.map(({ from, to }, i) => ({
      from: negated(to, duration[i]!),
      to: negated(from, duration[i]!),
    })),
    edges: edges.map(({ from, to, weight }) => ({
      ...{ from: to, to: from, weight: weight + duration[to]! - duration[from]! },
    })),
    all: all.map((resource) => ({
      ...resource,
      loads: resource.loads.map((load) => ({ ...load, first: load.last, last: load.first })),
    })),
  };
}

/** A load with the profile of its resource, as one of its ends sees it. */
interface Need extends Load {
  readonly profile: StepProfile;
  /** The most that others may use beside it. */
  readonly room: number;
  /** How long it is taken to last while its other end has no start. */
  readonly length: number;
}

/**
 * The serial schedule generation scheme (Kolisch, EJOR 90, 1996): the nodes of a list one after the other, each as
 * early as hours, resources and those placed before let it. Where that breaks a maximum lag to one placed before, or a
 * hold that began with one, that one is kept from starting so early and all are placed anew (after Franck, Neumann
 * and Schwindt, OR Spektrum 23, 2001; from memory).
 */
export class ListScheduler {
  /** Starts of all nodes after `place`. */
  readonly starts: Float64Array;
  private readonly isPlaced: Uint8Array;
  /** For each node, edges that enter and that leave it. */
  private readonly entering: readonly LagEdge[][];
  private readonly leaving: readonly LagEdge[][];
  /** The loads that last as long as each node; and those that begin or end with it. */
  private readonly needs: readonly Need[][];
  private readonly holds: readonly Need[][];
  private readonly profiles: readonly StepProfile[];
  /** With what cannot move only. */
  private readonly bare: readonly StepProfile[];

  /** @param lengthOf how long a load is taken to last while one of its ends has no start */
  constructor(
    private readonly model: ListModel,
    lengthOf: (load: Load) => number,
  ) {
    const { duration, domains, fixed, edges, all } = model;
    this.starts = Float64Array.from(domains, (domain, i) => (fixed[i] === 1 ? domain.from[0]! : NaN));
    this.isPlaced = fixed.slice();
    const lists = <T>(): T[][] => Array.from({ length: duration.length }, () => []);
    [this.entering, this.leaving] = [lists<LagEdge>(), lists<LagEdge>()];
    for (const edge of edges) {
      this.entering[edge.to]!.push(edge);
      this.leaving[edge.from]!.push(edge);
    }
    this.profiles = all.map(() => new StepProfile());
    this.bare = all.map(() => new StepProfile());
    [this.needs, this.holds] = [lists<Need>(), lists<Need>()];
    all.forEach(({ capacity, loads }, r) => {
      for (const load of loads) {
        const { first, last, amount, constant } = load;
        if (constant) {
          this.bare[r]!.add(this.starts[first]!, this.starts[last]! + duration[last]!, amount);
          continue;
        }
        const need = { ...load, profile: this.profiles[r]!, room: capacity - amount, length: lengthOf(load) };
        for (const node of first === last ? [] : [first, last]) this.holds[node]!.push(need);
        if (first === last) this.needs[first]!.push(need);
      }
    });
  }

  /**
   * Places the nodes of a list, each no earlier than its `floor`.
   * @param list every node that is not fixed, once
   * @param repairs how often all are placed anew at most
   * @returns false where that was not enough; the starts are then of no use
   */
  place(list: Int32Array, floor: Float64Array, repairs: number): boolean {
    let least = floor;
    for (let left = repairs; left >= 0; left--) {
      const stuck = this.pass(list, least);
      if (stuck === null) return true;
      if (stuck.node < 0 || this.model.fixed[stuck.node] === 1) return false;
      if (least === floor) least = floor.slice();
      least[stuck.node] = Math.max(stuck.at, least[stuck.node]!);
    }
    return false;
  }

  /** @returns which node may not start before when, if the list is to go through; a node below 0 if it cannot */
  private pass(list: Int32Array, floor: Float64Array): Floor | null {
    const { profiles, bare, isPlaced, model } = this;
    for (let r = 0; r < profiles.length; r++) profiles[r]!.copy(bare[r]!);
    isPlaced.set(model.fixed);
    for (let k = 0; k < list.length; k++) {
      const stuck = this.placeNode(list[k]!, floor[list[k]!]!);
      if (stuck !== null) return stuck;
    }
    return null;
  }

  private placeNode(i: number, floor: number): Floor | null {
    const { starts, isPlaced, model } = this;
    let at = floor;
    for (const { from, weight } of this.entering[i]!) {
      if (isPlaced[from] === 1 && starts[from]! + weight > at) at = starts[from]! + weight;
    }
    const [needs, holds] = [this.needs[i]!, this.holds[i]!];
    for (let k = 0; k < holds.length; k++) this.book(holds[k]!, -holds[k]!.amount);
    at = nextIn(model.domains[i]!, at);
    if (Number.isNaN(at)) return LOST;
    const duration = model.duration[i]!;
    // Until all have room one after the other.
    const count = needs.length + holds.length;
    for (let k = 0, settled = 0; settled < count; k = k + 1 < count ? k + 1 : 0, settled++) {
      let next = at;
      if (k < needs.length) next = needs[k]!.profile.firstFit(at, duration, needs[k]!.room);
      else {
        const room = this.roomFor(holds[k - needs.length]!, i, at);
        if (room.node !== i) return room;
        next = room.at;
      }
      if (next === at) continue;
      at = nextIn(model.domains[i]!, next);
      if (Number.isNaN(at)) return LOST;
      settled = -1;
    }
    for (const { to, weight } of this.leaving[i]!) {
      if (isPlaced[to] === 1 && to !== i && at + weight > starts[to]!) return { node: to, at: at + weight };
    }
    starts[i] = at;
    isPlaced[i] = 1;
    for (let k = 0; k < needs.length; k++) needs[k]!.profile.add(at, at + duration, needs[k]!.amount);
    for (let k = 0; k < holds.length; k++) this.book(holds[k]!, holds[k]!.amount);
    return null;
  }

  /** When node `i` can start from `at` on, as far as a hold goes; or which other node must not start before when. */
  private roomFor(need: Need, i: number, at: number): Floor {
    const { first, last, profile, room } = need;
    if (first !== i && this.isPlaced[first] === 0) return { node: i, at };
    const end = this.endOf(need, i, at);
    const blocked = profile.lastOver(first === i ? at : this.starts[first]!, end, room);
    if (blocked === -Infinity) return { node: i, at };
    // What began with another node began too early.
    if (first !== i) return { node: first, at: blocked };
    return last !== i && this.isPlaced[last] === 1 && blocked >= end ? LOST : { node: i, at: blocked };
  }

  /** When the load ends if node `i` starts at `at`; a likely end while its last node has no start. */
  private endOf({ first, last, length }: Need, i: number, at: number): number {
    if (last === i) return at + this.model.duration[i]!;
    if (this.isPlaced[last] === 1) return this.starts[last]! + this.model.duration[last]!;
    return (first === i ? at : this.starts[first]!) + length;
  }

  /** Adds the load to its profile as far as it is known, or takes it away. */
  private book(need: Need, amount: number): void {
    const { first, profile } = need;
    if (this.isPlaced[first] === 0) return;
    profile.add(this.starts[first]!, this.endOf(need, -1, 0), amount);
  }
}

interface Floor {
  readonly node: number;
  readonly at: number;
}

const LOST: Floor = { node: -1, at: 0 };
