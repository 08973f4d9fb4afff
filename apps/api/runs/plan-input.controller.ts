import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { planInput, uuid, type PlanInput } from '#contract';
import { writePlanInput, type RunsInput } from '#runs';
import { minuteOf } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { libraryInput, runInput } from '../use-cases/run-input.js';
import { findRun } from '../use-cases/find-run.js';

/** What plans are made from, for those who try things out where they are. */
@ApiTags('plans')
@Controller()
export class PlanInputController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('plan-input')
  @Documents({
    summary: 'What the plan of any new run is made from: library, hours and the other runs',
    answer: planInput,
  })
  async library(@Caller() { workshopId }: CallerFacts): Promise<PlanInput> {
    return this.written(
      await this.services.taught.snapshot(workshopId, (tx, learned) => libraryInput(tx, learned, workshopId)),
    );
  }

  @Get('runs/:id/plan-input')
  @Documents({
    summary: 'What the next plan of the run is made from, besides the plan before',
    answer: planInput,
    problems: [404, 422],
  })
  async run(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<PlanInput> {
    const input = await this.services.taught.snapshot(workshopId, async (tx, learned) =>
      runInput(tx, learned, await findRun(tx, workshopId, id)),
    );
    return this.written(input);
  }

  private written(input: RunsInput): PlanInput {
    return writePlanInput(input, minuteOf(this.services.clock.now().getTime()));
  }
}
