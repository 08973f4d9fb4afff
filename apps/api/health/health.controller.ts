import { Controller, Get, Inject, Req, Res } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { health, type Health } from '#contract';
import { Public } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { DiskWatch } from '../problems/disk-watch.js';
import { readerOf } from '../words/reader-of.js';
import { troubles, type Trouble } from './troubles.js';

/** A database that is away without a word is away all the same. */
const LONGEST_PING_MS = 3_000;

/** Whether this process can serve. Answers without a key, and says nothing that a stranger may not know. */
@ApiTags('health')
@Controller('health')
export class HealthController {
  constructor(
    @Inject(SERVICES) private readonly services: Services,
    @Inject(DiskWatch) private readonly diskWatch: DiskWatch,
  ) {}

  @Get()
  @Public()
  @Documents({
    summary: 'State of database, queue and disk; 503 when one is in trouble',
    answer: health,
    open: true,
  })
  async get(@Req() request: Request, @Res({ passthrough: true }) response: Response): Promise<Health> {
    const { nudges, version } = this.services;
    const [database, queue, disk] = await Promise.all([
      this.database(),
      nudges.health(),
      this.diskWatch.state(),
    ]);
    const found: readonly Trouble[] = [
      ...(database === 'up' ? [] : [`database-${database}` as const]),
      ...(queue.queue === 'down' ? ['queue-down' as const] : []),
      ...(disk === 'full' ? ['disk-full' as const] : []),
    ];
    const trouble = found.map((each) => troubles[readerOf(request).language][each]);
    response.status(trouble.length === 0 ? 200 : 503);
    return {
      status: trouble.length === 0 ? 'ok' : 'degraded',
      trouble,
      database,
      queue: { state: queue.queue, backend: queue.backend },
      disk,
      version,
    };
  }

  private async database(): Promise<Health['database']> {
    const { storage, builtIn } = this.services;
    if (builtIn?.state() === 'restarting') return 'restarting';
    let timer: NodeJS.Timeout | undefined;
    const tooLong = new Promise<'down'>((resolve) => {
      timer = setTimeout(() => resolve('down'), LONGEST_PING_MS);
    });
    const answer = storage.ping().then(
      () => 'up' as const,
      () => 'down' as const,
    );
    return Promise.race([answer, tooLong]).finally(() => clearTimeout(timer));
  }
}
