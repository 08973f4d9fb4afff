import type { DeliveredNudge, NudgeStore } from '../nudge-store.js';

/**
 * Delivers to the inbox. The claim is the delivery: the transaction that marks the row delivered also gives it its
 * place in the inbox and tells whoever listens. That is why the inbox is no `Channel`: there is no moment at which a
 * nudge is claimed but not in the inbox, so a kill cannot fall into it.
 * @returns null when there is nothing to deliver (already done, cancelled, moved, or not due)
 */
export function deliverToInbox(
  store: NudgeStore,
  id: string,
  version: number,
  now: Date,
): Promise<DeliveredNudge | null> {
  return store.claim(id, version, now);
}
