/** The distance of two nodes without a path. Far enough from the end of 32 bits that two can be added. */
export const NO_PATH = -(1 << 29);

/** Longest paths between the starts of nodes by lags alone, in rows. */
export interface Distances {
  readonly count: number;
  readonly at: Int32Array;
}

/** Makes the distances transitive (Floyd and Warshall). @returns false when a cycle has positive length */
export function close({ count, at }: Distances): boolean {
  const onward = new Int32Array(count);
  for (let k = 0; k < count; k++) {
    // Where few hang together, as several runs do, most rows and columns are empty.
    let reached = 0;
    for (let j = 0; j < count; j++) if (at[k * count + j] !== NO_PATH) onward[reached++] = j;
    for (let i = 0; i < count; i++) {
      const first = at[i * count + k]!;
      if (first === NO_PATH) continue;
      for (let r = 0; r < reached; r++) {
        const j = onward[r]!;
        const through = first + at[k * count + j]!;
        if (through > at[i * count + j]!) at[i * count + j] = through;
      }
    }
    if (at[k * count + k]! > 0) return false;
  }
  for (let i = 0; i < count; i++) if (at[i * count + i]! > 0) return false;
  return true;
}

/** The distances once j must be at least `w` after i. @returns false on a positive cycle */
export function tighten({ count, at }: Distances, i: number, j: number, w: number): boolean {
  if (at[j * count + i]! + w > 0) return false;
  if (at[i * count + j]! >= w) return true;
  for (let a = 0; a < count; a++) {
    const first = at[a * count + i]!;
    if (first === NO_PATH) continue;
    for (let b = 0; b < count; b++) {
      const second = at[j * count + b]!;
      if (second === NO_PATH) continue;
      const through = first + w + second;
      if (through > at[a * count + b]!) at[a * count + b] = through;
    }
  }
  return true;
}

/** Lags from which all distances follow: those that no way round over a third node replaces. */
export function tightestLags({ count, at }: Distances): [number, number, number][] {
  const lags: [number, number, number][] = [];
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const w = at[i * count + j]!;
      if (i === j || w === NO_PATH || isWayRound(i, j, w)) continue;
      lags.push([i, j, w]);
    }
  }
  return lags;

  function isWayRound(i: number, j: number, w: number): boolean {
    for (let k = 0; k < count; k++) {
      if (k === i || k === j) continue;
      if (at[i * count + k]! + at[k * count + j]! < w) continue;
      // Rigid pairs replace each other; the one that comes first stays.
      const rigidToI = at[i * count + k]! + at[k * count + i]! === 0;
      const rigidToJ = at[j * count + k]! + at[k * count + j]! === 0;
      if ((!rigidToI || k < i) && (!rigidToJ || k < j)) return true;
    }
    return false;
  }
}
