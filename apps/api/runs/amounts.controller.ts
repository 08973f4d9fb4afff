import { Body, Controller, Get, Inject, Param, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  amountsDocument,
  gatherList,
  gatherQuery,
  runFile,
  runOrder,
  uuid,
  type AmountsDocument,
  type GatherList,
  type GatherQuery,
  type RunFile,
  type RunOrder,
} from '#contract';
import { gatherForRuns, runFileInput, writeBatchSheet } from '#runs';
import type { StoredRun } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { PARTS, type Parts } from '../parts.js';
import { notFound, valueOf } from '../problems/api-problem.js';
import { takeSnapshot } from '../use-cases/create-run.js';
import { inputOf, learnedIn, readBook, sheetInput, type WorkshopBook } from '../use-cases/run-input.js';
import { findRun } from './find-run.js';

/** Batch sheets: what to weigh, how surely it reaches, what to gather and buy, what a piece costs. */
@ApiTags('amounts')
@Controller()
export class AmountsController {
  constructor(@Inject(PARTS) private readonly parts: Parts) {}

  @Get('runs/:id/amounts')
  @Documents({ summary: 'The batch sheet of a run', answer: amountsDocument, problems: [404, 422] })
  async ofRun(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<AmountsDocument> {
    const run = await findRun(this.parts.storage, workshopId, id);
    const book = await readBook(this.parts.storage, workshopId);
    return valueOf(writeBatchSheet(sheetInput(book, run)));
  }

  @Post('amounts')
  @Documents({
    summary: 'The batch sheet of an order, from the library; no run is made',
    answer: amountsDocument,
    problems: [422],
  })
  async ofOrder(
    @Caller() { workshopId }: CallerFacts,
    @Body({ schema: runOrder }) order: RunOrder,
  ): Promise<AmountsDocument> {
    const { storage } = this.parts;
    const snapshot = await takeSnapshot(storage, workshopId, order);
    const book = await readBook(storage, workshopId);
    return valueOf(writeBatchSheet({ ...inputOf(book, order, snapshot, []), ...learnedIn(book) }));
  }

  @Get('gather')
  @Documents({
    summary: 'What several runs need together, what is on hand, what to buy',
    answer: gatherList,
    problems: [404, 422],
  })
  async gather(
    @Caller() { workshopId }: CallerFacts,
    @Query({ schema: gatherQuery }) query: GatherQuery,
  ): Promise<GatherList> {
    const book = await readBook(this.parts.storage, workshopId);
    const ids = query.runs?.split(',');
    const runs =
      ids === undefined ? book.runs.filter(({ state }) => state === 'planned') : runsWith(ids, book);
    const [first, ...rest] = runs.map((run) => sheetInput(book, run));
    if (first === undefined) return { runs: [], lines: [], unused: [] };
    return valueOf(gatherForRuns([first, ...rest]));
  }

  @Post('amounts-preview')
  @Documents({
    summary: 'The batch sheet of a whole run file; nothing is kept',
    answer: amountsDocument,
    problems: [422],
  })
  preview(@Body({ schema: runFile }) file: RunFile): AmountsDocument {
    return valueOf(writeBatchSheet(valueOf(runFileInput(file))));
  }
}

function runsWith(ids: readonly string[], { runs }: WorkshopBook): StoredRun[] {
  return [...new Set(ids)].map((id) => {
    const run = runs.find((each) => each.id === id);
    if (run === undefined) throw notFound('run');
    return run;
  });
}
