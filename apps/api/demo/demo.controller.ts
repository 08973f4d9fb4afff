import { Controller, Delete, Inject, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { demoWorkshop, type DemoWorkshopView } from '#contract';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { loadDemoWorkshop } from './load-demo.js';

/** The demo: an invented workshop beside the caller's own, which it never touches. */
@ApiTags('demo')
@Controller('demo')
export class DemoController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Post()
  @Documents({
    summary: 'Makes the demo workshop, if it is not there; it is asked for by `Benchtide-Workshop`',
    answer: demoWorkshop,
    status: 201,
    problems: [403],
  })
  async make(@Caller() { ownWorkshopId }: CallerFacts): Promise<DemoWorkshopView> {
    const { storage, clock, compute } = this.services;
    const found =
      (await storage.workshops.demoOf(ownWorkshopId)) ??
      // Two browsers may ask at once; the later one finds what the first has made.
      (await storage.startingAlone(
        async (tx) =>
          (await tx.workshops.demoOf(ownWorkshopId)) ??
          loadDemoWorkshop(tx, clock.now(), { demoOf: ownWorkshopId, compute }),
      ));
    return { id: found.id, title: found.facts.title };
  }

  @Delete()
  @Documents({
    summary: 'Throws the demo away with everything in it; nothing happens where there is none',
    status: 204,
    problems: [403],
  })
  async remove(@Caller() { ownWorkshopId }: CallerFacts): Promise<void> {
    await this.services.storage.workshops.removeDemoOf(ownWorkshopId);
  }
}
