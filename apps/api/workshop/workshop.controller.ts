import { Body, Controller, Get, Inject, Put } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { z } from 'zod';
import { storedWorkshop, workshopReplacement, type WorkshopView } from '#contract';
import { checkWorkshop } from '#runs';
import type { StoredWorkshop } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { invalidInput, notFound, staleVersion } from '../problems/api-problem.js';

/** The workshop's own facts: hours, room, equipment, time zone. */
@ApiTags('workshop')
@Controller('workshop')
export class WorkshopController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get()
  @Documents({ summary: 'Hours, room, equipment and time zone', answer: storedWorkshop })
  async get(@Caller() { workshopId }: CallerFacts): Promise<WorkshopView> {
    const found = await this.parts.storage.workshops.get(workshopId);
    if (found === null) throw notFound('workshop');
    return shown(found);
  }

  @Put()
  @Documents({
    summary: 'Replaces them; plans change only when they are made anew',
    answer: storedWorkshop,
    problems: [409, 422],
  })
  async replace(
    @Caller() { workshopId }: CallerFacts,
    @Body({ schema: workshopReplacement }) body: z.output<typeof workshopReplacement>,
  ): Promise<WorkshopView> {
    const issues = checkWorkshop(body.facts);
    if (issues.length > 0) throw invalidInput(issues.map((i) => ({ ...i, path: ['facts', ...i.path] })));
    const changed = await this.parts.storage.withWorkshopLock(workshopId, (tx) =>
      tx.workshops.update(workshopId, body.version, body.facts),
    );
    if (changed === null) throw notFound('workshop');
    if (!changed.ok) throw staleVersion(shown(changed.current));
    return shown(changed.value);
  }
}

function shown({ id, version, facts, updatedAt }: StoredWorkshop): WorkshopView {
  return { id, version, facts, updatedAt: updatedAt.toISOString() };
}
