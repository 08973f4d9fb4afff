import { Controller, Get, Inject } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { lot, type Lot } from '#contract';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';

/** Lots on the shelf: made when the last stage of a run is done, with the days they are likely to be cured. */
@ApiTags('lots')
@Controller('lots')
export class LotsController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({ summary: 'Lots by the day they are likely to be cured', answer: lot, list: true })
  async list(@Caller() { workshopId }: CallerFacts): Promise<Lot[]> {
    const lots = await this.services.storage.lots.list(workshopId);
    return lots.map(({ id, runId, title, count, madeAt, readyLow, readyLikely, readyHigh }) => ({
      ...{ id, runId, title, count, madeAt: madeAt.toISOString() },
      ready: {
        low: readyLow.toISOString(),
        likely: readyLikely.toISOString(),
        high: readyHigh.toISOString(),
      },
    }));
  }
}
