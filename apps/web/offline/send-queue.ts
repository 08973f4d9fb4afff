import { api, ApiError, WORKSHOP, type Schemas } from '../api/client.js';
import { issueOf } from '../form/path-of.js';
import { queueChanged, announceSent } from './queue-news.js';
import { nextToSend, verdict, type QueuedEntry, type Refusal } from './queue-order.js';
import { drop, kept, replace } from './queue-store.js';

/** An answer that takes longer counts as none; the key makes sure that nothing is written twice. */
const PATIENCE_MS = 20_000;

type Sent =
  | { readonly verdict: 'sent'; readonly answer: Schemas['LogAnswer'] }
  | { readonly verdict: 'refused'; readonly refusal: Refusal }
  | { readonly verdict: 'later' };

/** Sends one entry, its photos first. Never throws for want of a connection. */
export async function post(queued: Omit<QueuedEntry, 'place'>): Promise<Sent> {
  const { id, runId, demo, entry } = queued;
  try {
    const photos = await postPhotos(queued);
    if (photos !== undefined) return photos;
    const { data, error, response } = await api.POST('/api/runs/{id}/log', {
      params: { path: { id: runId }, header: { 'Idempotency-Key': id } },
      body: entry,
      // Whatever this page shows: it may have been logged on another.
      headers: { [WORKSHOP]: demo ?? 'own' },
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    const meaning = verdict(response.status);
    if (meaning === 'sent' && data !== undefined) return { verdict: 'sent', answer: data };
    if (meaning !== 'refused') return { verdict: 'later' };
    return { verdict: 'refused', refusal: refusalOf(response.status, error) };
  } catch {
    return { verdict: 'later' };
  }
}

/** @returns undefined once all of them are kept */
async function postPhotos({
  runId,
  demo,
  photos = [],
}: Pick<QueuedEntry, 'runId' | 'demo' | 'photos'>): Promise<Exclude<Sent, { verdict: 'sent' }> | undefined> {
  for (const photo of photos) {
    const { error, response } = await api.POST('/api/runs/{id}/photos', {
      params: { path: { id: runId } },
      body: photo,
      headers: { [WORKSHOP]: demo ?? 'own' },
      signal: AbortSignal.timeout(PATIENCE_MS),
    });
    const meaning = verdict(response.status);
    if (meaning === 'later') return { verdict: 'later' };
    if (meaning === 'refused') return { verdict: 'refused', refusal: refusalOf(response.status, error) };
  }
  return undefined;
}

function refusalOf(status: number, error: unknown): Refusal {
  const { message, problem } = new ApiError(status, error as ApiError['problem']);
  return { status, text: message, issues: (problem?.issues ?? []).map(issueOf) };
}

/**
 * Sends what waits, in order, until nothing is left or the API is out of reach. One tab at a time may do this.
 * @returns the answers to what was sent, by idempotency key
 */
export async function sendAll(): Promise<ReadonlyMap<string, Schemas['LogAnswer']>> {
  const answers = new Map<string, Schemas['LogAnswer']>();
  for (let next = nextToSend(await kept()); next !== undefined; next = nextToSend(await kept())) {
    const sent = await post(next);
    if (sent.verdict === 'later') break;
    if (sent.verdict === 'refused') await replace({ ...next, refusal: sent.refusal });
    else {
      const { id, runId, entry } = next;
      answers.set(id, sent.answer);
      // Told first, so that what it did is on the screen before it leaves the list of what waits.
      announceSent({ id, runId, entry, answer: sent.answer });
      await drop(next);
    }
    await queueChanged();
  }
  return answers;
}
