import { Body, Controller, Get, Headers, Inject, Param, Post, Query, Res } from '@nestjs/common';
import { ApiResponse, ApiTags } from '@nestjs/swagger';
import type { Response } from 'express';
import type { z } from 'zod';
import { newPhoto, photoLimits, storedPhoto, uuid, type NewPhoto, type StoredPhotoView } from '#contract';
import type { PhotoFacts } from '#storage';
import type { Issue } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { workshopInAddress } from '../access/wanted-workshop.js';
import { Documents } from '../docs/documented.js';
import { invalidInput, notFound } from '../problems/api-problem.js';
import { SERVICES, type Services } from '../services.js';
import { findHead } from '../use-cases/find-run.js';
import { readJpeg, type Jpeg } from './read-jpeg.js';

/** Photos for the bench log. A note says which of them it shows. */
@ApiTags('log')
@Controller()
export class PhotosController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get('runs/:id/photos')
  @Documents({
    summary: 'What is kept of photos of a run, oldest first',
    answer: storedPhoto,
    list: true,
    problems: [404, 422],
  })
  async list(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<StoredPhotoView[]> {
    await findHead(this.services.storage, workshopId, id);
    return (await this.services.storage.photos.list(workshopId, id)).map(shown);
  }

  @Post('runs/:id/photos')
  @Documents({
    summary: 'Keeps a photo for the log of a run; the same photo with the same id again is kept once',
    answer: storedPhoto,
    status: 201,
    problems: [404, 422],
  })
  async keep(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: newPhoto }) { id: photo, data }: NewPhoto,
  ): Promise<StoredPhotoView> {
    const jpeg = readPhoto(data);
    return this.services.storage.transaction(async (tx) => {
      await findHead(tx, workshopId, id);
      const kept = await tx.photos.keep(workshopId, id, { id: photo, ...jpeg }, photoLimits);
      if (kept.ok) return shown(kept.value);
      throw invalidInput([refusal(kept.reason, photo)]);
    });
  }

  /** By id alone, so that an `img` can ask for it. */
  @Get('photos/:id')
  @ApiResponse({ status: 304, description: 'It is the one that `If-None-Match` names' })
  @Documents({ summary: 'A photo', media: 'image/jpeg', problems: [404, 422] })
  async picture(
    @Caller() { workshopId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
    @Headers('if-none-match') known: string | undefined,
    @Query({ schema: workshopInAddress }) _: z.output<typeof workshopInAddress>,
    @Res() response: Response,
  ): Promise<void> {
    const tag = `"${id}"`;
    const { photos } = this.services.storage;
    // What is under an id never changes. It is asked for anew each time, so that a key that was revoked shows nothing.
    const isKnown = known === tag && (await photos.get(workshopId, id)) !== null;
    const bytes = isKnown ? null : await photos.bytes(workshopId, id);
    if (bytes === null && !isKnown) throw notFound('photo');
    response.setHeader('Cache-Control', 'private, no-cache');
    response.setHeader('ETag', tag);
    response.setHeader('Cross-Origin-Resource-Policy', 'same-origin');
    if (bytes === null) response.status(304).end();
    else response.type('image/jpeg').send(bytes);
  }
}

function readPhoto(data: string): Jpeg {
  const jpeg = readJpeg(Buffer.from(data, 'base64'));
  if (jpeg === null) {
    const accepted = { kind: 'form', form: 'jpeg' } as const;
    throw invalidInput([{ code: 'photo.no-jpeg', path: ['data'], value: data, accepted }]);
  }
  const side = Math.max(jpeg.width, jpeg.height);
  if (side > photoLimits.side) {
    const accepted = { kind: 'range', high: photoLimits.side, unit: 'pixels' } as const;
    throw invalidInput([{ code: 'photo.too-large', path: ['data'], value: side, accepted, side }]);
  }
  return jpeg;
}

function refusal(reason: 'id-taken' | 'run-full' | 'workshop-full', id: string): Issue {
  if (reason === 'id-taken') return { code: 'photo.id-taken', path: ['id'], value: id };
  const [of, most] =
    reason === 'run-full'
      ? (['run', photoLimits.runBytes] as const)
      : (['workshop', photoLimits.workshopBytes] as const);
  return { code: 'photo.no-room', path: ['data'], of, mostMb: most / 1e6 };
}

function shown({ id, keptAt, width, height, size }: PhotoFacts): StoredPhotoView {
  return { id, keptAt: keptAt.toISOString(), width, height, size };
}
