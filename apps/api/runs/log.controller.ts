import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  logAnswer,
  logEntry as logEntrySchema,
  loggedEntry,
  uuid,
  type LogAnswer,
  type LogEntry,
  type LoggedView,
} from '#contract';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { entryChange, shownEntry } from '../use-cases/log-entry.js';
import { planOnce } from '../use-cases/plan-once.js';
import { findHead } from '../use-cases/find-run.js';

/** The bench log of a run: it only grows, and each entry makes a new plan. */
@ApiTags('log')
@Controller('runs/:id/log')
export class LogController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({
    summary: 'What was logged, in that order',
    answer: loggedEntry,
    list: true,
    problems: [404, 422],
  })
  async list(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<LoggedView[]> {
    await findHead(this.services.storage, workshopId, id);
    return (await this.services.storage.log.list(workshopId, { runId: id })).map(shownEntry);
  }

  @Post()
  @Documents({
    summary: 'Logs done, not yet or a mishap, plans the rest anew, and says what moved and why',
    answer: logAnswer,
    status: 201,
    problems: [404, 409, 422, 503],
    once: true,
  })
  async append(
    @Caller() { workshopId }: CallerFacts,
    @IdempotencyKey() key: string | undefined,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: logEntrySchema }) entry: LogEntry,
  ): Promise<LogAnswer> {
    const request = { workshopId, key, call: `POST runs/${id}/log`, body: entry };
    return planOnce(this.services, request, entryChange(this.services, workshopId, id, entry));
  }
}
