import { useSyncExternalStore } from 'react';
import { KEPT_AT } from './kept-at.js';

/** What the page stands on. */
export interface Connection {
  /** The API did not answer when it was last asked. */
  readonly isLost: boolean;
  /** When the oldest copy that is shown was made, in milliseconds since 1970; absent: nothing shown is a copy. */
  readonly oldestCopy?: number;
}

let current: Connection = { isLost: false };
const listeners = new Set<() => void>();

/** Takes note of an answer: a copy that the service worker had kept, or the API's own. */
export function noteAnswer(response: Response): void {
  const made = Date.parse(response.headers.get(KEPT_AT) ?? '');
  if (Number.isNaN(made)) become({ isLost: false });
  else become({ isLost: true, oldestCopy: Math.min(made, current.oldestCopy ?? made) });
}

/** Takes note that the API can be reached. */
export function noteReached(): void {
  become({ isLost: false });
}

/** Takes note that there was neither answer nor copy. */
export function noteSilence(): void {
  become({ ...current, isLost: true });
}

export function useConnection(): Connection {
  return useSyncExternalStore(whenConnectionChanges, () => current);
}

/** @returns a function that ends it */
export function whenConnectionChanges(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

export function isConnectionLost(): boolean {
  return current.isLost;
}

function become(next: Connection): void {
  if (next.isLost === current.isLost && next.oldestCopy === current.oldestCopy) return;
  current = next;
  listeners.forEach((listener) => listener());
}
