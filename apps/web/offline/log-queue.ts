import type { LogEntry } from '#contract';
import type { Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { queueChanged, announceSent } from './queue-news.js';
import type { QueuedEntry, Refusal } from './queue-order.js';
import { drop, keep, kept, replace } from './queue-store.js';
import { shownDemo } from '../preferences/shown-workshop.js';
import { oneTabAtATime } from './one-tab.js';
import { post, sendAll } from './send-queue.js';

/** What became of an entry. */
export type LogOutcome =
  /** It is in the log, and this is what it did to the plan. */
  | { readonly status: 'sent'; readonly id: string; readonly answer: Schemas['LogAnswer'] }
  /** The API is out of reach. The entry is kept on this device and sent by itself. */
  | { readonly status: 'waiting'; readonly id: string }
  /** The API will not have it. It is kept and shown until someone discards or corrects it. */
  | { readonly status: 'refused'; readonly id: string; readonly refusal: Refusal };

export interface LogOptions {
  /**
   * `keep` (if absent): a refused entry stays in the queue, where the maker is asked about it. `hand-back`: it is
   * dropped and the caller shows the refusal, as a form beside its fields does.
   */
  readonly ifRefused?: 'keep' | 'hand-back';
  /** Photos that the entry shows and that are not with the API yet. */
  readonly photos?: NonNullable<QueuedEntry['photos']>;
}

/**
 * Writes into the bench log, whatever the connection. The entry is kept on this device first, then sent after all
 * that waits already; `at` is the time of the act, so set it at the tap.
 * @param runId id of the run, not its key
 * @throws TypeError where neither the API can be reached nor this browser keep anything
 */
export async function logEntry(
  runId: string,
  entry: LogEntry,
  { ifRefused = 'keep', photos = [] }: LogOptions = {},
): Promise<LogOutcome> {
  const queued = { id: newId(), runId, entry, ...(photos.length > 0 && { photos }), ...here() };
  try {
    await keep(queued);
  } catch {
    return sentAtOnce(queued);
  }
  await queueChanged();
  return settle(queued, ifRefused);
}

/** Tries to send what waits. */
export async function sendWaiting(): Promise<void> {
  await oneTabAtATime(LOCK, () => sendAll());
}

/** Takes an entry out of the queue for good. @returns false when it had been sent by then */
export async function discardEntry(id: string): Promise<boolean> {
  return oneTabAtATime(LOCK, async () => {
    const queued = (await kept()).find((each) => each.id === id);
    if (queued === undefined) return false;
    await drop(queued);
    await queueChanged();
    return true;
  }).finally(() => void sendWaiting());
}

/** Replaces a refused entry, keeps its place in the queue, and tries again. */
export async function correctEntry(id: string, entry: LogEntry): Promise<void> {
  await oneTabAtATime(LOCK, async () => {
    const queued = (await kept()).find((each) => each.id === id);
    if (queued === undefined) return;
    // Another body under the same key would be refused.
    const { refusal: _, ...before } = queued;
    await replace({ ...before, id: newId(), entry });
    await queueChanged();
  });
  await sendWaiting();
}

const LOCK = 'benchtide.log-queue';

/** Where what is logged on this page belongs. */
function here(): { readonly demo?: string } {
  const demo = shownDemo();
  return demo === null ? {} : { demo };
}

type Unplaced = Omit<QueuedEntry, 'place' | 'refusal'>;

async function settle(unplaced: Unplaced, ifRefused: LogOptions['ifRefused']): Promise<LogOutcome> {
  const { id } = unplaced;
  return oneTabAtATime(LOCK, async () => {
    const answer = (await sendAll()).get(id);
    if (answer !== undefined) return { status: 'sent', id, answer };
    const queued: QueuedEntry | undefined = (await kept()).find((each) => each.id === id);
    // Another tab was quicker: the same key gets the same answer.
    if (queued === undefined) return sentAtOnce(unplaced);
    if (queued.refusal === undefined) return { status: 'waiting', id };
    if (ifRefused === 'hand-back') {
      await drop(queued);
      await queueChanged();
    }
    return { status: 'refused', id, refusal: queued.refusal };
  });
}

async function sentAtOnce(unplaced: Unplaced): Promise<LogOutcome> {
  const { id, runId, entry } = unplaced;
  const sent = await post(unplaced);
  if (sent.verdict === 'sent') {
    announceSent({ id, runId, entry, answer: sent.answer });
    return { status: 'sent', id, answer: sent.answer };
  }
  if (sent.verdict === 'later') throw new TypeError('the API was not reached');
  return { status: 'refused', id, refusal: sent.refusal };
}
