import type { ReconciledNudges, Repositories } from '#storage';
import type { Parts } from '../parts.js';
import { callHash, keyReused, type OnceRequest } from './create-once.js';
import { queueAfterCommit } from './queue-after-commit.js';
import type { LearnedBut } from './taught.js';
import type { TurnUrgency } from './workshop-turns.js';

/** A change that makes plans, in the three steps that let it hold the workshop for the last one only. */
export interface PlanningChange<Seen, Made, Answer> {
  readonly urgency: TurnUrgency;
  /** The run that it is about; null: one that it makes. */
  readonly runId: string | null;
  /** Reads and checks, in one snapshot. What it throws is the answer. */
  read(tx: Repositories, learned: LearnedBut): Promise<Seen>;
  /** Plans; no connection is held meanwhile. */
  plan(seen: Seen): Promise<Made>;
  /** Writes everything down, in one transaction; nothing that was read has moved since. */
  store(tx: Repositories, seen: Seen, made: Made): Promise<Stored<Answer>>;
}

export interface Stored<Answer> {
  readonly answer: Answer;
  /** What it did to the nudges: told to the queue after the commit. */
  readonly nudges: readonly ReconciledNudges[];
}

/** How often it plans without holding the workshop. Only other processes and edits of the library come in between. */
const FREE_TRIES = 5;

/**
 * Carries out a change that makes plans, once for its idempotency key: reads, plans, and then holds the workshop just
 * long enough to see that nothing has moved and to store. If something has, it begins anew; after some tries it holds
 * the workshop while it plans, so that it ends. Changes of one workshop take turns before any of this.
 * @returns the answer's body; an error in any step leaves nothing behind and frees the key
 */
export async function planOnce<Seen, Made, Answer>(
  parts: Parts,
  request: OnceRequest,
  change: PlanningChange<Seen, Made, Answer>,
): Promise<Answer> {
  const { workshopId } = request;
  return parts.turns.take(workshopId, change.urgency, async () => {
    for (let tries = 0; tries < FREE_TRIES; tries += 1) {
      const done = await tryFreely(parts, request, change);
      if (done !== undefined) return answered(parts, done);
    }
    const held = await parts.storage.withWorkshopLock(workshopId, async (tx) => {
      const before = await replayed<Answer>(tx, request);
      if (before !== undefined) return before;
      const seen = await change.read(tx, parts.taught.learnedIn(tx, workshopId));
      return storedOnce(tx, request, change, seen, await change.plan(seen));
    });
    return answered(parts, held);
  });
}

/** @returns undefined when something moved while it planned */
async function tryFreely<Seen, Made, Answer>(
  { storage, taught }: Parts,
  request: OnceRequest,
  change: PlanningChange<Seen, Made, Answer>,
): Promise<Stored<Answer> | undefined> {
  const { workshopId } = request;
  const begun = await taught.snapshot(workshopId, async (tx, learned) => {
    const before = await replayed<Answer>(tx, request);
    if (before !== undefined) return { before };
    return { seen: await change.read(tx, learned), basis: await tx.planBasis.read(workshopId, change.runId) };
  });
  if ('before' in begun) return begun.before;
  const made = await change.plan(begun.seen);
  return storage.withWorkshopLock(workshopId, async (tx) => {
    const basis = await tx.planBasis.read(workshopId, change.runId);
    return basis === begun.basis ? storedOnce(tx, request, change, begun.seen, made) : undefined;
  });
}

/** The answer that was given under this key before; undefined: none. */
async function replayed<Answer>(tx: Repositories, request: OnceRequest): Promise<Stored<Answer> | undefined> {
  const { workshopId, key } = request;
  if (key === undefined) return undefined;
  const found = await tx.idempotency.find(workshopId, key, callHash(request));
  if (found === null) return undefined;
  if (!found.ok) throw keyReused();
  return { answer: found.response as Answer, nudges: [] };
}

async function storedOnce<Seen, Made, Answer>(
  tx: Repositories,
  request: OnceRequest,
  change: PlanningChange<Seen, Made, Answer>,
  seen: Seen,
  made: Made,
): Promise<Stored<Answer>> {
  const { workshopId, key } = request;
  if (key === undefined) return change.store(tx, seen, made);
  let nudges: readonly ReconciledNudges[] = [];
  const outcome = await tx.idempotency.once(workshopId, key, callHash(request), async (inner) => {
    const stored = await change.store(inner, seen, made);
    nudges = stored.nudges;
    return { status: 201, response: stored.answer };
  });
  if (!outcome.ok) throw keyReused();
  return { answer: outcome.response as Answer, nudges };
}

async function answered<Answer>(parts: Parts, { answer, nudges }: Stored<Answer>): Promise<Answer> {
  for (const each of nudges) await queueAfterCommit(parts, each);
  return answer;
}
