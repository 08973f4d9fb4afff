import type { Network } from '../network.js';
import { close, NO_PATH } from '../project/longest-paths.js';

/** The longest path from one node to another by lags alone; `NO_PATH` where there is none. */
export type LagPaths = (from: number, to: number) => number;

/** All pairs; nodes without lags, such as busy intervals, cost nothing. */
export function lagPaths(net: Network): LagPaths {
  const place = new Int32Array(net.count).fill(-1);
  let count = 0;
  for (const node of [...net.from, ...net.to]) if (place[node] === -1) place[node] = count++;
  const at = new Int32Array(count * count).fill(NO_PATH);
  for (let i = 0; i < count; i++) at[i * count + i] = 0;
  net.from.forEach((from, e) => {
    const k = place[from]! * count + place[net.to[e]!]!;
    at[k] = Math.max(at[k]!, net.weight[e]!);
  });
  close({ count, at });
  return (from, to) => {
    if (from === to) return place[from] === -1 ? 0 : at[place[from]! * (count + 1)]!;
    return place[from] === -1 || place[to] === -1 ? NO_PATH : at[place[from]! * count + place[to]!]!;
  };
}
