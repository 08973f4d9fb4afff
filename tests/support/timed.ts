/** What a call came to and the wall time it took. */
export function timed<T>(call: () => T): { readonly value: T; readonly ms: number } {
  const begun = performance.now();
  const value = call();
  return { value, ms: performance.now() - begun };
}
