import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { answered, api, type Schemas } from '../../api/client.js';
import type { Value } from '../../form/values.js';
import { previewFile, type Purpose, type Surroundings } from './preview-file.js';

/** Amounts and clocks of a recipe as it stands in the form. */
export interface Preview {
  readonly amounts: Schemas['PartAmounts'] | undefined;
  readonly clocks: Schemas['ClocksDocument']['runs'][number]['parts'][number] | undefined;
  /** What is shown is of an earlier state of the form: the present one cannot be reckoned with. */
  readonly isOld: boolean;
  readonly error: Error | null;
}

/** Long enough for a figure to be typed, short enough to be felt as at once. */
const PAUSE_MS = 300;

export function usePreview(recipe: Value, purpose: Purpose | null, around: Surroundings): Preview {
  const file = useSettled(purpose === null ? null : JSON.stringify(previewFile(recipe, purpose, around)));
  const body = JSON.parse(file ?? 'null') as Schemas['RunFileInput'];
  const shared = {
    enabled: file !== null,
    placeholderData: keepPreviousData,
    staleTime: Infinity,
    gcTime: 60_000,
  };
  const amounts = useQuery({
    queryKey: ['amounts-preview', file],
    queryFn: () => answered(api.POST('/api/amounts-preview', { body })),
    ...shared,
  });
  const clocks = useQuery({
    queryKey: ['clocks-preview', file],
    queryFn: () => answered(api.POST('/api/clocks-preview', { body })),
    ...shared,
  });
  const last = useLast(amounts.data, amounts.error === null);
  const lastClocks = useLast(clocks.data, clocks.error === null);
  return {
    amounts: last?.runs[0]?.amounts[0],
    clocks: lastClocks?.runs[0]?.parts[0],
    isOld: amounts.error !== null,
    error: amounts.error,
  };
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
