/** What the work below took on the machine for which bars of time are meant: an idle server core of 2.5 GHz. */
const REFERENCE_MS = 9;
const ROUNDS = 31;

/**
 * How many times as long as that machine this one takes at the moment, by work of the kinds that planning is made of.
 * Measured in the run whose figures it is for, so that a slow machine or a busy one is told from slow code.
 */
export function machineFactor() {
  for (let round = 0; round < ROUNDS; round += 1) work();
  const times = Array.from({ length: ROUNDS }, () => {
    const begun = performance.now();
    work();
    return performance.now() - begun;
  });
  return (times.sort((a, b) => a - b)[(ROUNDS - 1) / 2] ?? NaN) / REFERENCE_MS;
}

/** Arithmetic, typed arrays, objects that come and go, maps and sorting. @returns something that depends on all of it */
function work() {
  const numbers = new Float64Array(40_000);
  let state = 1;
  for (let i = 0; i < numbers.length; i += 1) {
    state = (state * 48_271) % 2_147_483_647;
    numbers[i] = Math.exp(Math.log1p(state / 2_147_483_647) - 0.3);
  }
  const sorted = numbers.toSorted();
  const groups = new Map();
  for (let i = 0; i < numbers.length; i += 1) {
    const key = Math.floor((numbers[i] ?? 0) * 1000);
    const group = groups.get(key) ?? { count: 0, sum: 0 };
    groups.set(key, { count: group.count + 1, sum: group.sum + (sorted[i] ?? 0) });
  }
  return [...groups.values()].sort((a, b) => a.sum - b.sum).reduce((sum, { count }) => sum + count, 0);
}
