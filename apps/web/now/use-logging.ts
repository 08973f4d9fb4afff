import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { LogEntry } from '#contract';
import type { Schemas } from '../api/client.js';
import { confirmedEntry } from '../offline/asked-back.js';
import { discardEntry, logEntry, type LogOutcome } from '../offline/log-queue.js';
import { whenSent } from '../offline/queue-news.js';
import { serverNow } from '../api/server-time.js';

/** What was logged last and what became of it. */
export interface Logged {
  readonly runId: string;
  readonly entry: LogEntry;
  /** The odds of the run as they were; null: there was no plan, or none is known. */
  readonly oddsBefore: number | null;
  /** Absent while it is on its way. */
  readonly outcome?: LogOutcome | { readonly status: 'taken-back' } | { readonly status: 'lost' };
}

/** Logging from the bench, with the last answer and a way back. */
export interface Logging {
  readonly last: Logged | undefined;
  /** @param entry its `at` is the moment of the tap */
  readonly log: (runId: string, entry: LogEntry) => void;
  readonly undo: () => void;
  /** Sends again what was asked back, now as confirmed. */
  readonly confirm: () => void;
  readonly dismiss: () => void;
}

export function useLogging(): Logging {
  const queries = useQueryClient();
  const [last, setLast] = useState<Logged>();
  useEffect(
    () =>
      whenSent(({ id, answer }) =>
        // What waited has been sent meanwhile.
        setLast((shown) =>
          shown?.outcome?.status === 'waiting' && shown.outcome.id === id
            ? { ...shown, outcome: { status: 'sent', id, answer } }
            : shown,
        ),
      ),
    [],
  );
  const log = (runId: string, entry: LogEntry): void => {
    const before = queries.getQueryData<Schemas['PlanRevision']>(['plan', runId]);
    const logged = { runId, entry, oddsBefore: before?.document.odds?.soundByTheDay ?? null };
    const become = (outcome: NonNullable<Logged['outcome']>): void =>
      // Something else may have been logged in the meantime.
      setLast((shown) => (shown === logged ? { ...logged, outcome } : shown));
    setLast(logged);
    logEntry(runId, entry).then(become, () => become({ status: 'lost' }));
  };
  const undo = (): void => {
    const { runId, outcome } = last ?? {};
    if (runId === undefined || outcome === undefined) return;
    if (outcome.status === 'sent') log(runId, takeBack(outcome.answer.entry));
    if (outcome.status === 'waiting') {
      const logged = last;
      void discardEntry(outcome.id).then((isGone) => {
        if (isGone)
          setLast((shown) => (shown === logged ? { ...shown!, outcome: { status: 'taken-back' } } : shown));
      });
    }
  };
  const confirm = (): void => {
    const { runId, entry, outcome } = last ?? {};
    if (runId === undefined || entry === undefined || outcome?.status !== 'refused') return;
    void discardEntry(outcome.id).then(() => log(runId, confirmedEntry(entry)));
  };
  return { last, log, undo, confirm, dismiss: () => setLast(undefined) };
}

/** The entry that makes another count as never written. */
export function takeBack(logged: Pick<Schemas['LoggedEntry'], 'id'>): LogEntry {
  return { kind: 'take-back', entry: logged.id, at: instantNow() };
}

/** The present by the server's clock, as the log takes it. */
export function instantNow(): string {
  return new Date(serverNow()).toISOString();
}
