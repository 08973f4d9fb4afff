import { useSyncExternalStore } from 'react';
import { knownQueue, readAgain, whenQueueChanges } from './queue-news.js';
import type { QueuedEntry } from './queue-order.js';

void readAgain();

/** What was logged on this device and is not with the API yet, in order. */
export function useLogQueue(): readonly QueuedEntry[] {
  return useSyncExternalStore(whenQueueChanges, knownQueue);
}
