import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  LARGEST_INT4,
  numberInAddress,
  planDocument,
  planHeadSchema,
  planOdds,
  planRequest,
  planRevision,
  runFile,
  tideTable,
  uuid,
  type PlanDocument,
  type PlanHead,
  type PlanOdds,
  type PlanRequest,
  type PlanView,
  type RunFile,
  type TideTable,
} from '#contract';
import { runFileInput } from '#runs';
import { minuteOf } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Leaving } from '../compute/leaving.js';
import { refuseTooLarge } from '../compute/limits.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { notFound, valueOf } from '../problems/api-problem.js';
import { askedPlan } from '../use-cases/asked-plan.js';
import { shownPlan } from '../use-cases/make-plan.js';
import { planOnce } from '../use-cases/plan-once.js';
import { findHead, findPlan } from '../use-cases/find-run.js';

/** Plans of a run, each a revision that never changes, and plans that are not kept. */
@ApiTags('plans')
@Controller()
export class PlansController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Post('runs/:id/plan')
  @Documents({
    summary: 'Plans the run anew as of now: as little moves as can, or all of it may',
    answer: planRevision,
    status: 201,
    problems: [404, 409, 422, 503],
    once: true,
  })
  async plan(
    @Caller() { workshopId }: CallerFacts,
    @IdempotencyKey() key: string | undefined,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: planRequest }) body: PlanRequest,
  ): Promise<PlanView> {
    const request = { workshopId, key, call: `POST runs/${id}/plan`, body };
    return planOnce(this.services, request, askedPlan(this.services, workshopId, id, body));
  }

  @Get('runs/:id/plan')
  @Documents({ summary: 'The latest plan', answer: planRevision, problems: [404, 422] })
  async latest(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<PlanView> {
    const plan = await findPlan(this.services.storage, workshopId, id);
    this.services.renewal.shown(workshopId);
    return shownPlan(plan);
  }

  @Get('runs/:id/plans')
  @Documents({
    summary: 'All plans of the run, the newest first',
    answer: planHeadSchema,
    list: true,
    problems: [404, 422],
  })
  async list(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<PlanHead[]> {
    await findHead(this.services.storage, workshopId, id);
    const heads = await this.services.storage.plans.list(workshopId, id);
    return heads.map(({ number, madeAt, cause, status }) => ({
      number,
      madeAt: madeAt.toISOString(),
      cause,
      status,
    }));
  }

  @Get('runs/:id/plans/:number')
  @Documents({ summary: 'One plan', answer: planRevision, problems: [404, 422] })
  async byNumber(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
    @Param('number', { schema: numberInAddress(1, LARGEST_INT4) }) number: number,
  ): Promise<PlanView> {
    const found = await this.services.storage.plans.byNumber(workshopId, id, number);
    if (found === null) throw notFound('plan');
    return shownPlan(found);
  }

  @Get('runs/:id/tide-table')
  @Documents({
    summary: 'When each stage opens, is best, and closes, and why',
    answer: tideTable,
    problems: [404, 422],
  })
  async tideTable(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<TideTable> {
    const { number, document } = await findPlan(this.services.storage, workshopId, id);
    const stages = document.runs.flatMap((run) => run.stages);
    return { plan: number, timeZone: document.timeZone, stages };
  }

  @Get('runs/:id/odds')
  @Documents({
    summary:
      'The odds of sound pieces by the day, of sound pieces at all and of all as planned, and the weak links',
    answer: planOdds,
    problems: [404, 422],
  })
  async odds(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<PlanOdds> {
    const { number, document } = await findPlan(this.services.storage, workshopId, id);
    return { plan: number, odds: document.odds, weakLinks: document.weakLinks };
  }

  @Post('plan-preview')
  @Documents({
    summary: 'Plans a whole run file; nothing is kept',
    answer: planDocument,
    problems: [422, 503],
  })
  async preview(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Body({ schema: runFile }) file: RunFile,
  ): Promise<PlanDocument> {
    const input = valueOf(runFileInput(file));
    refuseTooLarge(input);
    const now = minuteOf(this.services.clock.now().getTime());
    return valueOf(await this.services.compute.run('plan-preview', { input, now }, { workshopId, leaving }));
  }
}
