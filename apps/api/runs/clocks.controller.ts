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
import { listClockRules, runFileInput, workshopLessons, writeClocks } from '#runs';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { valueOf } from '../problems/api-problem.js';
import { readBook, sheetInput, teachingsIn } from '../use-cases/run-input.js';
import { findRun } from './find-run.js';

/** Clocks with their reasons, the rules behind them, and what the bench logs have taught. */
@ApiTags('clocks')
@Controller()
export class ClocksController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get('runs/:id/clocks')
  @Documents({
    summary: 'Every clock of a run with its reasons, filling times, what moves them, the cure by weight',
    answer: clocksDocument,
    problems: [404, 422],
  })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<ClocksDocument> {
    const run = await findRun(this.parts.storage, workshopId, id);
    const book = await readBook(this.parts.storage, workshopId);
    return valueOf(writeClocks(sheetInput(book, run)));
  }

  @Post('clocks-preview')
  @Documents({
    summary: 'Every clock of a whole run file; nothing is kept',
    answer: clocksDocument,
    problems: [422],
  })
  preview(@Body({ schema: runFile }) file: RunFile): ClocksDocument {
    return valueOf(writeClocks(valueOf(runFileInput(file))));
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
    const book = await readBook(this.parts.storage, workshopId);
    return workshopLessons(teachingsIn(book));
  }
}
