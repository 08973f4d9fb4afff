import type { z } from 'zod';
import {
  fat,
  mould,
  pieceDesign,
  readStored,
  recipe,
  type Fat,
  type Mould,
  type PieceDesign,
  type Recipe,
} from '#contract';
import type { Mould as Row } from '../generated/client.js';
import { changedOr, type Changed, type Created } from '../results.js';
import { newId, toJson, type Session } from '../session.js';

/** Something of the maker's that runs refer to by key. */
export interface Stored<Content> {
  readonly id: string;
  readonly workshopId: string;
  readonly key: string;
  readonly version: number;
  readonly content: Content;
  readonly createdAt: Date;
  readonly updatedAt: Date;
  readonly archivedAt: Date | null;
}

export interface CatalogueRepository<Content extends { key: string }> {
  /** Those in use, by key. */
  list(workshopId: string): Promise<Stored<Content>[]>;
  get(workshopId: string, id: string): Promise<Stored<Content> | null>;
  /** The one in use with this key. */
  byKey(workshopId: string, key: string): Promise<Stored<Content> | null>;
  create(workshopId: string, content: Content): Promise<Created<Stored<Content>>>;
  /**
   * Replaces the content of one in use.
   * @throws RangeError when the content has another key: things refer to it, so it never changes
   */
  update(
    workshopId: string,
    id: string,
    version: number,
    content: Content,
  ): Promise<Changed<Stored<Content>> | null>;
  /** Takes it out of use and frees its key. Runs keep their own copy. */
  archive(workshopId: string, id: string, version: number): Promise<Changed<Stored<Content>> | null>;
}

export interface Library {
  readonly moulds: CatalogueRepository<Mould>;
  readonly fats: CatalogueRepository<Fat>;
  readonly recipes: CatalogueRepository<Recipe>;
  readonly designs: CatalogueRepository<PieceDesign>;
}

/** The four tables have the same columns, so the delegate of one can stand for all. */
type Table = Session['db']['mould'];

export function library(session: Session): Library {
  const { db } = session;
  return {
    moulds: repository<Mould>(session, db.mould, mould),
    fats: repository<Fat>(session, db.fat as unknown as Table, fat),
    recipes: repository<Recipe>(session, db.recipe as unknown as Table, recipe),
    designs: repository<PieceDesign>(session, db.pieceDesign as unknown as Table, pieceDesign),
  };
}

function repository<Content extends { key: string }>(
  session: Session,
  table: Table,
  schema: z.ZodType<Content>,
): CatalogueRepository<Content> {
  const read = (row: Row): Stored<Content> => ({ ...row, content: readStored(schema, row.content) });
  const get = async (workshopId: string, id: string): Promise<Stored<Content> | null> => {
    const row = await table.findUnique({ where: { workshopId_id: { workshopId, id } } });
    return row && read(row);
  };
  const change = async (
    where: { workshopId: string; id: string; version: number },
    data: { content?: ReturnType<typeof toJson>; archivedAt?: Date },
  ): Promise<Changed<Stored<Content>> | null> => {
    const [row] = await table.updateManyAndReturn({
      where: { ...where, archivedAt: null },
      data: { ...data, version: { increment: 1 }, updatedAt: session.now() },
    });
    return changedOr(row && read(row), row ? null : await get(where.workshopId, where.id));
  };
  return {
    get,
    async list(workshopId) {
      const rows = await table.findMany({ where: { workshopId, archivedAt: null }, orderBy: { key: 'asc' } });
      return rows.map(read);
    },
    async byKey(workshopId, key) {
      const row = await table.findFirst({ where: { workshopId, key, archivedAt: null } });
      return row && read(row);
    },
    async create(workshopId, content) {
      const at = session.now();
      const [row] = await table.createManyAndReturn({
        data: {
          id: newId(session),
          workshopId,
          key: content.key,
          content: toJson(content),
          createdAt: at,
          updatedAt: at,
        },
        // A refused insert would spoil the transaction around it; a skipped one does not.
        skipDuplicates: true,
      });
      return row ? { ok: true, value: read(row) } : { ok: false, reason: 'key-taken' };
    },
    async update(workshopId, id, version, content) {
      const current = await get(workshopId, id);
      if (current === null) return null;
      if (current.key !== content.key) {
        throw new RangeError(`The key "${current.key}" cannot become "${content.key}": others refer to it.`);
      }
      return change({ workshopId, id, version }, { content: toJson(content) });
    },
    async archive(workshopId, id, version) {
      return change({ workshopId, id, version }, { archivedAt: session.now() });
    },
  };
}
