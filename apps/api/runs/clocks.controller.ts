import { Body, Controller, Get, Inject, Param, Post } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  clockRules,
  clocksDocument,
  lessonsDocument,
  runFile,
  uuid,
  type ClockRules,
  type ClocksDocument,
  type LessonsDocument,
  type RunFile,
} from '#contract';
import { listClockRules, runFileInput } from '#runs';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Leaving } from '../compute/leaving.js';
import { refuseTooLarge } from '../compute/limits.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { valueOf } from '../problems/api-problem.js';
import { sheetInput } from '../use-cases/run-input.js';
import { findRun } from '../use-cases/find-run.js';

/** Clocks with their reasons, the rules behind them, and what the bench logs have taught. */
@ApiTags('clocks')
@Controller()
export class ClocksController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('runs/:id/clocks')
  @Documents({
    summary: 'Every clock of a run with its reasons, filling times, what moves them, the cure by weight',
    answer: clocksDocument,
    problems: [404, 422, 503],
  })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<ClocksDocument> {
    const { taught, compute } = this.services;
    const input = await taught.snapshot(workshopId, async (tx, learned) => ({
      ...(await sheetInput(tx, learned, await findRun(tx, workshopId, id))),
      teachings: await tx.teachings.list(workshopId, { butRun: id }),
    }));
    return valueOf(await compute.run('clocks', input, { workshopId, leaving }));
  }

  @Post('clocks-preview')
  @Documents({
    summary: 'Every clock of a whole run file; nothing is kept',
    answer: clocksDocument,
    problems: [422, 503],
  })
  async preview(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Body({ schema: runFile }) file: RunFile,
  ): Promise<ClocksDocument> {
    const input = valueOf(runFileInput(file));
    refuseTooLarge(input);
    return valueOf(await this.services.compute.run('clocks-preview', input, { workshopId, leaving }));
  }

  @Get('clock-rules')
  @Documents({ summary: 'Every state and rule of the clocks, with its evidence', answer: clockRules })
  rules(): ClockRules {
    return listClockRules();
  }

  @Get('lessons')
  @Documents({
    summary: 'What the logs of all runs have taught, with the entries each lesson rests on',
    answer: lessonsDocument,
  })
  async lessons(@Caller() { workshopId }: CallerFacts): Promise<LessonsDocument> {
    const { taught, compute } = this.services;
    const teachings = await taught.snapshot(workshopId, (tx) =>
      tx.teachings.list(workshopId, { butRun: null }),
    );
    return compute.run('lessons', teachings, { workshopId });
  }
}
