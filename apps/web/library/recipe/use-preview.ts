import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { answered, api, ApiError, type Schemas } from '../../api/client.js';
import { listAt, type Value } from '../../form/values.js';
import { hasShares, type Share } from './shares.js';
import { previewFile, type Purpose, type LookupTables } from './preview-file.js';

/** Amounts and clocks of a recipe as it stands in the form. */
export interface Preview {
  readonly amounts: Schemas['PartAmounts'] | undefined;
  /** What is mixed for it, with the risks and cautions of the recipe. */
  readonly batch: Schemas['BatchToMix'] | undefined;
  readonly clocks: Schemas['ClocksDocument']['runs'][number]['parts'][number] | undefined;
  /** false: fats or shares are still to be filled in, so that there is nothing to reckon with. */
  readonly isBegun: boolean;
  /** What is shown is of an earlier state of the form: the present one cannot be reckoned with. */
  readonly isOld: boolean;
  readonly error: Error | null;
}

export function usePreview(recipe: Value, purpose: Purpose, around: LookupTables): Preview {
  const isBegun = hasShares(listAt(recipe, ['fats']) as unknown as readonly Share[]);
  const { amounts, clocks, error } = usePreviewOf(isBegun ? previewFile(recipe, purpose, around) : null);
  return {
    amounts: amounts?.runs[0]?.amounts[0],
    batch: amounts?.runs[0]?.batches[0],
    clocks: clocks?.runs[0]?.parts[0],
    isBegun,
    isOld: error !== null || !isBegun,
    error,
  };
}

/** Long enough for a figure to be typed, short enough to be felt as at once. */
const PAUSE_MS = 300;

/** Both documents of a run file, a moment after it has changed; what was last worked out stays while it cannot be. */
export function usePreviewOf(file: object | null): {
  readonly amounts: Schemas['AmountsDocument'] | undefined;
  readonly clocks: Schemas['ClocksDocument'] | undefined;
  readonly error: Error | null;
} {
  const text = useSettled(file === null ? null : JSON.stringify(file));
  const body = JSON.parse(text ?? 'null') as Schemas['RunFileInput'];
  const shared = {
    enabled: text !== null,
    placeholderData: keepPreviousData,
    staleTime: Infinity,
    gcTime: 60_000,
    retry: (failures: number, error: Error) =>
      !isUnready(error) && !(error instanceof ApiError) && failures < 2,
  };
  const amounts = useQuery({
    queryKey: ['amounts-preview', text],
    queryFn: async () => {
      await demandReady(body);
      return answered(api.POST('/api/amounts-preview', { body }));
    },
    ...shared,
  });
  const clocks = useQuery({
    queryKey: ['clocks-preview', text],
    queryFn: async () => {
      await demandReady(body);
      return answered(api.POST('/api/clocks-preview', { body }));
    },
    ...shared,
  });
  return {
    amounts: useLast(amounts.data, amounts.error === null),
    clocks: useLast(clocks.data, clocks.error === null),
    error: amounts.error,
  };
}

/** What is written down is not such that it can be reckoned with, yet. */
class Unready extends Error {}

/** What is half typed is not asked about. */
async function demandReady(file: unknown): Promise<void> {
  const { canBeReckoned } = await import('./can-be-reckoned.js');
  if (!canBeReckoned(file)) throw new Unready('This cannot be reckoned with.');
}

/** Whether it is what was written down that stands in the way, and nothing else. */
export function isUnready(error: Error | null): boolean {
  return error instanceof Unready || (error instanceof ApiError && error.status === 422);
}

/** What was last answered well; a refusal leaves it standing. */
function useLast<T>(data: T | undefined, isGood: boolean): T | undefined {
  const [last, setLast] = useState<T | undefined>(undefined);
  if (isGood && data !== undefined && data !== last) setLast(data);
  return last;
}

/** A value once it has not changed for a moment. */
function useSettled<T>(value: T): T {
  const [settled, setSettled] = useState(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(value), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [value]);
  return settled;
}
