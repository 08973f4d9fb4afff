import { Body, Controller, Get, Inject, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { z } from 'zod';
import { storedWorkshop, workshopReplacement, type WorkshopFacts, type WorkshopView } from '#contract';
import { checkWorkshop } from '#runs';
import type { Repositories, StoredWorkshop } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { ApiProblem, invalidInput, notFound, staleVersion } from '../problems/api-problem.js';

/** The workshop's own facts: hours, room, equipment, time zone. */
@ApiTags('workshop')
@Controller('workshop')
export class WorkshopController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({ summary: 'Hours, room, equipment and time zone', answer: storedWorkshop })
  async get(@Caller() { workshopId }: CallerFacts): Promise<WorkshopView> {
    const found = await this.services.storage.workshops.get(workshopId);
    if (found === null) throw notFound('workshop');
    return shown(found);
  }

  @Put()
  @Documents({
    summary: 'Replaces them; plans change only when they are made anew, their odds are renewed',
    answer: storedWorkshop,
    problems: [409, 422],
  })
  async replace(
    @Caller() { workshopId }: CallerFacts,
    @Body({ schema: workshopReplacement }) body: z.output<typeof workshopReplacement>,
  ): Promise<WorkshopView> {
    const issues = checkWorkshop(body.facts);
    if (issues.length > 0) throw invalidInput(issues.map((i) => ({ ...i, path: ['facts', ...i.path] })));
    const changed = await this.services.storage.withWorkshopLock(workshopId, async (tx) => {
      const missing = await equipmentMissed(tx, workshopId, body.facts);
      if (missing !== undefined) {
        throw new ApiProblem(409, 'in-use', { says: 'equipment-in-use', ...missing });
      }
      return tx.workshops.update(workshopId, body.version, body.facts);
    });
    if (changed === null) throw notFound('workshop');
    if (!changed.ok) throw staleVersion(shown(changed.current));
    this.services.renewal.soon(workshopId);
    return shown(changed.value);
  }
}

/** Says which design or run still needs a piece of equipment that the new facts leave out. */
async function equipmentMissed(
  { library, runs }: Repositories,
  workshopId: string,
  facts: WorkshopFacts,
): Promise<{ readonly equipment: string; readonly user: string } | undefined> {
  const kept = new Set(facts.equipment.map(({ key }) => key));
  const designs = (await library.designs.list(workshopId)).map(({ content }) => content);
  const live = await runs.list(workshopId, { states: ['planned', 'making'] });
  for (const design of [...designs, ...live.map(({ snapshot }) => snapshot.design)]) {
    const needs = design.stages.flatMap((stage) => stage.needs);
    const missed = needs.find((need) => !kept.has(need.equipment));
    if (missed !== undefined) return { equipment: missed.equipment, user: design.title };
  }
  return undefined;
}

function shown({ id, version, facts, updatedAt }: StoredWorkshop): WorkshopView {
  return { id, version, facts, updatedAt: updatedAt.toISOString() };
}
