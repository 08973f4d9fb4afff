import { nextIn, type Domain } from '../domains.js';
import type { Load, ResourceLoads } from '../loads.js';
import { profileGroups } from './profile-groups.js';
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

/** What a node uses as long as it lasts, of the resources of one profile. */
interface Need {
  readonly profile: StepProfile;
  /** Of each resource. */
  readonly amounts: Float64Array;
  /** The most that others may use beside it; infinite where it uses nothing. */
  readonly room: Float64Array;
}

/** A load that ends with another node than it began with, and its resource in a profile. */
interface Hold extends Load {
  readonly profile: StepProfile;
  readonly column: number;
  /** The most that others may use beside it. */
  readonly room: number;
  /** How long it is taken to last while its other end has no start. */
  readonly length: number;
}

/** Edges between one node and others. */
interface Lags {
  readonly nodes: Int32Array;
  readonly weights: Float64Array;
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
  private readonly entering: readonly Lags[];
  private readonly leaving: readonly Lags[];
  /** What lasts as long as each node, and what begins or ends with it. */
  private readonly needs: readonly Need[][];
  private readonly holds: readonly Hold[][];
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
    this.entering = lagsAt(duration.length, edges, 'to', 'from');
    this.leaving = lagsAt(duration.length, edges, 'from', 'to');
    this.needs = domains.map(() => []);
    this.holds = domains.map(() => []);
    const groups = profileGroups(all);
    this.profiles = groups.map(({ length }) => new StepProfile(length));
    this.bare = groups.map(({ length }) => new StepProfile(length));
    groups.forEach((group, g) => {
      group.forEach((r, column) => {
        const resource = { profile: this.profiles[g]!, column, bare: this.bare[g]!, width: group.length };
        for (const load of all[r]!.loads) this.register(load, all[r]!.capacity, resource, lengthOf);
      });
    });
  }

  private register(
    load: Load,
    capacity: number,
    { profile, column, bare, width }: Place,
    lengthOf: (load: Load) => number,
  ): void {
    const { first, last, amount, constant } = load;
    if (constant) {
      bare.addTo(column, this.starts[first]!, this.starts[last]! + this.model.duration[last]!, amount);
      return;
    }
    if (first !== last) {
      const hold = { ...load, profile, column, room: capacity - amount, length: lengthOf(load) };
      this.holds[first]!.push(hold);
      this.holds[last]!.push(hold);
      return;
    }
    let need = this.needs[first]!.find((each) => each.profile === profile);
    if (need === undefined) {
      need = { profile, amounts: new Float64Array(width), room: new Float64Array(width).fill(Infinity) };
      this.needs[first]!.push(need);
    }
    need.amounts[column]! += amount;
    need.room[column] = capacity - need.amounts[column]!;
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
    const before = this.entering[i]!;
    for (let k = 0; k < before.nodes.length; k++) {
      const from = before.nodes[k]!;
      if (isPlaced[from] === 1) at = Math.max(at, starts[from]! + before.weights[k]!);
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
    const after = this.leaving[i]!;
    for (let k = 0; k < after.nodes.length; k++) {
      const to = after.nodes[k]!;
      const least = at + after.weights[k]!;
      if (isPlaced[to] === 1 && to !== i && least > starts[to]!) return { node: to, at: least };
    }
    starts[i] = at;
    isPlaced[i] = 1;
    for (let k = 0; k < needs.length; k++) needs[k]!.profile.add(at, at + duration, needs[k]!.amounts);
    for (let k = 0; k < holds.length; k++) this.book(holds[k]!, holds[k]!.amount);
    return null;
  }

  /** When node `i` can start from `at` on, as far as a hold goes; or which other node must not start before when. */
  private roomFor(hold: Hold, i: number, at: number): Floor {
    const { first, last, profile, column, room } = hold;
    if (first !== i && this.isPlaced[first] === 0) return { node: i, at };
    const end = this.endOf(hold, i, at);
    const blocked = profile.lastOver(column, first === i ? at : this.starts[first]!, end, room);
    if (blocked === -Infinity) return { node: i, at };
    // What began with another node began too early.
    if (first !== i) return { node: first, at: blocked };
    return last !== i && this.isPlaced[last] === 1 && blocked >= end ? LOST : { node: i, at: blocked };
  }

  /** When the load ends if node `i` starts at `at`; a likely end while its last node has no start. */
  private endOf({ first, last, length }: Hold, i: number, at: number): number {
    if (last === i) return at + this.model.duration[i]!;
    if (this.isPlaced[last] === 1) return this.starts[last]! + this.model.duration[last]!;
    return (first === i ? at : this.starts[first]!) + length;
  }

  /** Adds the load to its profile as far as it is known, or takes it away. */
  private book(hold: Hold, amount: number): void {
    const { first, profile, column } = hold;
    if (this.isPlaced[first] === 0) return;
    profile.addTo(column, this.starts[first]!, this.endOf(hold, -1, 0), amount);
  }
}

/** Where a resource is kept. */
interface Place {
  readonly profile: StepProfile;
  readonly column: number;
  readonly bare: StepProfile;
  readonly width: number;
}

/** The edges of each node at one of their ends. */
function lagsAt(count: number, edges: readonly LagEdge[], end: 'from' | 'to', other: 'from' | 'to'): Lags[] {
  const at: LagEdge[][] = Array.from({ length: count }, () => []);
  for (const edge of edges) at[edge[end]]!.push(edge);
  return at.map((own) => ({
    nodes: Int32Array.from(own, (edge) => edge[other]),
    weights: Float64Array.from(own, ({ weight }) => weight),
  }));
}

interface Floor {
  readonly node: number;
  readonly at: number;
}

const LOST: Floor = { node: -1, at: 0 };
