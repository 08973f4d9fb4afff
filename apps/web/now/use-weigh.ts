import { useQueries } from '@tanstack/react-query';
import { sheetCards } from '../run/sheet-cards.js';
import { weighByStage, type SheetWeigh } from '../run/sheet-sittings.js';
import { sheetQuery } from '../run/use-sheet.js';
import type { BenchRun, BenchStage } from './bench-view.js';
import { planOf } from './sitting-facts.js';

/** What is weighed for a stage: nothing, or some or all of what one or more batches need. */
export type WeighFor = (bench: Pick<BenchStage, 'runId' | 'stage'>) => readonly SheetWeigh[];

/**
 * What the stages of runs are weighed from: the figures of their batch sheets. Where those cannot be had, the figures of the
 * plan, which is here already.
 */
export function useWeigh(runs: readonly BenchRun[]): WeighFor {
  const sheets = useQueries({ queries: runs.map(({ run }) => sheetQuery(run.id)) });
  const byRun = new Map(
    runs.flatMap((bench, i) => {
      const plan = planOf(bench);
      if (plan === undefined) return [];
      const { amounts, batches = [] } = sheets[i]?.data?.runs[0] ?? plan;
      return [[bench.run.id, weighByStage(plan.stages, sheetCards(amounts, batches))] as const];
    }),
  );
  return ({ runId, stage }) => byRun.get(runId)?.get(stage) ?? [];
}
