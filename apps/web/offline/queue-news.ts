import type { LogEntry } from '#contract';
import type { Schemas } from '../api/client.js';
import type { QueuedEntry } from './queue-order.js';
import { kept } from './queue-store.js';

/** An entry that has reached the log, from whichever tab. */
export interface SentEntry {
  readonly id: string;
  readonly runId: string;
  readonly entry: LogEntry;
  readonly answer: Schemas['LogAnswer'];
}

const tabs = new BroadcastChannel('benchtide.log-queue');
const listeners = new Set<() => void>();
const sentListeners = new Set<(sent: SentEntry) => void>();
let known: readonly QueuedEntry[] = [];

tabs.onmessage = ({ data }: MessageEvent<SentEntry | 'changed'>) => {
  if (data === 'changed') void readAgain();
  else sentListeners.forEach((listener) => listener(data));
};

/** What is kept, as last read. */
export function knownQueue(): readonly QueuedEntry[] {
  return known;
}

/** @returns a function that ends it */
export function whenQueueChanges(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

/** @returns a function that ends it */
export function whenSent(listener: (sent: SentEntry) => void): () => void {
  sentListeners.add(listener);
  return () => sentListeners.delete(listener);
}

/** Tells this tab and the others that the queue has changed. */
export async function queueChanged(): Promise<void> {
  await readAgain();
  tabs.postMessage('changed');
}

/** Tells this tab and the others what has reached the log. */
export function announceSent(sent: SentEntry): void {
  sentListeners.forEach((listener) => listener(sent));
  tabs.postMessage(sent);
}

/** Reads the queue anew; where this browser keeps nothing, it is empty. */
export async function readAgain(): Promise<void> {
  known = await kept().catch(() => []);
  listeners.forEach((listener) => listener());
}
