import type { PlanDocument, PlanJudgement } from '#contract';
import type { Prisma } from '../generated/client.js';
import { fromJson, toJson, type Session } from '../session.js';
import { INBOX_CHANNEL } from './nudges.js';

export interface KeptJudgement {
  readonly runId: string;
  /** The plan that was judged. */
  readonly revisionId: string;
  /** Digest of all that it rests on. */
  readonly basis: string;
  readonly judgement: PlanJudgement;
}

/** What the latest plans of runs come to as they stand: one for each run, of its latest plan or of an earlier one. */
export interface Judgements {
  /** Keeps them in place of those before. Only who holds the workshop may do this. */
  put(workshopId: string, kept: readonly KeptJudgement[]): Promise<void>;
  /** Tells all who have a page of the workshop open that plans come to something else now; once this is stored. */
  announce(workshopId: string, runIds: readonly string[]): Promise<void>;
  /** By run. */
  bases(workshopId: string): Promise<ReadonlyMap<string, Pick<KeptJudgement, 'revisionId' | 'basis'>>>;
}

export function judgements({ db }: Session): Judgements {
  return {
    async put(workshopId, kept) {
      for (const { runId, judgement, ...rest } of kept) {
        const row = { ...rest, judgement: toJson(judgement) };
        await db.planJudgement.upsert({
          where: { workshopId_runId: { workshopId, runId } },
          create: { workshopId, runId, ...row },
          update: row,
        });
      }
    },
    async announce(workshopId, runIds) {
      if (runIds.length === 0) return;
      const notice = JSON.stringify({ workshopId, judged: runIds });
      await db.$executeRaw`SELECT pg_notify(${INBOX_CHANNEL}, ${notice})`;
    },
    async bases(workshopId) {
      const rows = await db.planJudgement.findMany({ where: { workshopId }, omit: { judgement: true } });
      return new Map(rows.map(({ runId, revisionId, basis }) => [runId, { revisionId, basis }]));
    },
  };
}

/** The row of a run as it comes with a plan of it. */
export const withJudgement = {
  run: { select: { judgement: { select: { revisionId: true, judgement: true } } } },
} as const;

/** A stored plan as it is shown: with what it comes to now, where that was judged since. */
export function asJudged(
  document: PlanDocument,
  revisionId: string,
  kept: { readonly revisionId: string; readonly judgement: Prisma.JsonValue } | null,
): PlanDocument {
  if (kept === null || kept.revisionId !== revisionId) return document;
  const { ready, ...told } = fromJson<PlanJudgement>(kept.judgement);
  const runs = document.runs.map((run) => {
    const days = ready.find((each) => each.run === run.run);
    if (days === undefined) return run;
    // A day that is not told any more is not that of the stored plan.
    const { usable: _usable, best: _best, ...rest } = run;
    return { ...rest, ...days };
  });
  return { ...document, ...told, runs };
}
