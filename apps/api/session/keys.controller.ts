import { Controller, Delete, Get, Inject, Param } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { accessKey, uuid, type AccessKeyView } from '#contract';
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
    return keys.map(({ id, label, createdAt }) => ({
      ...{ id, label, createdAt: createdAt.toISOString() },
      current: id === keyId,
    }));
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
