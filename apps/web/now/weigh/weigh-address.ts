import { useCallback } from 'react';
import { useSearchParams } from 'react-router';
import type { BenchSitting, BenchStage } from '../bench-view.js';

/** In the address, so that a phone that slept or a page that was loaded anew is at the scales again. */
const WEIGH = 'weigh';

/** The part of an address that opens what is weighed for a stage. */
export function weighSearch(runId: string, stage: BenchStage['stage']): string {
  return new URLSearchParams({ [WEIGH]: placeOf(runId, stage) }).toString();
}

/** The stage that is weighed for now, by the address, and the way back from the scales. */
export function useWeighedStage(
  sittings: readonly BenchSitting[],
): readonly [BenchStage | undefined, () => void] {
  const [search, setSearch] = useSearchParams();
  const place = search.get(WEIGH);
  const found = sittings
    .flatMap(({ stages }) => stages)
    .find(({ runId, stage, state }) => state === 'open' && placeOf(runId, stage) === place);
  const stop = useCallback(
    () =>
      setSearch(
        (before) => {
          before.delete(WEIGH);
          return before;
        },
        { replace: true },
      ),
    [setSearch],
  );
  return [found, stop];
}

function placeOf(runId: string, { key, attempt }: BenchStage['stage']): string {
  return `${runId}.${key}.${String(attempt)}`;
}
