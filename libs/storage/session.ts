import { v7 } from 'uuid';
import type { Prisma } from './generated/client.js';

/** What every repository works with: one database connection or transaction, and the time. */
export interface Session {
  readonly db: Prisma.TransactionClient;
  readonly now: () => Date;
  /** The workshop that this transaction has to itself. */
  readonly holds?: string;
  /** Runs the work in the transaction this session is in already, or else in one of its own. */
  atomically<T>(work: (session: Session) => Promise<T>): Promise<T>;
}

/** Ids made by this process, which tells those of one millisecond apart. */
let made = 0;

/**
 * A new row id: UUID version 7 (RFC 9562), so that ids sort by the time they were made, and those of one process and
 * millisecond in the order in which they were made.
 */
export function newId({ now }: Pick<Session, 'now'>): string {
  made = (made + 1) >>> 0;
  return v7({ msecs: now().getTime(), seq: made });
}

/**
 * A value with its JSON text. Writing a long one out takes milliseconds, so it is done before anything is locked; and as
 * text, because the database client takes several times as long for a value.
 */
export interface Written<T> {
  readonly value: T;
  readonly text: string;
}

export function written<T>(value: T): Written<T> {
  return { value, text: JSON.stringify(value) };
}

/** A value as a JSON column takes it; fields that are undefined are left out. */
export function toJson(value: unknown): Prisma.InputJsonValue {
  return JSON.parse(JSON.stringify(value)) as Prisma.InputJsonValue;
}

/** The content of a JSON column. It was checked against the contract on its way in. */
export function fromJson<T>(value: Prisma.JsonValue): T {
  return value as T;
}
