import { Controller, Get, Headers, Inject, Query, Req, Res, type OnModuleDestroy } from '@nestjs/common';
import { ApiProduces, ApiTags } from '@nestjs/swagger';
import type { Request, Response } from 'express';
import { z } from 'zod';
import {
  inboxEntry,
  numberInAddress,
  nudge as nudgeSchema,
  uuid,
  type InboxEntry,
  type Nudge,
} from '#contract';
import type { DeliveredNudge, StoredNudge } from '#storage';
import { describeNudge } from '#nudges';
import { withTexts } from '#words';
import { wordsOf } from '#words/all';
import { Caller, type CallerFacts } from '../access/caller.js';
import { workshopInAddress } from '../access/wanted-workshop.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { readerOf } from '../words/reader-of.js';

const HEARTBEAT_MS = 25_000;

/** Places are numbered one by one; the same limit as for the digits of Last-Event-ID. */
const LAST_PLACE = 999_999_999_999_999;

const nudgeFilter = z.strictObject({
  status: nudgeSchema.shape.status.optional(),
  run: uuid.optional().meta({ description: 'Id of a run' }),
});
const place = z.strictObject({ after: numberInAddress(0, LAST_PLACE).default(0) });
const streamPlace = place.extend(workshopInAddress.shape);

/** Nudges: what waits, what came, and the stream of what comes. */
@ApiTags('inbox')
@Controller()
export class InboxController implements OnModuleDestroy {
  private readonly open = new Set<Response>();

  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('nudges')
  @Documents({ summary: 'Nudges by due time', answer: nudgeSchema, list: true, problems: [422] })
  async nudges(
    @Caller() { workshopId }: CallerFacts,
    @Query({ schema: nudgeFilter }) { status, run }: z.output<typeof nudgeFilter>,
  ): Promise<Nudge[]> {
    const filter = { ...(status && { status }), ...(run && { runId: run }) };
    const found = await this.services.storage.nudges.list(workshopId, filter);
    const timeZone = await this.timeZoneOf(workshopId);
    return found.map((nudge) => shown(nudge, timeZone));
  }

  @Get('inbox')
  @Documents({
    summary: 'What was delivered, in order, after a place',
    answer: inboxEntry,
    list: true,
    problems: [422],
  })
  async inbox(
    @Caller() { workshopId }: CallerFacts,
    @Query({ schema: place }) { after }: z.output<typeof place>,
  ): Promise<InboxEntry[]> {
    const found = await this.services.storage.nudges.inboxSince(workshopId, after);
    const timeZone = await this.timeZoneOf(workshopId);
    return found.map((nudge) => shownEntry(nudge, timeZone));
  }

  @Get('inbox/stream')
  @ApiProduces('text/event-stream')
  @Documents({
    summary:
      'The inbox as server-sent events, after a place; Last-Event-ID picks up where a stream ended. Events `odds` between them name runs whose plans come to something else now; none named: any may. Events `changed` tell what was written on any device: `{ changed, plan?, entry? }`, the id of a run or “stock”; null: it may be anything',
    problems: [422],
  })
  async stream(
    @Caller() caller: CallerFacts,
    @Headers('last-event-id') last: string | undefined,
    @Query({ schema: streamPlace }) { after: wanted }: z.output<typeof streamPlace>,
    @Req() request: Request,
    @Res() response: Response,
  ): Promise<void> {
    const timeZone = await this.timeZoneOf(caller.workshopId);
    const reader = readerOf(request);
    response.writeHead(200, {
      'Content-Type': 'text/event-stream',
      'Content-Language': reader.language,
      'X-Accel-Buffering': 'no',
    });
    response.write('retry: 2000\n\n');
    this.open.add(response);
    // A browser cannot send the header with its first request, only when it comes back by itself.
    const after = /^\d{1,15}$/.test(last ?? '') ? Number(last) : wanted;
    const end = this.services.inbox.follow(
      caller.workshopId,
      after,
      (nudge) => {
        const data = JSON.stringify(withTexts(shownEntry(nudge, timeZone), reader, wordsOf[reader.language]));
        response.write(`id: ${String(nudge.sequence)}\nevent: nudge\ndata: ${data}\n\n`);
      },
      (runs) => {
        response.write(`event: odds\ndata: ${JSON.stringify({ runs })}\n\n`);
      },
      (change) => {
        response.write(`event: changed\ndata: ${JSON.stringify(change)}\n\n`);
      },
    );
    const heartbeat = setInterval(() => void this.goOnOrEnd(caller, response), HEARTBEAT_MS);
    request.on('close', () => {
      clearInterval(heartbeat);
      end();
      this.open.delete(response);
    });
  }

  /** Times of nudges are read in the workshop's zone. */
  private async timeZoneOf(workshopId: string): Promise<string> {
    return (await this.services.storage.nudges.readerOf(workshopId)).timeZone;
  }

  /** A stream was let in long ago; it ends soon after its key is revoked. The browser then asks anew, and is refused. */
  private async goOnOrEnd({ ownWorkshopId, keyId }: CallerFacts, response: Response): Promise<void> {
    const key = await this.services.storage.keys.get(ownWorkshopId, keyId).catch(() => undefined);
    const revoked = key === null || (key !== undefined && key.revokedAt !== null);
    if (revoked) response.end();
    else response.write(': still here\n\n');
  }

  /** Streams never end by themselves, and a server waits for what is open. */
  onModuleDestroy(): void {
    for (const response of this.open) response.end();
  }
}

function shown(nudge: StoredNudge, timeZone: string): Nudge {
  const { id, runId, run, stage, attempt, kind, dueAt, status, deliveredAt } = nudge;
  const times = { dueAt: dueAt.toISOString(), deliveredAt: deliveredAt?.toISOString() ?? null };
  const message = describeNudge(nudge, deliveredAt ?? dueAt);
  return { id, runId, run, stage, attempt, kind, message, timeZone, status, ...times };
}

function shownEntry(nudge: DeliveredNudge, timeZone: string): InboxEntry {
  return { ...shown(nudge, timeZone), sequence: nudge.sequence };
}
