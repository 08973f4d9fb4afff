import type { PlanView } from '#contract';
import type { AnswerKey, HeldRun, PlanRevision, ReconciledNudges, Repositories } from '#storage';
import type { Services } from '../services.js';
import { callHash, keyReused, type IdempotentRequest } from './with-idempotency.js';
import { shownPlan } from './make-plan.js';
import { publishNudges } from './publish-nudges.js';
import type { LearnedBut } from './taught.js';
import type { TurnUrgency } from './workshop-turns.js';

/** A change that makes plans, in the three steps that let it hold the workshop for the last one only. */
export interface PlanningChange<Seen, Made, Rest, Answer> {
  readonly urgency: TurnUrgency;
  /** The run that it is about; null: one that it makes. */
  readonly runId: string | null;
  /** Reads and checks, in one snapshot. What it throws is the answer. */
  read(tx: Repositories, learned: LearnedBut): Promise<Seen>;
  /** Plans; no connection is held meanwhile. */
  plan(seen: Seen): Promise<Made>;
  /**
   * Writes everything down, in one transaction; nothing that was read has moved since. The rest of the answer is kept
   * under the key, if there is one, with the plan's revision.
   */
  store(tx: Repositories, seen: Seen, made: Made, given: StoreGiven): Promise<Stored<Rest>>;
  /** The answer's body; also when the same request comes again, from what was kept. */
  answer(rest: Rest, plan: PlanView): Answer;
}

export interface StoreGiven {
  /** What the answer is to be kept under, if anything. */
  readonly key: AnswerKey | undefined;
  /** The run as it was locked for its plan. */
  readonly held?: HeldRun;
}

export interface Stored<Rest> {
  /** The answer without its plan. */
  readonly rest: Rest;
  readonly revision: PlanRevision;
  /** What it did to the nudges: told to the queue after the commit. */
  readonly nudges: readonly ReconciledNudges[];
}

/** The answer's body, and what the queue is to be told. */
interface Done<Answer> {
  readonly answer: Answer;
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
export async function planOnce<Seen, Made, Rest, Answer>(
  services: Services,
  request: IdempotentRequest,
  change: PlanningChange<Seen, Made, Rest, Answer>,
): Promise<Answer> {
  const { workshopId } = request;
  return services.turns.take(workshopId, change.urgency, async () => {
    for (let tries = 0; tries < FREE_TRIES; tries += 1) {
      const done = await tryFreely(services, request, change);
      if (done !== undefined) return answered(services, workshopId, done);
    }
    const held = await services.storage.withWorkshopLock(workshopId, async (tx) => {
      const before = await replayed(tx, request, change);
      if (before !== undefined) return before;
      const seen = await change.read(tx, services.taught.learnedIn(tx, workshopId));
      return done(change, await change.store(tx, seen, await change.plan(seen), { key: keyOf(request) }));
    });
    return answered(services, workshopId, held);
  });
}

/** @returns undefined when something moved while it planned */
async function tryFreely<Seen, Made, Rest, Answer>(
  { storage, taught }: Services,
  request: IdempotentRequest,
  change: PlanningChange<Seen, Made, Rest, Answer>,
): Promise<Done<Answer> | undefined> {
  const { workshopId, key } = request;
  const begun = await taught.snapshot(workshopId, async (tx, learned) => {
    const before = await replayed(tx, request, change);
    if (before !== undefined) return { before };
    return {
      seen: await change.read(tx, learned),
      basis: await tx.planBasis.read(workshopId, change.runId, key),
    };
  });
  if ('before' in begun) return begun.before;
  const made = await change.plan(begun.seen);
  const keptUnder = keyOf(request);
  const stored = await storage.withWorkshopLock(workshopId, async (tx) => {
    const given = { key: keptUnder };
    if (change.runId === null) {
      const basis = await tx.planBasis.read(workshopId, null, key);
      return basis === begun.basis ? change.store(tx, begun.seen, made, given) : undefined;
    }
    const held = await tx.planBasis.hold(workshopId, change.runId, key);
    return held?.basis === begun.basis ? change.store(tx, begun.seen, made, { ...given, held }) : undefined;
  });
  return stored && done(change, stored);
}

function keyOf(request: IdempotentRequest): AnswerKey | undefined {
  const { key } = request;
  return key === undefined ? undefined : { key, requestHash: callHash(request) };
}

/** The answer that was given under this key before; undefined: none. */
async function replayed<Rest, Answer>(
  tx: Repositories,
  request: IdempotentRequest,
  change: Pick<PlanningChange<unknown, unknown, Rest, Answer>, 'answer'>,
): Promise<Done<Answer> | undefined> {
  const { workshopId } = request;
  const key = keyOf(request);
  if (key === undefined) return undefined;
  const found = await tx.idempotency.find(workshopId, key);
  if (found === null) return undefined;
  if (!found.ok) throw keyReused();
  // Answers of earlier versions hold their plan themselves.
  if (found.revisionId === null) return { answer: found.response as Answer, nudges: [] };
  const revision = await tx.plans.get(workshopId, found.revisionId);
  if (revision === null) throw new Error(`the plan ${found.revisionId} of an answer is gone`);
  return done(change, { rest: found.response as Rest, revision, nudges: [] });
}

function done<Rest, Answer>(
  change: Pick<PlanningChange<unknown, unknown, Rest, Answer>, 'answer'>,
  { rest, revision, nudges }: Stored<Rest>,
): Done<Answer> {
  return { answer: change.answer(rest, shownPlan(revision)), nudges };
}

/** What was stored is told: to the queue, and to whoever judges the other runs, whose hours it may have taken. */
async function answered<Answer>(
  services: Services,
  workshopId: string,
  { answer, nudges }: Done<Answer>,
): Promise<Answer> {
  services.renewal.soon(workshopId);
  for (const each of nudges) await publishNudges(services, each);
  return answer;
}
