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
import { gatherForRuns, writeBatchSheet, type RunsInput } from '#runs';
import type { Result } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { invalidInput } from '../problems/api-problem.js';
import { takeSnapshot } from '../use-cases/create-run.js';
import { inputOf, runInput, weighingsOf } from '../use-cases/run-input.js';
import { findRun } from './find-run.js';

/** Batch sheets: what to weigh, how surely it reaches, what to gather and buy, what a piece costs. */
@ApiTags('amounts')
@Controller()
export class AmountsController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get('runs/:id/amounts')
  @Documents({ summary: 'The batch sheet of a run', answer: amountsDocument, problems: [404, 422] })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<AmountsDocument> {
    const run = await findRun(this.parts.storage, workshopId, id);
    return found(writeBatchSheet(await runInput(this.parts.storage, run)));
  }

  @Post('amounts')
  @Documents({
    summary: 'The batch sheet of an order, from the library; no run is made',
    answer: amountsDocument,
    problems: [422],
  })
  async ofOrder(
    @Caller() { workshopId }: CallerFacts,
    @Body({ schema: runOrder }) order: RunOrder,
  ): Promise<AmountsDocument> {
    const { storage } = this.parts;
    const workshop = await storage.workshops.get(workshopId);
    if (workshop === null) throw new Error(`workshop ${workshopId} is gone`);
    const snapshot = await takeSnapshot(storage, workshopId, order);
    const weighings = await weighingsOf(storage, workshopId, order.design);
    return found(writeBatchSheet({ ...inputOf(workshop.facts, order, snapshot, []), weighings }));
  }

  @Get('gather')
  @Documents({
    summary: 'What several runs need together, what is on hand, what to buy',
    answer: gatherList,
    problems: [404, 422],
  })
  async gather(
    @Caller() { workshopId }: CallerFacts,
    @Query({ schema: gatherQuery }) ids: GatherQuery,
  ): Promise<GatherList> {
    const { storage } = this.parts;
    const runs =
      ids === undefined
        ? await storage.runs.list(workshopId, { states: ['planned'] })
        : await Promise.all(ids.map((id) => findRun(storage, workshopId, id)));
    const inputs: RunsInput[] = [];
    for (const run of runs) inputs.push(await runInput(storage, run));
    const [first, ...rest] = inputs;
    if (first === undefined) return { runs: [], lines: [] };
    return found(gatherForRuns([first, ...rest]));
  }

  @Post('amounts-preview')
  @Documents({
    summary: 'The batch sheet of a whole run file; nothing is kept',
    answer: amountsDocument,
    problems: [422],
  })
  preview(@Body({ schema: runFile }) file: RunFile): AmountsDocument {
    return found(writeBatchSheet(file));
  }
}

function found<T>(result: Result<T>): T {
  if (!result.ok) throw invalidInput(result.issues);
  return result.value;
}
