import type { RunsInput, StockInput, UsedMaterial } from '#runs';
import type { Repositories } from '#storage';
import { notFound } from '../problems/api-problem.js';
import type { Compute } from '../compute/compute.js';
import { LatestUsed } from './latest-used.js';
import { readSurroundings, sheetInput } from './run-input.js';
import type { LearnedBut, Taught } from './taught.js';

/** Of so many runs, what they have used is at hand; each is some 5 kB. */
const AT_HAND = 2000;

/** Runs that are worked out in one step. */
const STEP = 20;

/** What a run has used up by its log; null where its amounts cannot be worked out any more. */
type RunUse = readonly UsedMaterial[] | null;

/**
 * What the runs of a workshop have used up. It follows from their logs and is stored nowhere; a run that logged nothing new
 * is not worked out again.
 */
export class StockUse {
  private readonly uses = new LatestUsed<RunUse>(AT_HAND);

  constructor(
    private readonly taught: Taught,
    private readonly compute: Compute,
  ) {}

  /** All that the stock follows from, as of one moment. @throws ApiProblem 404 without such a workshop */
  async input(workshopId: string, leaving: AbortSignal): Promise<StockInput> {
    const worked = new Map<string, RunUse>();
    for (;;) {
      const { stock, missing } = await this.taught.snapshot(workshopId, async (tx, learned) =>
        this.read(tx, learned, workshopId, worked),
      );
      if (missing.length === 0) return stock;
      const inputs = missing.map(({ input }) => input);
      const results = await this.compute.run('used', inputs, { workshopId, leaving });
      missing.forEach(({ name }, i) => {
        const result = results[i];
        const use = result?.ok === true ? result.value : null;
        worked.set(name, use);
        this.uses.put(name, use);
      });
    }
  }

  private async read(
    tx: Repositories,
    learned: LearnedBut,
    workshopId: string,
    worked: ReadonlyMap<string, RunUse>,
  ): Promise<{ stock: StockInput; missing: { name: string; input: RunsInput }[] }> {
    const workshop = await tx.workshops.get(workshopId);
    if (workshop === null) throw notFound('workshop');
    const around = await readSurroundings(tx, workshopId);
    const uses: UsedMaterial[] = [];
    const unsized: string[] = [];
    const missing: { name: string; input: RunsInput }[] = [];
    for (const { runId, sequence } of await tx.teachings.standing(workshopId)) {
      const name = `${runId} ${String(sequence)}`;
      const use = worked.get(name) ?? this.uses.peek(name);
      if (use !== undefined && use !== null) uses.push(...use);
      else if (use === null || worked.has(name)) {
        unsized.push((await tx.runs.head(workshopId, runId))?.order.title ?? runId);
      } else if (missing.length < STEP) {
        const run = await tx.runs.get(workshopId, runId);
        if (run !== null) missing.push({ name, input: await sheetInput(tx, learned, run, around) });
      }
    }
    const ledger = (await tx.stock.list(workshopId)).map(({ id, entry }) => ({ id, entry }));
    const openedAt = workshop.createdAt.toISOString();
    return { stock: { workshop: workshop.facts, ledger, uses, openedAt, unsized }, missing };
  }
}
