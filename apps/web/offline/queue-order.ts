import type { LogEntry } from '#contract';
import type { Issue } from '#units';

/** Why the API would not take an entry. */
export interface Refusal {
  readonly status: number;
  /** The API's own words, in the language of the page as it was then. */
  readonly text: string;
  /** What it complains about, as data. */
  readonly issues: readonly Issue[];
}

/** An entry of the bench log that is not with the API yet. */
export interface QueuedEntry {
  /** Idempotency key: however often it is sent, it is written once. */
  readonly id: string;
  /** Counts up in the order in which things were logged on this device. */
  readonly place: number;
  readonly runId: string;
  /** Id of the demo that the run is in; absent: it is the maker's own. */
  readonly demo?: string;
  readonly entry: LogEntry;
  /** Photos that the entry shows, to be sent before it; JPEGs in base64. */
  readonly photos?: readonly { readonly id: string; readonly data: string }[];
  /** Present once the API has refused it; it then waits for a decision. */
  readonly refusal?: Refusal;
}

/**
 * What to send next: the oldest entry that waits. What was refused holds back what came after it in the same run,
 * which may build on it; other runs go on.
 */
export function nextToSend(queue: readonly QueuedEntry[]): QueuedEntry | undefined {
  const held = new Set(queue.filter(({ refusal }) => refusal !== undefined).map(({ runId }) => runId));
  return inOrder(queue).find(
    ({ refusal, runId, place }) =>
      refusal === undefined &&
      !(
        held.has(runId) &&
        queue.some((other) => other.runId === runId && other.refusal && other.place < place)
      ),
  );
}

/** As they were logged. */
export function inOrder(queue: readonly QueuedEntry[]): QueuedEntry[] {
  return [...queue].sort((a, b) => a.place - b.place);
}

/** Of a run, what waits or was refused. */
export function ofRun(queue: readonly QueuedEntry[], runId: string): QueuedEntry[] {
  return inOrder(queue).filter((queued) => queued.runId === runId);
}

/** Statuses that say nothing about the entry itself: sign in first, wait, too many at once. */
const PASSING = new Set([401, 403, 408, 421, 425, 429]);

/**
 * What an answer means for an entry.
 * @param status of HTTP
 * @returns `sent`: it is in the log; `refused`: it never will be as it stands; `later`: try again
 */
export function verdict(status: number): 'sent' | 'refused' | 'later' {
  if (status >= 200 && status < 300) return 'sent';
  return status >= 400 && status < 500 && !PASSING.has(status) ? 'refused' : 'later';
}
