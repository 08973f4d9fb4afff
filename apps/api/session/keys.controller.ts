import { Body, Controller, Delete, Get, Inject, Param, Patch } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import type { z } from 'zod';
import { accessKey, keyRenaming, uuid, type AccessKeyView } from '#contract';
import type { AccessKey } from '#storage';
import { Caller, type CallerFacts } from '../access/caller.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { ApiProblem, notFound } from '../problems/api-problem.js';

/** The devices that are signed in, and the programs that hold a key. */
@ApiTags('session')
@Controller('keys')
export class KeysController {
  constructor(@Inject(SERVICES) private readonly services: Services) {}

  @Get()
  @Documents({ summary: 'Keys that let in, oldest first', answer: accessKey, list: true })
  async list(@Caller() { ownWorkshopId, keyId }: CallerFacts): Promise<AccessKeyView[]> {
    const keys = await this.services.storage.keys.list(ownWorkshopId);
    return keys.map((key) => shown(key, keyId));
  }

  @Patch(':id')
  @Documents({ summary: 'Calls a device something else', answer: accessKey, problems: [403, 404, 422] })
  async rename(
    @Caller() { ownWorkshopId, keyId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
    @Body({ schema: keyRenaming }) { label }: z.output<typeof keyRenaming>,
  ): Promise<AccessKeyView> {
    const renamed = await this.services.storage.keys.rename(ownWorkshopId, id, label);
    if (renamed === null) throw notFound('key');
    return shown(renamed, keyId);
  }

  /** Never one's own, so that someone always stays in who can undo a slip; one's own ends by signing out. */
  @Delete(':id')
  @Documents({
    summary: 'Revokes a key; whoever holds it is out at once. Not one’s own: sign out instead',
    status: 204,
    problems: [403, 404, 409, 422],
  })
  async revoke(
    @Caller() { ownWorkshopId, keyId }: CallerFacts,
    @Param('id', { schema: uuid }) id: string,
  ): Promise<void> {
    if (id === keyId) {
      throw new ApiProblem(409, 'own-key', { says: 'own-key' });
    }
    if ((await this.services.storage.keys.revoke(ownWorkshopId, id)) === null) throw notFound('key');
  }
}

function shown({ id, label, createdAt, lastSeenAt }: AccessKey, current: string): AccessKeyView {
  return {
    ...{ id, label, createdAt: createdAt.toISOString(), lastSeenAt: lastSeenAt?.toISOString() ?? null },
    current: id === current,
  };
}
