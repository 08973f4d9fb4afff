import {
  useMutation,
  useQuery,
  useQueryClient,
  type QueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from '@tanstack/react-query';
import { useEffect, useRef } from 'react';
import { isConnectionLost, whenConnectionChanges } from '../api/connection.js';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { serverNow } from '../api/server-time.js';
import {
  keepLine,
  useWaitingLines,
  whenLinesSettled,
  writeLine,
  writeWaitingLines,
  type StockEntry,
} from './stock-outbox.js';

export type StockLine = Schemas['StockLine'];
export type Leftover = Schemas['KeptLeftover'];
export type Unit = StockLine['unit'];

/** Runs on other devices use it up, too: what was seen a moment ago is asked for again. */
const always = { staleTime: 0, refetchOnMount: 'always' } as const;

/** How much there is of everything. */
export function useStock(): UseQueryResult<Schemas['StockDocument']> {
  return useQuery({ queryKey: ['stock'], queryFn: () => answered(api.GET('/api/stock')), ...always });
}

/** What changed the stock of one material, the latest first. */
export function useMoves(material: string, unit: Unit): UseQueryResult<Schemas['StockMoves']> {
  return useQuery({
    queryKey: ['stock', unit, material],
    queryFn: () => answered(api.GET('/api/stock/moves', { params: { query: { material, unit } } })),
    ...always,
  });
}

/** An entry without the moment, which is now. */
export type EntryNow = StockEntry extends infer E ? (E extends unknown ? Omit<E, 'at'> : never) : never;

/** What became of a line: it is in the ledger, or it waits on this device until Benchtide can be reached. */
export type Written = 'written' | 'waiting';

/**
 * Writes a line into the ledger. Until it is written, the same entry again is the same line: a lost answer makes no second
 * one. Out of reach it is kept on this device, and written later with the time at which it was entered.
 */
export function useWriteStock(): UseMutationResult<Written, Error, EntryNow> {
  const queries = useQueryClient();
  const line = useRef<{ readonly text: string; readonly id: string; readonly at: string } | null>(null);
  return useMutation({
    mutationFn: async (entry: EntryNow): Promise<Written> => {
      const text = JSON.stringify(entry);
      if (line.current?.text !== text) {
        line.current = { text, id: newId(), at: new Date(serverNow()).toISOString() };
      }
      const { id, at } = line.current;
      const kept = { id, entry: { ...entry, at } };
      try {
        await writeLine(kept);
        return 'written';
      } catch (error) {
        if (error instanceof ApiError || !isWhole(entry)) throw error;
        keepLine(kept);
        return 'waiting';
      }
    },
    onSuccess: async () => {
      line.current = null;
      await renewStock(queries);
    },
  });
}

/** Writes what waits on this device when the page is opened, and whenever Benchtide is reached again. */
export function useWritingWaitingLines(): void {
  const queries = useQueryClient();
  const isWaiting = useWaitingLines().some(({ refusal }) => refusal === undefined);
  useEffect(() => whenLinesSettled(() => void renewStock(queries)), [queries]);
  useEffect(() => {
    if (!isWaiting) return;
    const send = (): void => void writeWaitingLines();
    send();
    const timer = setInterval(send, AGAIN_MS);
    addEventListener('online', send);
    const end = whenConnectionChanges(() => {
      if (!isConnectionLost()) send();
    });
    return () => {
      clearInterval(timer);
      removeEventListener('online', send);
      end();
    };
  }, [isWaiting]);
}

const AGAIN_MS = 30_000;

/** Whether nothing is missing that the API would ask for: while it is out of reach nobody else can tell. */
function isWhole(entry: EntryNow): boolean {
  const told: Readonly<Record<string, unknown>> = entry;
  return (
    ['amount', 'massG'].every((name) => !(name in told) || Number.isFinite(told[name])) &&
    ['title', 'material', 'form'].every((name) => !(name in told) || isText(told[name])) &&
    (!('unit' in told) || isText(told.material))
  );
}

function isText(value: unknown): boolean {
  return typeof value === 'string' && value !== '';
}

async function renewStock(queries: QueryClient): Promise<void> {
  await Promise.all(['stock', 'amounts'].map((name) => queries.invalidateQueries({ queryKey: [name] })));
}

/** Changes the facts of the workshop that are stored at the moment, once more where another device was quicker. */
export function useChangeFacts(): UseMutationResult<
  unknown,
  Error,
  (facts: Schemas['WorkshopFacts']) => Schemas['WorkshopFacts']
> {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: async (change: (facts: Schemas['WorkshopFacts']) => Schemas['WorkshopFacts']) => {
      const put = async (): Promise<Schemas['StoredWorkshop']> => {
        const { facts, version } = await answered(api.GET('/api/workshop'));
        return answered(api.PUT('/api/workshop', { body: { version, facts: change(facts) } }));
      };
      return put().catch((error: unknown) => {
        if (error instanceof ApiError && error.problem?.type === 'urn:benchtide:problem:stale-version')
          return put();
        throw error;
      });
    },
    onSuccess: async (saved) => {
      queries.setQueryData(['workshop'], saved);
      await renewStock(queries);
    },
  });
}
