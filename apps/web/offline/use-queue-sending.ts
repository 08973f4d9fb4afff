import { useQueryClient, type QueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { isConnectionLost, whenConnectionChanges } from '../api/connection.js';
import { sendWaiting } from './log-queue.js';
import { whenSent, type SentEntry } from './queue-news.js';
import { useLogQueue } from './use-log-queue.js';

const AGAIN_MS = 30_000;

/** Sends what waits at the start, when the connection comes back and every half minute, and brings pages up to date. */
export function useQueueSending(): void {
  const queries = useQueryClient();
  const isWaiting = useLogQueue().some(({ refusal }) => refusal === undefined);
  useEffect(() => {
    void sendWaiting();
    const send = (): void => void sendWaiting();
    addEventListener('online', send);
    return () => removeEventListener('online', send);
  }, []);
  useEffect(() => {
    if (!isWaiting) return;
    const timer = setInterval(() => void sendWaiting(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [isWaiting]);
  useEffect(() => whenSent((sent) => void renew(queries, sent)), [queries]);
  useEffect(() => {
    let wasLost = isConnectionLost();
    return whenConnectionChanges(() => {
      const isLost = isConnectionLost();
      if (wasLost && !isLost) {
        // What was shown meanwhile were copies, or nothing.
        void queries.invalidateQueries();
        void sendWaiting();
      }
      wasLost = isLost;
    });
  }, [queries]);
}

/** What an entry may change, besides the plan, which the answer brings. */
const touched = [
  'runs',
  'run',
  'plans',
  'tide',
  'odds',
  'amounts',
  'clocks',
  'log',
  'lots',
  'cure',
  'lessons',
  'nudges',
];

async function renew(queries: QueryClient, { runId, entry, answer }: SentEntry): Promise<void> {
  if (entry.kind === 'note') return queries.invalidateQueries({ queryKey: ['log', runId] });
  // A plan that is on its way was asked for before.
  await queries.cancelQueries({ queryKey: ['plan', runId] });
  queries.setQueryData(['plan', runId], answer.plan);
  await queries.invalidateQueries({
    predicate: ({ queryKey: [kind, id] }) =>
      typeof kind === 'string' && touched.includes(kind) && (id === undefined || id === runId),
  });
}
