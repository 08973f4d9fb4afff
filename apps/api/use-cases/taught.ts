import type { Learned } from '#contract';
import { learnedFrom, teachingsBasis, type PastRun } from '#runs';
import type { Repositories, Storage, StoredRun } from '#storage';
import type { Compute } from '../compute/compute.js';
import { LatestUsed } from './latest-used.js';

/** What all runs but one have taught, read in the transaction that it was made for. */
export type LearnedBut = (butRun: string | null) => Promise<Learned>;

/** Runs whose teachings are worked out in one step, where what is kept of them is missing or of another time. */
const STEP = 20;

/** Of so many workshops and runs, what was learned is at hand; each is some 10 kB. */
const AT_HAND = 500;

/**
 * What the runs of a workshop teach. It is kept with each run, as its log was when it was last added to, so no request
 * reads the logs of other runs; what follows from all of it is at hand by version.
 */
export class Taught {
  private readonly learned = new LatestUsed<Learned>(AT_HAND);
  private readonly learnedOfOver = new LatestUsed<Learned>(AT_HAND);
  /** By workshop: what its runs' teachings rest on, all of them. */
  private readonly complete = new LatestUsed<string>(AT_HAND);
  private readonly completing = new Map<string, Promise<void>>();

  constructor(
    private readonly storage: Storage,
    private readonly compute: Compute,
  ) {}

  /**
   * Reads in one snapshot, in which all that the workshop's runs teach is kept. What is missing, as after an update of
   * the rules, is worked out before, beside the event loop and some runs at a time.
   */
  async snapshot<T>(
    workshopId: string,
    read: (tx: Repositories, learned: LearnedBut) => Promise<T>,
  ): Promise<T> {
    for (;;) {
      const done = await this.storage.snapshot(async (tx) =>
        (await this.isComplete(tx, workshopId))
          ? { value: await read(tx, this.learnedIn(tx, workshopId)) }
          : undefined,
      );
      if (done !== undefined) return done.value;
      await this.completeOnce(workshopId);
    }
  }

  /** Works out what is missing, so that the first request need not wait for it. */
  async prepare(workshopId: string): Promise<void> {
    await this.snapshot(workshopId, async () => undefined);
  }

  learnedIn(tx: Repositories, workshopId: string): LearnedBut {
    return async (butRun) => {
      const version = await tx.teachings.version(workshopId, butRun);
      const name = `${workshopId} ${butRun ?? 'all'} ${String(version)}`;
      return this.learned.get(name, async () => {
        const live = await tx.teachings.list(workshopId, { butRun, over: false });
        const over = await this.ofOver(tx, workshopId, butRun);
        return live.length === 0 ? over : learnedFrom(live, over);
      });
    };
  }

  /** The many runs that are over hardly ever change, so those under way are added to what they taught. */
  private async ofOver(tx: Repositories, workshopId: string, butRun: string | null): Promise<Learned> {
    const name = `${workshopId} ${await tx.teachings.overMark(workshopId, butRun)}`;
    return this.learnedOfOver.get(name, async () =>
      learnedFrom(await tx.teachings.list(workshopId, { butRun, over: true })),
    );
  }

  private async isComplete(tx: Repositories, workshopId: string): Promise<boolean> {
    const workshop = await tx.workshops.get(workshopId);
    if (workshop === null) return true;
    const basis = teachingsBasis(workshop.facts);
    if (this.complete.peek(workshopId) === basis && (await tx.teachings.knowsLatest(workshopId))) return true;
    if ((await outstanding(tx, workshopId)).length > 0) return false;
    this.complete.put(workshopId, basis);
    return true;
  }

  /** However many requests find that something is missing, it is worked out once. */
  private completeOnce(workshopId: string): Promise<void> {
    const going = this.completing.get(workshopId);
    if (going !== undefined) return going;
    const begun = this.completeSome(workshopId).finally(() => this.completing.delete(workshopId));
    this.completing.set(workshopId, begun);
    return begun;
  }

  private async completeSome(workshopId: string): Promise<void> {
    const work = await this.storage.snapshot(async (tx) => {
      const facts = (await tx.workshops.get(workshopId))?.facts;
      const runs: { run: StoredRun; through: number; past: PastRun }[] = [];
      for (const { runId, sequence } of (await outstanding(tx, workshopId)).slice(0, STEP)) {
        const run = await tx.runs.get(workshopId, runId);
        if (run !== null) runs.push({ run, through: sequence, past: await pastOf(tx, run) });
      }
      return { facts, runs };
    });
    const { facts, runs } = work;
    if (facts === undefined || runs.length === 0) return;
    const taught = await this.compute.run(
      'teach',
      { past: runs.map(({ past }) => past), facts },
      { workshopId },
    );
    await this.storage.withWorkshopLock(workshopId, async (tx) => {
      // Whoever logged meanwhile has kept what the run teaches now.
      const still = new Set(
        (await outstanding(tx, workshopId)).map((each) => `${each.runId} ${String(each.sequence)}`),
      );
      await tx.teachings.put(
        workshopId,
        runs.flatMap(({ run, through }, i) => {
          if (!still.has(`${run.id} ${String(through)}`)) return [];
          const basis = teachingsBasis(facts, run.snapshot.room);
          return [{ runId: run.id, basis, through, teachings: taught[i]! }];
        }),
      );
    });
  }
}

/** Runs of which nothing is kept, or something that rests on other rules, another room or a shorter log. */
async function outstanding(
  tx: Repositories,
  workshopId: string,
): Promise<{ readonly runId: string; readonly sequence: number }[]> {
  const workshop = await tx.workshops.get(workshopId);
  if (workshop === null) return [];
  const standing = await tx.teachings.standing(workshopId);
  return standing.filter(
    ({ room, sequence, basis, through }) =>
      through !== sequence || basis !== teachingsBasis(workshop.facts, room ?? undefined),
  );
}

/** A run as it teaches. */
async function pastOf(tx: Repositories, { workshopId, id, order, snapshot }: StoredRun): Promise<PastRun> {
  const log = await tx.log.list(workshopId, { runId: id });
  return { order, ...snapshot, log: log.map((line) => ({ id: line.id, entry: line.entry })) };
}
