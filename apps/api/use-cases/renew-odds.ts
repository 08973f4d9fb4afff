import type { PlanDocument, PlanJudgement } from '#contract';
import type { Log } from '#nudges';
import type { KeptJudgement, Storage } from '#storage';
import type { Compute } from '../compute/compute.js';
import { standingRuns, type StandingRun } from './run-input.js';
import type { Taught } from './taught.js';

/** How often it looks for what other processes, or edits that make no plan, have changed. */
const LOOK_EVERY_MS = 60_000;
/** How often it begins anew where something changes under it; whoever changes it last judges it. */
const MOST_TRIES = 5;

export interface RenewalParts {
  readonly storage: Storage;
  readonly compute: Compute;
  readonly taught: Taught;
  readonly log: Log;
  readonly lookEveryMs?: number;
}

/**
 * Judges the plans of live runs anew, as they stand, where other runs took hours or gave them back, hours changed or a lesson
 * moved clocks: beside the event loop, one pass of a workshop at a time, and only what rests on something else than before.
 * Any number of processes may do so at once: they come to the same, and what is stored rests on what is stored then.
 */
export class OddsRenewal {
  /** By workshop: what was there when its plans were last judged; empty: not yet. */
  private readonly seenAt = new Map<string, string>();
  private readonly passes = new Map<string, { wanted: boolean; readonly done: Promise<void> }>();
  private readonly timer: ReturnType<typeof setInterval>;
  private isClosed = false;

  constructor(private readonly parts: RenewalParts) {
    this.timer = setInterval(() => void this.look(), parts.lookEveryMs ?? LOOK_EVERY_MS);
    this.timer.unref();
  }

  /** Something was stored that odds may rest on. */
  soon(workshopId: string): void {
    if (this.isClosed) return;
    if (!this.seenAt.has(workshopId)) this.seenAt.set(workshopId, '');
    const going = this.passes.get(workshopId);
    if (going !== undefined) going.wanted = true;
    else this.passes.set(workshopId, { wanted: false, done: this.passUntilDone(workshopId) });
  }

  /** Plans of a workshop are shown: what may have been left undone before this process began is made up for, once. */
  shown(workshopId: string): void {
    if (!this.seenAt.has(workshopId)) this.soon(workshopId);
  }

  /** Once nothing is left to judge. */
  async idle(): Promise<void> {
    while (this.passes.size > 0) await Promise.all([...this.passes.values()].map(({ done }) => done));
  }

  async close(): Promise<void> {
    this.isClosed = true;
    clearInterval(this.timer);
    await this.idle();
  }

  private async look(): Promise<void> {
    for (const [workshopId, seen] of this.seenAt) {
      const basis = await this.parts.storage.planBasis.read(workshopId, null).catch(() => seen);
      if (basis === null) this.seenAt.delete(workshopId);
      else if (basis !== seen) this.soon(workshopId);
    }
  }

  private async passUntilDone(workshopId: string): Promise<void> {
    // The caller is to know of this pass before it ends.
    await Promise.resolve();
    for (let tries = 0; tries < MOST_TRIES && !this.isClosed; tries++) {
      const pass = this.passes.get(workshopId)!;
      pass.wanted = false;
      const isSettled = await this.pass(workshopId).catch((error: unknown) => {
        this.parts.log.debug('Odds are not renewed yet', { workshopId, reason: String(error) });
        return true;
      });
      if (pass.wanted) tries = -1;
      else if (isSettled) break;
    }
    this.passes.delete(workshopId);
  }

  /** @returns false where something that was read has changed meanwhile; then nothing is stored */
  private async pass(workshopId: string): Promise<boolean> {
    const { storage, taught } = this.parts;
    const { basis, runs, known } = await taught.snapshot(workshopId, async (tx, learned) => ({
      basis: await tx.planBasis.read(workshopId, null),
      runs: await standingRuns(tx, learned, workshopId),
      known: await tx.judgements.bases(workshopId),
    }));
    if (basis === null) return true;
    const kept: KeptJudgement[] = [];
    for (const run of runs) {
      const before = known.get(run.runId);
      const judged = await this.judge(
        workshopId,
        run,
        before?.revisionId === run.revisionId ? before.basis : undefined,
      );
      if (judged !== undefined) kept.push(judged);
    }
    const isSettled =
      kept.length === 0 ||
      (await storage.withWorkshopLock(workshopId, async (tx) => {
        if ((await tx.planBasis.read(workshopId, null)) !== basis) return false;
        const changed: string[] = [];
        for (const { runId, judgement } of kept) {
          const shown = await tx.plans.latest(workshopId, runId);
          if (shown === null || !isAsShown(judgement, shown.document)) changed.push(runId);
        }
        await tx.judgements.put(workshopId, kept);
        await tx.judgements.announce(workshopId, changed);
        return true;
      }));
    if (isSettled) this.seenAt.set(workshopId, basis);
    return isSettled;
  }

  private async judge(
    workshopId: string,
    { runId, revisionId, input, document }: StandingRun,
    known: string | undefined,
  ): Promise<KeptJudgement | undefined> {
    const judged = await this.parts.compute.run('judge', { input, document, known }, { workshopId });
    // What makes no sense any more is told by whoever plans it next.
    return judged.ok && judged.value !== undefined ? { runId, revisionId, ...judged.value } : undefined;
  }
}

function isAsShown(
  { ready, ...told }: PlanJudgement,
  { odds, weakLinks, guarantee, runs }: PlanDocument,
): boolean {
  const shown = {
    odds,
    weakLinks,
    guarantee,
    ready: runs.map(({ run, usable, ready: cured, best }) => ({ run, usable, ready: cured, best })),
  };
  return sameJson({ ...told, ready }, shown);
}

/** Equal but for the order of fields, which the database does not keep. */
function sameJson(a: unknown, b: unknown): boolean {
  return JSON.stringify(sorted(a)) === JSON.stringify(sorted(b));
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, each]) => [name, sorted(each)]),
  );
}
