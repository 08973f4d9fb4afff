import type { Schemas } from '../api/client.js';
import { noteReached, noteSilence } from '../api/connection.js';
import type { Change } from './changed-elsewhere.js';
import { forShown, shownDemo } from '../preferences/shown-workshop.js';

type Entry = Schemas['InboxEntry'];

const LOCK = forShown('benchtide.inbox');
/** By which tabs hand on whose plans come to something else now. */
const ODDS = forShown('benchtide.odds');
const CHANGES = forShown('benchtide.changes');
/** How far this browser has read. */
const PLACE = forShown('benchtide.inbox-place');
/** Wait before a stream that was refused is tried again; one that broke is taken up by the browser itself. */
const AGAIN_MS = 15_000;

/**
 * Follows the inbox as server-sent events. All tabs of a browser share one stream, as it allows few at once to one
 * host: the tab looked at last holds it and hands on what comes.
 * @param tell receives each delivery; `isHolder`: this tab holds the stream
 * @param judged receives the ids of runs whose plans come to something else now; none: any may
 * @param changed receives what was written, on any device; null: it may have been anything
 * @returns a function that ends it
 */
export function followInbox(
  tell: (entry: Entry, isHolder: boolean) => void,
  judged: (runIds: readonly string[]) => void,
  changed: (change: Change | null) => void,
): () => void {
  const tabs = new BroadcastChannel(LOCK);
  tabs.onmessage = ({ data }: MessageEvent<Entry>) => tell(data, false);
  const odds = new BroadcastChannel(ODDS);
  odds.onmessage = ({ data }: MessageEvent<readonly string[]>) => judged(data);
  const changes = new BroadcastChannel(CHANGES);
  changes.onmessage = ({ data }: MessageEvent<Change | null>) => changed(data);
  const leave = new AbortController();
  const hold = async (steal: boolean): Promise<void> => {
    const stream = openStream(
      (entry) => {
        tabs.postMessage(entry);
        tell(entry, true);
      },
      (runIds) => {
        odds.postMessage(runIds);
        judged(runIds);
      },
      (change) => {
        changes.postMessage(change);
        changed(change);
      },
    );
    // Browsers have no Web Locks over plain HTTP from another machine; then each tab has a stream of its own.
    if (!isSecureContext) {
      stream.start();
      leave.signal.addEventListener('abort', stream.stop);
      return;
    }
    try {
      const options = steal ? { steal } : { signal: leave.signal };
      await navigator.locks.request(LOCK, options, async () => {
        stream.start();
        await new Promise<void>((resolve) => leave.signal.addEventListener('abort', () => resolve()));
      });
      stream.stop();
    } catch {
      // Another tab has come to the front; this one takes over again when that one is closed.
      stream.stop();
      if (!leave.signal.aborted) await hold(false);
    }
  };
  const onVisible = (): void => {
    if (isSecureContext && document.visibilityState === 'visible') void hold(true);
  };
  void hold(document.visibilityState === 'visible');
  document.addEventListener('visibilitychange', onVisible);
  return () => {
    document.removeEventListener('visibilitychange', onVisible);
    leave.abort();
    tabs.close();
    odds.close();
    changes.close();
  };
}

interface Stream {
  readonly start: () => void;
  readonly stop: () => void;
}

function openStream(
  tell: (entry: Entry) => void,
  judged: (runIds: readonly string[]) => void,
  changed: (change: Change | null) => void,
): Stream {
  let source: EventSource | undefined;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const start = (): void => {
    const of = shownDemo() === null ? '' : `&workshop=${shownDemo() ?? ''}`;
    source = new EventSource(`/api/inbox/stream?after=${String(place())}${of}`);
    source.addEventListener('nudge', ({ data }: MessageEvent<string>) => {
      const entry = JSON.parse(data) as Entry;
      if (entry.sequence <= place()) return;
      localStorage.setItem(PLACE, String(entry.sequence));
      tell(entry);
    });
    source.addEventListener('odds', ({ data }: MessageEvent<string>) => {
      judged((JSON.parse(data) as { readonly runs: readonly string[] }).runs);
    });
    source.addEventListener('changed', ({ data }: MessageEvent<string>) => {
      changed(JSON.parse(data) as Change | null);
    });
    let isFirst = true;
    source.onopen = () => {
      noteReached();
      // What was told while nobody listened is not told again.
      if (!isFirst) {
        judged([]);
        changed(null);
      }
      isFirst = false;
    };
    source.onerror = () => {
      noteSilence();
      if (source?.readyState === EventSource.CLOSED) timer = setTimeout(start, AGAIN_MS);
    };
  };
  const stop = (): void => {
    clearTimeout(timer);
    source?.close();
  };
  return { start, stop };
}

function place(): number {
  return Number(localStorage.getItem(PLACE) ?? '0');
}
