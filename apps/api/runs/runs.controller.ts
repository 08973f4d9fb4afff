import { Body, Controller, Delete, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  createdRun,
  newRun,
  runsQuery,
  storedRun,
  uuid,
  type CreatedRun,
  type NewRun,
  type RunsQuery,
  type RunView,
} from '#contract';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { newRunChange } from '../use-cases/create-run.js';
import { planOnce } from '../use-cases/plan-once.js';
import { publishNudges } from '../use-cases/publish-nudges.js';
import { findHead, shownRun } from '../use-cases/find-run.js';

/** Runs: made from an order, planned at once, given up if need be. */
@ApiTags('runs')
@Controller('runs')
export class RunsController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({
    summary: 'The latest runs, oldest first; with the first of them as `before`, the page before',
    answer: storedRun,
    list: true,
    problems: [422],
  })
  async list(
    @Caller() { workshopId }: CallerFacts,
    @Query({ schema: runsQuery }) { state, before, most }: RunsQuery,
  ): Promise<RunView[]> {
    const live = state === undefined ? undefined : state === 'live';
    return (await this.services.storage.runs.heads(workshopId, { live, before, most })).map(shownRun);
  }

  @Post()
  @Documents({
    summary: 'A new run, with its first plan. A plan that is a conflict is an answer too',
    answer: createdRun,
    status: 201,
    problems: [409, 422, 503],
    once: true,
  })
  async create(
    @Caller() { workshopId }: CallerFacts,
    @IdempotencyKey() key: string | undefined,
    @Body({ schema: newRun }) order: NewRun,
  ): Promise<CreatedRun> {
    const request = { workshopId, key, call: 'POST runs', body: order };
    return planOnce(this.services, request, newRunChange(this.services, workshopId, order));
  }

  @Get(':id')
  @Documents({ summary: 'One run', answer: storedRun, problems: [404, 422] })
  async get(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<RunView> {
    return shownRun(await findHead(this.services.storage, workshopId, id));
  }

  @Delete(':id')
  @Documents({
    summary: 'Gives a run up: its nudges are cancelled, its log stays',
    status: 204,
    problems: [404, 422],
  })
  async abandon(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<void> {
    const cancelled = await this.services.storage.withWorkshopLock(workshopId, async (tx) => {
      const run = await findHead(tx, workshopId, id);
      if (run.state === 'abandoned') return [];
      await tx.runs.update(workshopId, id, run.version, { state: 'abandoned' });
      return tx.nudges.cancelForRun(workshopId, id);
    });
    await publishNudges(this.services, { cancelled });
    this.services.renewal.soon(workshopId);
  }
}
