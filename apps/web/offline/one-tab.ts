const chains = new Map<string, Promise<unknown>>();

/**
 * Does something while no other tab of this browser does it. Over plain HTTP from another machine browsers have no
 * Web Locks; then only this tab keeps its own order.
 */
export async function oneTabAtATime<T>(name: string, work: () => Promise<T>): Promise<T> {
  if (isSecureContext) return navigator.locks.request(name, work) as Promise<T>;
  const turn = (chains.get(name) ?? Promise.resolve()).then(work, work);
  chains.set(name, turn);
  return turn;
}
