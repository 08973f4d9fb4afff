import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  changeRequest,
  planRevision,
  remediesDocument,
  uuid,
  whatIf,
  whatIfAnswer,
  type ChangeRequest,
  type PlanView,
  type RemediesDocument,
  type WhatIf,
  type WhatIfAnswer,
} from '#contract';
import { minuteOf } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Leaving } from '../compute/leaving.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { valueOf } from '../problems/api-problem.js';
import { remedyApplied } from '../use-cases/apply-remedy.js';
import { planOnce } from '../use-cases/plan-once.js';
import { runInput } from '../use-cases/run-input.js';
import { findPlan, findRunToPlan } from '../use-cases/find-run.js';

/** What would help a run's plan, or make one possible: told, tried without keeping anything, and carried out. */
@ApiTags('plans')
@Controller()
export class RemediesController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('runs/:id/remedies')
  @Documents({
    summary:
      'Up to five changes that would help the run as of now, with all that each makes better and worse',
    answer: remediesDocument,
    problems: [404, 409, 422, 503],
  })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<RemediesDocument> {
    const { input, previous, now } = await this.standing(workshopId, id);
    const asker = { workshopId, leaving };
    return valueOf(await this.services.compute.run('remedies', { input, previous, now }, asker));
  }

  @Post('runs/:id/what-if')
  @Documents({
    summary: 'The plan that a change or entries for the log would make, and what would move; nothing is kept',
    answer: whatIfAnswer,
    problems: [404, 409, 422, 503],
  })
  async whatIf(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: whatIf }) wish: WhatIf,
  ): Promise<WhatIfAnswer> {
    const { run, ...standing } = await this.standing(workshopId, id);
    const task = { ...standing, run: run.key, wish };
    return valueOf(await this.services.compute.run('what-if', task, { workshopId, leaving }));
  }

  @Post('runs/:id/change')
  @Documents({
    summary: 'Carries a remedy’s change out, in run, hours, moulds or log, and plans the run afresh',
    answer: planRevision,
    status: 201,
    problems: [404, 409, 422, 503],
    once: true,
  })
  async change(
    @Caller() { workshopId }: CallerFacts,
    @IdempotencyKey() key: string | undefined,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: changeRequest }) body: ChangeRequest,
  ): Promise<PlanView> {
    const request = { workshopId, key, call: `POST runs/${id}/change`, body };
    return planOnce(this.services, request, remedyApplied(this.services, workshopId, id, body.change));
  }

  /** A run as it is at one moment. */
  private async standing(workshopId: string, id: string) {
    const { taught, clock } = this.services;
    return taught.snapshot(workshopId, async (tx, learned) => {
      const run = await findRunToPlan(tx, workshopId, id);
      const input = await runInput(tx, learned, run);
      const { document: previous } = await findPlan(tx, workshopId, id);
      return { run, input, previous, now: minuteOf(clock.now().getTime()) };
    });
  }
}
