import { Body, Controller, Get, Inject, Post, Query } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import {
  newStockEntry,
  stockDocument,
  stockMoves,
  stockMovesQuery,
  storedStockEntry,
  type NewStockEntry,
  type StockDocument,
  type StockEntry,
  type StockMoves,
  type StockMovesQuery,
  type StoredStockEntryView,
} from '#contract';
import { checkStockEntry, movesOfMaterial, stockOf } from '#runs';
import type { StoredStockEntry } from '#storage';
import { under } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Leaving } from '../compute/leaving.js';
import { Documents } from '../docs/documented.js';
import { invalidInput, notFound } from '../problems/api-problem.js';
import { SERVICES, type Services } from '../services.js';

/** A clock of a phone may be so much ahead. */
const AHEAD_MS = 10 * 60_000;

/** What is in stock: a ledger of what came, was counted and was thrown out, and what the logs of runs used up. */
@ApiTags('stock')
@Controller('stock')
export class StockController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({
    summary: 'How much there is of everything, and the leftovers that were kept',
    answer: stockDocument,
    problems: [404, 503],
  })
  async get(@Caller() { workshopId }: CallerFacts, @Leaving() leaving: AbortSignal): Promise<StockDocument> {
    return stockOf(await this.services.stockUse.input(workshopId, leaving));
  }

  @Get('moves')
  @Documents({
    summary: 'What changed the stock of one material, the latest first',
    answer: stockMoves,
    problems: [404, 422, 503],
  })
  async moves(
    @Caller() { workshopId }: CallerFacts,
    @Leaving() leaving: AbortSignal,
    @Query({ schema: stockMovesQuery }) { material, unit }: StockMovesQuery,
  ): Promise<StockMoves> {
    const input = await this.services.stockUse.input(workshopId, leaving);
    return { material, unit, moves: movesOfMaterial(input, material, unit) };
  }

  @Get('entries')
  @Documents({
    summary: 'The ledger as it was written, for a run file or another program',
    answer: storedStockEntry,
    list: true,
  })
  async entries(@Caller() { workshopId }: CallerFacts): Promise<StoredStockEntryView[]> {
    return (await this.services.storage.stock.list(workshopId)).map(shown);
  }

  @Post('entries')
  @Documents({
    summary: 'Writes a line into the ledger; the same line with the same id again is written once',
    answer: storedStockEntry,
    status: 201,
    problems: [404, 422],
  })
  async append(
    @Caller() { workshopId }: CallerFacts,
    @Body({ schema: newStockEntry }) { id, entry }: NewStockEntry,
  ): Promise<StoredStockEntryView> {
    const { storage, clock } = this.services;
    const now = clock.now().getTime();
    return storage.withWorkshopLock(workshopId, async (tx) => {
      const before = await tx.stock.get(workshopId, id);
      if (before !== null) {
        if (!isSame(before.entry, entry)) {
          throw invalidInput([{ code: 'stock.id-taken', path: ['id'], value: id }]);
        }
        return shown(before);
      }
      const workshop = await tx.workshops.get(workshopId);
      if (workshop === null) throw notFound('workshop');
      refuseFuture(entry, now);
      const issues = checkStockEntry(await tx.stock.list(workshopId), entry, workshop.facts);
      if (issues.length > 0) throw invalidInput(under(['entry'], issues));
      return shown(await tx.stock.append(workshopId, id, entry));
    });
  }
}

function refuseFuture({ at }: StockEntry, now: number): void {
  if (Date.parse(at) <= now + AHEAD_MS) return;
  const accepted = { kind: 'until', at: new Date(now).toISOString() } as const;
  throw invalidInput([{ code: 'log.in-the-future', path: ['entry', 'at'], value: at, accepted, at }]);
}

/** What is stored has the order of fields that the database gives it. */
function isSame(one: StockEntry, other: StockEntry): boolean {
  return sorted(one) === sorted(other);
}

function sorted(entry: StockEntry): string {
  return JSON.stringify(Object.entries(entry).sort(([a], [b]) => (a < b ? -1 : 1)));
}

function shown({ id, sequence, at, loggedAt, entry }: StoredStockEntry): StoredStockEntryView {
  return { id, sequence, at: at.toISOString(), loggedAt: loggedAt.toISOString(), entry };
}
