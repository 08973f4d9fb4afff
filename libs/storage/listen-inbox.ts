import { setTimeout as pause } from 'node:timers/promises';
import pg from 'pg';
import { INBOX_CHANNEL } from './repositories/nudges.js';

/** A delivery into the inbox of a workshop. */
export interface InboxNotice {
  readonly workshopId: string;
  readonly nudgeId: string;
  readonly sequence: number;
}

/** Plans of a workshop come to something else than before, as they stand. */
export interface JudgedNotice {
  readonly workshopId: string;
  /** Ids of their runs. */
  readonly judged: readonly string[];
}

/** Something was written in a workshop, by any process. */
export interface ChangeNotice {
  readonly workshopId: string;
  /** Id of a run, or the stock. */
  readonly changed: string;
  /** Number of the plan that it has now. */
  readonly plan?: number;
  /** Id of the entry that its log has now. */
  readonly entry?: string;
}

type Notice = InboxNotice | JudgedNotice | ChangeNotice;

export interface InboxListener {
  close(): Promise<void>;
}

const FIRST_RETRY_MS = 200;
const LONGEST_RETRY_MS = 5_000;

/**
 * Hears of deliveries, of plans that were judged and of what was written, by any process on this database, on a connection of its own. When that breaks it connects
 * anew; what was delivered meanwhile is not told, so `onGap` is called: read on with `nudges.inboxSince`.
 * @returns once it listens
 */
export async function listenInbox(
  databaseUrl: string,
  onNotice: (notice: InboxNotice) => void,
  onGap: () => void = () => undefined,
  onJudged: (notice: JudgedNotice) => void = () => undefined,
  onChange: (notice: ChangeNotice) => void = () => undefined,
): Promise<InboxListener> {
  const hear = (notice: Notice): void => {
    if ('judged' in notice) onJudged(notice);
    else if ('changed' in notice) onChange(notice);
    else onNotice(notice);
  };
  const closing = new AbortController();
  let client = await connect(databaseUrl, hear, lost);
  let reconnecting: Promise<void> = Promise.resolve();

  function lost(): void {
    if (!closing.signal.aborted) reconnecting = reconnect();
  }
  async function reconnect(): Promise<void> {
    for (let waitMs = FIRST_RETRY_MS; ; waitMs = Math.min(2 * waitMs, LONGEST_RETRY_MS)) {
      try {
        await pause(waitMs, undefined, { signal: closing.signal });
        client = await connect(databaseUrl, hear, lost);
        return onGap();
      } catch {
        if (closing.signal.aborted) return;
      }
    }
  }
  return {
    async close() {
      closing.abort();
      await reconnecting;
      await client.end().catch(() => undefined);
    },
  };
}

async function connect(
  databaseUrl: string,
  onNotice: (notice: Notice) => void,
  onLost: () => void,
): Promise<pg.Client> {
  const client = new pg.Client({ connectionString: databaseUrl, keepAlive: true });
  client.on('error', () => undefined);
  client.on('notification', ({ payload }) => onNotice(JSON.parse(payload ?? '') as Notice));
  try {
    await client.connect();
    await client.query(`LISTEN ${INBOX_CHANNEL}`);
  } catch (error) {
    await client.end().catch(() => undefined);
    throw error;
  }
  client.once('end', onLost);
  return client;
}
