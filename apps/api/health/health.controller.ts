import { Controller, Get, Inject, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import { health, type Health } from '#contract';
import { OpenToAll } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';

/** Whether this process can serve. Answers without a key, and says nothing that a stranger may not know. */
@ApiTags('health')
@Controller('health')
export class HealthController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get()
  @OpenToAll()
  @Documents({ summary: 'State of database and queue; 503 when one is down', answer: health, open: true })
  async get(@Res({ passthrough: true }) response: Response): Promise<Health> {
    const { storage, nudges, version } = this.parts;
    const [database, queue] = await Promise.all([
      storage.ping().then(
        () => 'up' as const,
        () => 'down' as const,
      ),
      nudges.health(),
    ]);
    const well = database === 'up' && queue.queue === 'up';
    response.status(well ? 200 : 503);
    return {
      status: well ? 'ok' : 'degraded',
      database,
      queue: { state: queue.queue, backend: queue.backend },
      version,
    };
  }
}
