import { Prisma } from '../generated/client.js';
import { fromJson, type Session } from '../session.js';

/** What an answer is kept under. */
export interface AnswerKey {
  readonly key: string;
  /** Tells requests apart, for example a hash of method, path and body. */
  readonly requestHash: string;
}

/** What is answered, and answered again when the same request comes once more. */
export interface StoredResponse {
  readonly status: number;
  /** JSON, or null for an empty body. */
  readonly response: unknown;
}

export type OnceResult =
  | { readonly ok: true; readonly replayed: boolean; readonly status: number; readonly response: unknown }
  /** The key was used before, for a different request. */
  | { readonly ok: false; readonly reason: 'key-reused' };

/** An answer as it is kept: what it shows of a plan is that plan's revision, and stands in `response` no second time. */
export interface KeptAnswer extends AnswerKey, StoredResponse {
  /** Null: `response` is the whole answer. */
  readonly revisionId: string | null;
}

export type FoundAnswer =
  | ({ readonly ok: true; readonly revisionId: string | null } & StoredResponse)
  /** The key was used before, for a different request. */
  | { readonly ok: false; readonly reason: 'key-reused' };

export interface Idempotency<Tx> {
  /** What was answered under a key; null when it was not used yet, or its work is not over. */
  find(workshopId: string, answer: AnswerKey): Promise<FoundAnswer | null>;
  /** Keeps an answer, in the transaction of the work that it answers. @throws when the key is used already */
  keep(workshopId: string, answer: KeptAnswer): Promise<void>;
  /**
   * Does the work once for a key, in one transaction with the record of it. The same key and request again get
   * the stored response; one that comes while the first is at work waits for it. When the work throws, nothing
   * is stored and the key is free again.
   * @param requestHash tells requests apart, for example a hash of method, path and body
   */
  once(
    workshopId: string,
    key: string,
    requestHash: string,
    work: (tx: Tx) => Promise<StoredResponse>,
  ): Promise<OnceResult>;
}

/** @param inside makes the repositories of a transaction, which the work is given */
export function idempotency<Tx>(session: Session, inside: (session: Session) => Tx): Idempotency<Tx> {
  return {
    async find(workshopId, { key, requestHash }) {
      const found = await session.db.idempotencyKey.findUnique({
        where: { workshopId_key: { workshopId, key } },
      });
      if (found === null) return null;
      if (found.requestHash !== requestHash) return { ok: false, reason: 'key-reused' };
      const { status, response, revisionId } = found;
      return status === null ? null : { ok: true, status, response: fromJson(response), revisionId };
    },
    async keep(workshopId, answer) {
      await session.db.$executeRaw(answerInsert(session, workshopId, answer));
    },
    once(workshopId, key, requestHash, work) {
      return session.atomically(async (tx) => {
        const where = { workshopId_key: { workshopId, key } };
        // Waits here while another transaction holds the same key, and goes on once that one has ended.
        const { count } = await tx.db.idempotencyKey.createMany({
          data: { workshopId, key, requestHash, createdAt: session.now() },
          skipDuplicates: true,
        });
        if (count === 0) {
          const found = await tx.db.idempotencyKey.findUniqueOrThrow({ where });
          if (found.requestHash !== requestHash) return { ok: false, reason: 'key-reused' };
          const { status, response } = found;
          if (status === null) throw new Error(`The idempotency key ${key} is used inside its own work.`);
          return { ok: true, replayed: true, status, response: fromJson(response) };
        }
        const { status, response } = await work(inside(tx));
        // As text: the client takes several times as long for a value, and the workshop is held meanwhile.
        await tx.db.$executeRaw`
          UPDATE idempotency_key SET status = ${status}, response = ${JSON.stringify(response)}::jsonb
          WHERE workshop_id = ${workshopId}::uuid AND key = ${key}`;
        return { ok: true, replayed: false, status, response };
      });
    },
  };
}

export function answerInsert(
  { now }: Pick<Session, 'now'>,
  workshopId: string,
  { key, requestHash, status, response, revisionId }: KeptAnswer,
): Prisma.Sql {
  return Prisma.sql`
    INSERT INTO idempotency_key (workshop_id, key, request_hash, status, response, revision_id, created_at)
    VALUES (${workshopId}::uuid, ${key}, ${requestHash}, ${status}, ${JSON.stringify(response)}::jsonb,
      ${revisionId}::uuid, ${now()})`;
}
