import type { InboxEntry } from '#contract';

/** What is older than this when it arrives is no news: the maker was told, or has seen the page since. */
const NEWS_MS = 15 * 60_000;
/** More at once would cover the page. */
const MOST = 3;

/**
 * The nudges to show once another has come: the newest last, none twice, none that is old.
 * @param now by the server's clock, in milliseconds since 1970
 */
export function withNudge(shown: readonly InboxEntry[], entry: InboxEntry, now: number): InboxEntry[] {
  const delivered = Date.parse(entry.deliveredAt ?? entry.dueAt);
  if (now - delivered > NEWS_MS || shown.some(({ id }) => id === entry.id)) return [...shown];
  // What is said about a stage replaces what was said about it before.
  const others = shown.filter(
    ({ runId, stage, attempt }) =>
      runId !== entry.runId || stage !== entry.stage || attempt !== entry.attempt,
  );
  return [...others, entry].slice(-MOST);
}
