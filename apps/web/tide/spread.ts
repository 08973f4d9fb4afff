/**
 * Moves marks apart so that each has room, keeping their order and each group around its own middle: the least squares
 * of all moves (isotonic regression, pooling adjacent violators).
 * @param wanted places in order
 * @param gap least distance between neighbours
 */
export function spread(wanted: readonly number[], gap: number): number[] {
  const pools: { sum: number; count: number }[] = [];
  wanted.forEach((place, i) => {
    let pool = { sum: place - i * gap, count: 1 };
    for (let last = pools.at(-1); last !== undefined && mean(last) > mean(pool); last = pools.at(-1)) {
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      pools.pop();
    }
    pools.push(pool);
  });
  return pools
    .flatMap((pool) => Array<number>(pool.count).fill(mean(pool)))
    .map((place, i) => place + i * gap);
}

function mean({ sum, count }: { readonly sum: number; readonly count: number }): number {
  return sum / count;
}
