import { useQueries, useQuery } from '@tanstack/react-query';
import { liveRuns } from '../api/all-runs.js';
import { answered, api, type Schemas } from '../api/client.js';
import { useLogQueue } from '../offline/use-log-queue.js';
import { sittingsOf, type BenchRun, type BenchSitting } from './bench-view.js';

/** Asked again this often, so that an API that was away is noticed when it is back. */
const AGAIN_MS = 60_000;

/** All that is in hand. */
export interface Bench {
  readonly runs: readonly BenchRun[];
  readonly sittings: readonly BenchSitting[];
  /** Something has been made or is curing. */
  readonly hasPast: boolean;
  /** There is something to plan; taken to be so where it cannot be asked. */
  readonly hasDesigns: boolean;
}

/** What there is to do, over all runs that are not finished. */
export function useBench(): {
  readonly bench: Bench | undefined;
  readonly error: Error | null;
  readonly again: () => void;
} {
  const queue = useLogQueue();
  const runs = useQuery({ ...liveRuns, refetchInterval: AGAIN_MS });
  const lots = useQuery({ queryKey: ['lots'], queryFn: () => answered(api.GET('/api/lots')) });
  const designs = useQuery({ queryKey: ['designs'], queryFn: () => answered(api.GET('/api/designs')) });
  const live = runs.data ?? [];
  const plans = useQueries({
    queries: live.map(({ id }) => ({
      queryKey: ['plan', id],
      queryFn: () => answered(api.GET('/api/runs/{id}/plan', { params: { path: { id } } })),
      refetchInterval: AGAIN_MS,
    })),
  });
  const again = (): void => {
    void runs.refetch();
    for (const plan of plans) if (plan.error !== null) void plan.refetch();
  };
  const error = firstOf([runs, ...plans]);
  // Designs and lots only refine what is offered; a page without them is still of use.
  const isComplete = runs.data !== undefined && plans.every(({ data }) => data !== undefined);
  if (!isComplete || designs.isPending || lots.isPending) return { bench: undefined, error, again };
  const benchRuns = live.flatMap((run, index) => {
    const document = plans[index]?.data?.document;
    return document === undefined ? [] : [benchRun(run, document, designs.data ?? [])];
  });
  return {
    bench: {
      runs: benchRuns,
      sittings: sittingsOf(benchRuns, queue),
      hasPast: (lots.data ?? []).length > 0,
      hasDesigns: designs.data === undefined || designs.data.length > 0,
    },
    error: null,
    again,
  };
}

function firstOf(asked: readonly { readonly data: unknown; readonly error: Error | null }[]): Error | null {
  return asked.find(({ data, error }) => data === undefined && error !== null)?.error ?? null;
}

function benchRun(
  run: Schemas['StoredRun'],
  document: Schemas['PlanDocument'],
  designs: readonly Schemas['StoredPieceDesign'][],
): BenchRun {
  const design = designs.find(({ content }) => content.key === run.order.design)?.content;
  return { run, document, ...(design && { design }) };
}
