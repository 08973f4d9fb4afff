import {
  useMutation,
  useQuery,
  useQueryClient,
  type UseMutationResult,
  type UseQueryResult,
} from '@tanstack/react-query';
import { useRef } from 'react';
import { answered, api, ApiError, type Schemas } from '../api/client.js';
import { newId } from '../api/new-id.js';
import { serverNow } from '../api/server-time.js';

export type StockEntry = Schemas['StockEntryInput'];
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

/** Writes a line into the ledger. Until it is written, the same entry again is the same line: a lost answer makes no second one. */
export function useWriteStock(): UseMutationResult<unknown, Error, EntryNow> {
  const queries = useQueryClient();
  const line = useRef<{ readonly text: string; readonly id: string; readonly at: string } | null>(null);
  return useMutation({
    mutationFn: async (entry: EntryNow) => {
      const text = JSON.stringify(entry);
      if (line.current?.text !== text) {
        line.current = { text, id: newId(), at: new Date(serverNow()).toISOString() };
      }
      const { id, at } = line.current;
      const body = { id, entry: { ...entry, at } };
      return answered(api.POST('/api/stock/entries', { body }));
    },
    onSuccess: async () => {
      line.current = null;
      await Promise.all(['stock', 'amounts'].map((name) => queries.invalidateQueries({ queryKey: [name] })));
    },
  });
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
      await Promise.all(['stock', 'amounts'].map((name) => queries.invalidateQueries({ queryKey: [name] })));
    },
  });
}
