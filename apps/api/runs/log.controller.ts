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
import type { LoggedEntry, SavedPlan } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { createOnce } from '../use-cases/create-once.js';
import { logEntry } from '../use-cases/log-entry.js';
import { shownPlan } from '../use-cases/make-plan.js';
import { queueAfterCommit } from '../use-cases/queue-after-commit.js';
import { findRun } from './find-run.js';

/** The bench log of a run: it only grows, and each entry makes a new plan. */
@ApiTags('log')
@Controller('runs/:id/log')
export class LogController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

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
    await findRun(this.parts.storage, workshopId, id);
    return (await this.parts.storage.log.list(workshopId, { runId: id })).map(shown);
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
    let stored: SavedPlan | undefined;
    const request = { workshopId, key, call: `POST runs/${id}/log`, body: entry };
    const answer = await createOnce(this.parts.storage, request, async (tx) => {
      const run = await findRun(tx, workshopId, id);
      const { logged, saved, why } = await logEntry(tx, run, entry, this.parts.clock.now());
      stored = saved;
      return { entry: shown(logged), why, plan: shownPlan(saved.revision) };
    });
    await queueAfterCommit(this.parts, stored);
    return answer;
  }
}

function shown({ id, sequence, at, loggedAt, entry }: LoggedEntry): LoggedView {
  return { id, sequence, at: at.toISOString(), loggedAt: loggedAt.toISOString(), entry };
}
