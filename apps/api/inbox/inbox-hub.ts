import type { ChangeNotice, DeliveredNudge, InboxNotice, JudgedNotice, Storage } from '#storage';

/** What was written, but where. */
export type Change = Omit<ChangeNotice, 'workshopId'>;

/** Hands deliveries to whoever has the inbox open, each once and in order. */
export interface InboxHub {
  /**
   * Sends everything after a place in the inbox, then whatever comes.
   * @param judged told the runs whose plans come to something else now; none: any may
   * @param changed told what was written; null: it may be anything
   * @returns a function that ends it
   */
  follow(
    workshopId: string,
    after: number,
    send: (nudge: DeliveredNudge) => void,
    judged?: (runIds: readonly string[]) => void,
    changed?: (change: Change | null) => void,
  ): () => void;
  /** Something was delivered to a workshop. */
  notice(notice: Pick<InboxNotice, 'workshopId'>): void;
  /** Plans of a workshop come to something else now. */
  judged(notice: JudgedNotice): void;
  /** Something was written in a workshop. */
  changed(notice: ChangeNotice): void;
  /** Something may have been missed: all read on from where they are. */
  gap(): void;
}

interface Follower {
  readonly workshopId: string;
  readOn(): void;
  judged(runIds: readonly string[]): void;
  changed(change: Change | null): void;
}

/** @param failed called when the inbox could not be read; the next notice tries again */
export function openInboxHub(storage: Storage, failed: (error: unknown) => void): InboxHub {
  const followers = new Set<Follower>();
  return {
    follow(workshopId, after, send, judged = () => undefined, changed = () => undefined) {
      let place = after;
      let ended = false;
      let reading: Promise<void> = Promise.resolve();
      const read = async (): Promise<void> => {
        if (ended) return;
        for (const nudge of await storage.nudges.inboxSince(workshopId, place)) {
          if (ended) return;
          send(nudge);
          place = nudge.sequence;
        }
      };
      const readOn = (): void => {
        reading = reading.then(read).catch(failed);
      };
      const follower: Follower = { workshopId, readOn, judged, changed };
      followers.add(follower);
      readOn();
      return () => {
        ended = true;
        followers.delete(follower);
      };
    },
    notice({ workshopId }) {
      for (const follower of followers) if (follower.workshopId === workshopId) follower.readOn();
    },
    judged({ workshopId, judged }) {
      for (const follower of followers) if (follower.workshopId === workshopId) follower.judged(judged);
    },
    changed({ workshopId, ...change }) {
      for (const follower of followers) if (follower.workshopId === workshopId) follower.changed(change);
    },
    gap() {
      for (const follower of followers) {
        follower.readOn();
        follower.judged([]);
        follower.changed(null);
      }
    },
  };
}
