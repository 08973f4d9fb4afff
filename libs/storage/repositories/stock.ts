import { readStored, stockEntry, type StockEntry } from '#contract';
import type { StockEntry as Row } from '../generated/client.js';
import { toJson, type Session } from '../session.js';

export interface StoredStockEntry {
  readonly id: string;
  readonly workshopId: string;
  /** Order of writing; rises, with gaps. */
  readonly sequence: number;
  /** When it happened. */
  readonly at: Date;
  /** When it was written down. */
  readonly loggedAt: Date;
  readonly entry: StockEntry;
}

/** The stock ledger. It can only grow; the database refuses anything else. */
export interface Stock {
  /** @param id of its own in the workshop; `get` tells whether it is taken */
  append(workshopId: string, id: string, entry: StockEntry): Promise<StoredStockEntry>;
  get(workshopId: string, id: string): Promise<StoredStockEntry | null>;
  /** In the order of writing. */
  list(workshopId: string): Promise<StoredStockEntry[]>;
}

export function stock({ db, now }: Session): Stock {
  return {
    async append(workshopId, id, entry) {
      const data = { id, workshopId, at: new Date(entry.at), loggedAt: now(), entry: toJson(entry) };
      return read(await db.stockEntry.create({ data }));
    },
    async get(workshopId, id) {
      const row = await db.stockEntry.findUnique({ where: { workshopId_id: { workshopId, id } } });
      return row && read(row);
    },
    async list(workshopId) {
      const rows = await db.stockEntry.findMany({ where: { workshopId }, orderBy: { sequence: 'asc' } });
      return rows.map(read);
    },
  };
}

function read(row: Row): StoredStockEntry {
  return { ...row, sequence: Number(row.sequence), entry: readStored(stockEntry, row.entry) };
}
