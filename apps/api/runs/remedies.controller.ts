import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  remediesDocument,
  uuid,
  whatIf,
  whatIfAnswer,
  type RemediesDocument,
  type WhatIf,
  type WhatIfAnswer,
} from '#contract';
import { suggestRemedies } from '#runs';
import { minuteOf } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { ApiProblem, valueOf } from '../problems/api-problem.js';
import { runInput } from '../use-cases/run-input.js';
import { tryOut } from '../use-cases/try-out.js';
import { findPlan, findRun } from './find-run.js';

/** What would help a run's plan, or make one possible. Nothing is changed and nothing kept. */
@ApiTags('plans')
@Controller()
export class RemediesController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get('runs/:id/remedies')
  @Documents({
    summary:
      'Up to five changes that would help the run as of now, with all that each makes better and worse',
    answer: remediesDocument,
    problems: [404, 409, 422],
  })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<RemediesDocument> {
    const { input, previous, now } = await this.standing(workshopId, id);
    return valueOf(suggestRemedies(input, { now, previous }));
  }

  @Post('runs/:id/what-if')
  @Documents({
    summary: 'The plan that a change or entries for the log would make, and what would move; nothing is kept',
    answer: whatIfAnswer,
    problems: [404, 409, 422],
  })
  async whatIf(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: whatIf }) wish: WhatIf,
  ): Promise<WhatIfAnswer> {
    const { run, input, previous, now } = await this.standing(workshopId, id);
    return tryOut(input, wish, { run: run.key, previous, now });
  }

  private async standing(workshopId: string, id: string) {
    const { storage, clock } = this.parts;
    const run = await findRun(storage, workshopId, id);
    if (run.state === 'abandoned') throw new ApiProblem(409, 'run-abandoned', 'The run was given up');
    const input = await runInput(storage, run);
    const { document: previous } = await findPlan(storage, workshopId, id);
    return { run, input, previous, now: minuteOf(clock.now().getTime()) };
  }
}
