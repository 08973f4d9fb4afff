import type { Edge } from '../learning/lag-edges.js';
import type { Network } from '../network.js';
import { close, NO_PATH, tighten, tightestLags, type Distances } from './longest-paths.js';

/** The longest paths between nodes by lags alone, all pairs. Nodes that cannot move and have no lags cost nothing. */
export class LagPaths {
  private readonly place: Int32Array;
  private readonly nodes: readonly number[];
  private readonly distances: Distances;

  constructor(net: Network) {
    this.place = new Int32Array(net.count).fill(-1);
    const nodes: number[] = [];
    const add = (node: number): void => {
      if (this.place[node] === -1) this.place[node] = nodes.push(node) - 1;
    };
    for (let i = 0; i < net.count; i++) if (net.fixed[i] === 0) add(i);
    net.from.forEach(add);
    net.to.forEach(add);
    const count = nodes.length;
    const at = new Int32Array(count * count).fill(NO_PATH);
    for (let i = 0; i < count; i++) at[i * count + i] = 0;
    net.from.forEach((from, e) => {
      const k = this.place[from]! * count + this.place[net.to[e]!]!;
      at[k] = Math.max(at[k]!, net.weight[e]!);
    });
    this.nodes = nodes;
    this.distances = { count, at };
    close(this.distances);
  }

  get count(): number {
    return this.nodes.length;
  }

  /** From one node to another; `NO_PATH` where there is none. */
  far(from: number, to: number): number {
    const [i, j] = [this.place[from]!, this.place[to]!];
    if (i === -1 || j === -1) return from === to ? 0 : NO_PATH;
    return this.distances.at[i * this.distances.count + j]!;
  }

  /** From now on `to` starts at least `weight` after `from`. @returns false where that cannot be */
  tighten(from: number, to: number, weight: number): boolean {
    const [i, j] = [this.place[from]!, this.place[to]!];
    return i === -1 || j === -1 || tighten(this.distances, i, j, weight);
  }

  /** Lags from which all paths follow, none of which follows from others. */
  tightest(): Edge[] {
    return tightestLags(this.distances).map(([i, j, weight]) => {
      return { from: 2 * this.nodes[i]!, to: 2 * this.nodes[j]!, weight, choice: -1 };
    });
  }
}
