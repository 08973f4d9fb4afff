import { Body, Controller, Inject, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  latestStartDocument,
  latestStartRequest,
  type LatestStartDocument,
  type LatestStartRequest,
} from '#contract';
import { minuteOf } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Leaving } from '../compute/leaving.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { valueOf } from '../problems/api-problem.js';
import { takeSnapshot } from '../use-cases/create-run.js';
import { orderInput } from '../use-cases/run-input.js';

/** Counting back from the day on which the lot must be cured. */
@ApiTags('plans')
@Controller('latest-start')
export class LatestStartController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Post()
  @Documents({
    summary:
      'The latest start of an order, from the library and beside the runs there are, that keeps the odds; no run is made',
    answer: latestStartDocument,
    problems: [422, 503],
  })
  async ofOrder(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Body({ schema: latestStartRequest }) { order, odds, seed }: LatestStartRequest,
  ): Promise<LatestStartDocument> {
    const { taught, clock } = this.services;
    const input = await taught.snapshot(workshopId, async (tx, learned) =>
      orderInput(tx, learned, workshopId, order, await takeSnapshot(tx, workshopId, order)),
    );
    const now = minuteOf(clock.now().getTime());
    const task = { input, odds, now, ...(seed !== undefined && { seed }) };
    return valueOf(await this.services.compute.run('latest-start', task, { workshopId, leaving }));
  }
}
