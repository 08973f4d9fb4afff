import { Controller, Get, Inject, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { cureCurve as cureCurveSchema, uuid, type CureCurve } from '#contract';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Leaving } from '../compute/leaving.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { valueOf } from '../problems/api-problem.js';
import { findRun } from '../use-cases/find-run.js';
import { sheetInput } from '../use-cases/run-input.js';

/** How a lot loses weight on its way to be ready. Weighings are entries of its run's bench log. */
@ApiTags('lots')
@Controller('runs/:id/cure')
export class CureController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({
    summary: 'The weighings of a lot while it cures, and the mass that they lead to expect',
    answer: cureCurveSchema,
    problems: [404, 422, 503],
  })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<CureCurve> {
    const { taught, compute } = this.services;
    const input = await taught.snapshot(workshopId, async (tx, learned) =>
      sheetInput(tx, learned, await findRun(tx, workshopId, id)),
    );
    return valueOf(await compute.run('cure', input, { workshopId, leaving }));
  }
}
