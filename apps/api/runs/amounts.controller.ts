import { Body, Controller, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  amountsDocument,
  gatherList,
  gatherQuery,
  runFile,
  runOrder,
  uuid,
  type AmountsDocument,
  type GatherList,
  type GatherQuery,
  type RunFile,
  type RunOrder,
} from '#contract';
import { runFileInput, stockOf, withStock, type RunsInput } from '#runs';
import type { Repositories, StoredRun } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Leaving } from '../compute/leaving.js';
import { refuseTooLarge } from '../compute/limits.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { valueOf } from '../problems/api-problem.js';
import { takeSnapshot } from '../use-cases/create-run.js';
import { orderSheetInput, readSurroundings, sheetInput } from '../use-cases/run-input.js';
import { findRun } from '../use-cases/find-run.js';

/** Batch sheets: what to weigh, how surely it reaches, what to gather and buy, what a piece costs. */
@ApiTags('amounts')
@Controller()
export class AmountsController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('runs/:id/amounts')
  @Documents({ summary: 'The batch sheet of a run', answer: amountsDocument, problems: [404, 422, 503] })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<AmountsDocument> {
    const { taught, compute } = this.services;
    const stocked = await this.stocked(workshopId, leaving);
    const input = await taught.snapshot(workshopId, async (tx, learned) =>
      sheetInput(tx, learned, await findRun(tx, workshopId, id)),
    );
    return valueOf(await compute.run('amounts', stocked(input), { workshopId, leaving }));
  }

  @Post('amounts')
  @Documents({
    summary: 'The batch sheet of an order, from the library; no run is made',
    answer: amountsDocument,
    problems: [422, 503],
  })
  async ofOrder(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Body({ schema: runOrder }) order: RunOrder,
  ): Promise<AmountsDocument> {
    const { taught, compute } = this.services;
    const stocked = await this.stocked(workshopId, leaving);
    const input = await taught.snapshot(workshopId, async (tx, learned) =>
      orderSheetInput(tx, learned, workshopId, order, await takeSnapshot(tx, workshopId, order)),
    );
    return valueOf(await compute.run('amounts', stocked(input), { workshopId, leaving }));
  }

  @Get('gather')
  @Documents({
    summary: 'What several runs need together, what is on hand, what to buy',
    answer: gatherList,
    problems: [404, 422, 503],
  })
  async gather(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Query({ schema: gatherQuery }) query: GatherQuery,
  ): Promise<GatherList> {
    const { taught, compute } = this.services;
    const stocked = await this.stocked(workshopId, leaving);
    const [first, ...rest] = await taught.snapshot(workshopId, async (tx, learned) => {
      const around = await readSurroundings(tx, workshopId);
      const inputs: RunsInput[] = [];
      for (const run of await runsToGather(tx, workshopId, query))
        inputs.push(await sheetInput(tx, learned, run, around));
      return inputs;
    });
    if (first === undefined) return { runs: [], lines: [], unused: [] };
    return valueOf(await compute.run('gather', [stocked(first), ...rest], { workshopId, leaving }));
  }

  @Post('amounts-preview')
  @Documents({
    summary: 'The batch sheet of a whole run file; nothing is kept',
    answer: amountsDocument,
    problems: [422, 503],
  })
  async preview(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Body({ schema: runFile }) file: RunFile,
  ): Promise<AmountsDocument> {
    const input = valueOf(runFileInput(file));
    refuseTooLarge(input);
    return valueOf(await this.services.compute.run('amounts-preview', input, { workshopId, leaving }));
  }

  /** Puts what is in stock now into the input of a sheet. */
  private async stocked(workshopId: string, leaving: AbortSignal): Promise<(input: RunsInput) => RunsInput> {
    const stock = stockOf(await this.services.stockUse.input(workshopId, leaving));
    return (input) => ({ ...input, workshop: withStock(input.workshop, stock) });
  }
}

/** Those that are asked for, or else all that have not begun. */
async function runsToGather(
  tx: Repositories,
  workshopId: string,
  { runs }: GatherQuery,
): Promise<StoredRun[]> {
  if (runs === undefined) return tx.runs.list(workshopId, { states: ['planned'] });
  const found: StoredRun[] = [];
  for (const id of new Set(runs.split(','))) found.push(await findRun(tx, workshopId, id));
  return found;
}
