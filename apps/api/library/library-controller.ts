import { Body, Controller, Delete, Get, Inject, Param, Post, Put, Query, type Type } from '@nestjs/common';
import { ApiTags } from '@nestjs/swagger';
import { z } from 'zod';
import { LARGEST_INT4, numberInAddress, uuid } from '#contract';
import type { Repositories, CatalogueRepository, Stored } from '#storage';
import type { Issue } from '#units';
import { Caller, type CallerFacts } from '../access/caller.js';
import { IdempotencyKey } from '../access/idempotency-key.js';
import { Documents } from '../docs/documented.js';
import { SERVICES, type Services } from '../services.js';
import { ApiProblem, invalidInput, keyTaken, notFound, staleVersion } from '../problems/api-problem.js';
import type { LibraryThing } from '../problems/problem-told.js';
import { withIdempotency } from '../use-cases/with-idempotency.js';

/** What is particular to one kind of thing in the library. */
export interface CatalogueFacts<Content extends { key: string }> {
  /** Plural, as in the path. */
  readonly path: string;
  readonly what: LibraryThing;
  readonly schema: z.ZodType<Content>;
  readonly stored: z.ZodType;
  readonly replacement: z.ZodType<{ version: number; content: Content }>;
  repository(repositories: Repositories): CatalogueRepository<Content>;
  /** What its schema cannot see: names it refers to, sums, circles. */
  check(content: Content, repositories: Repositories, workshopId: string): Promise<readonly Issue[]>;
  /** Titles of things in use that refer to it. */
  usedBy(content: Content, repositories: Repositories, workshopId: string): Promise<readonly string[]>;
}

/** What is stored, as it is shown. */
interface StoredView<Content> {
  readonly id: string;
  readonly version: number;
  readonly content: Content;
  readonly createdAt: string;
  readonly updatedAt: string;
}

const idParam = uuid;
const versionQuery = z.strictObject({ version: numberInAddress(1, LARGEST_INT4) });

/** A controller that keeps one kind of thing: list, read, create, replace, take out of use. */
export function libraryController<Content extends { key: string }>(
  facts: CatalogueFacts<Content>,
): Type<unknown> {
  const { path, what } = facts;

  @ApiTags(path)
  @Controller(path)
  class LibraryController {
    constructor(@Inject(SERVICES) private readonly services: Services) {}

    @Get()
    @Documents({ summary: `All ${path} in use, by key`, answer: facts.stored, list: true })
    async list(@Caller() { workshopId }: CallerFacts) {
      return (await facts.repository(this.services.storage).list(workshopId)).map(shown);
    }

    @Post()
    @Documents({
      summary: `A new ${what}`,
      answer: facts.stored,
      status: 201,
      problems: [409, 422],
      once: true,
    })
    async create(
      @Caller() { workshopId }: CallerFacts,
      @IdempotencyKey() key: string | undefined,
      @Body({ schema: facts.schema }) content: Content,
    ) {
      const request = { workshopId, key, call: `POST ${path}`, body: content };
      return withIdempotency(this.services.storage, request, async (tx) => {
        refuse(await facts.check(content, tx, workshopId));
        const created = await facts.repository(tx).create(workshopId, content);
        if (!created.ok) throw keyTaken(what, content.key);
        return shown(created.value);
      });
    }

    @Get(':id')
    @Documents({ summary: `One ${what}`, answer: facts.stored, problems: [404, 422] })
    async get(@Caller() { workshopId }: CallerFacts, @Param('id', { schema: idParam }) id: string) {
      const found = await facts.repository(this.services.storage).get(workshopId, id);
      if (found === null) throw notFound(what);
      return shown(found);
    }

    @Put(':id')
    @Documents({ summary: `Replaces a ${what}`, answer: facts.stored, problems: [404, 409, 422] })
    async replace(
      @Caller() { workshopId }: CallerFacts,
      @Param('id', { schema: idParam }) id: string,
      @Body({ schema: facts.replacement }) body: { version: number; content: Content },
    ) {
      return this.services.storage.withWorkshopLock(workshopId, async (tx) => {
        const before = await facts.repository(tx).get(workshopId, id);
        if (before === null || before.archivedAt !== null) throw notFound(what);
        if (before.key !== body.content.key) {
          const { key } = before;
          const path = ['content', 'key'];
          throw invalidInput([{ code: 'library.key-changed', path, value: body.content.key, key }]);
        }
        const issues = await facts.check(body.content, tx, workshopId);
        refuse(issues.map((issue) => ({ ...issue, path: ['content', ...issue.path] })));
        const changed = await facts.repository(tx).update(workshopId, id, body.version, body.content);
        if (changed === null) throw notFound(what);
        if (!changed.ok) throw staleVersion(shown(changed.current));
        return shown(changed.value);
      });
    }

    @Delete(':id')
    @Documents({
      summary: `Takes a ${what} out of use; runs keep their copy`,
      status: 204,
      problems: [404, 409, 422],
    })
    async archive(
      @Caller() { workshopId }: CallerFacts,
      @Param('id', { schema: idParam }) id: string,
      @Query({ schema: versionQuery }) query: { version: number },
    ): Promise<void> {
      await this.services.storage.withWorkshopLock(workshopId, async (tx) => {
        const found = await facts.repository(tx).get(workshopId, id);
        if (found === null || found.archivedAt !== null) throw notFound(what);
        const users = await facts.usedBy(found.content, tx, workshopId);
        if (users.length > 0) {
          throw new ApiProblem(409, 'in-use', { says: 'thing-in-use', what, users });
        }
        const changed = await facts.repository(tx).archive(workshopId, id, query.version);
        if (changed === null) throw notFound(what);
        if (!changed.ok) throw staleVersion(shown(changed.current));
      });
    }
  }
  // The API document names each operation after its class, and the four must not share a name.
  const name = `${path.charAt(0).toUpperCase()}${path.slice(1)}Controller`;
  return Object.defineProperty(LibraryController, 'name', { value: name });
}

function refuse(issues: readonly Issue[]): void {
  if (issues.length > 0) throw invalidInput(issues);
}

function shown<Content>({
  id,
  version,
  content,
  createdAt,
  updatedAt,
}: Stored<Content>): StoredView<Content> {
  return { id, version, content, createdAt: createdAt.toISOString(), updatedAt: updatedAt.toISOString() };
}
