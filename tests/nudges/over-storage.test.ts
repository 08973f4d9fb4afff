import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startNudges, type Nudges } from '#nudges';
import type { DesiredNudge, Storage } from '#storage';
import { nudge, planToSave, seedRun } from '../support/database-samples.js';
import { testDatabase } from '../support/database.js';
import { HandClock } from './support/hand-clock.js';
import { openQueueHomes } from './support/queue-homes.js';
import { QuietLog } from './support/quiet-log.js';

const database = await testDatabase();
const homes = await openQueueHomes(database, 2);
afterAll(async () => {
  await Promise.all(homes.map((home) => home.stop()));
  await database.drop();
});

describe.each(homes)('nudges of a real plan over $name', (home) => {
  const clock = new HandClock('2026-11-27T12:00:00Z');
  const sent: string[] = [];
  let storage: Storage;
  let workshopId: string;
  let runId: string;
  let workers: Nudges[];

  beforeAll(async () => {
    await home.wipe();
    storage = await database.open({ now: () => clock.now() });
    // The clock begins anew, and what the other home's test has delivered lies ahead of it.
    await database.sql("UPDATE run SET state = 'abandoned'");
    ({ workshopId, runId } = await seedRun(storage));
    const bell = { name: 'bell', send: async ({ title }: { title: string }) => void sent.push(title) };
    workers = await Promise.all(
      [1, 2].map(() =>
        startNudges({
          store: storage.nudges,
          ...home.target,
          clock,
          log: new QuietLog(),
          channels: [bell],
          concurrency: 3,
          sweepEveryMs: 60 * 60_000,
        }),
      ),
    );
  });
  afterAll(async () => {
    await Promise.all(workers.map((worker) => worker.stop()));
  });

  const replan = async (...nudges: DesiredNudge[]): Promise<void> => {
    const saved = await storage.plans.save(workshopId, planToSave(runId, nudges));
    if (saved === null) throw new Error('The run is gone.');
    await workers[0]?.queue.enqueue(saved.moved);
  };
  const until = async (instant: string): Promise<void> => {
    clock.advance((Date.parse(instant) - clock.now().getTime()) / 60_000);
    await Promise.all(workers.map((worker) => worker.sweep()));
    await workers[0]?.idle();
  };
  const inbox = async (): Promise<string[]> =>
    (await storage.nudges.inboxSince(workshopId, 0)).map(
      ({ title, deliveredAt }) => `${deliveredAt.toISOString()} ${title}`,
    );

  it('fills the inbox in order, once each, at the times of the last plan', async () => {
    const opens = nudge({ kind: 'window-opens', title: 'Opens.', dueAt: new Date('2026-11-27T18:00:00Z') });
    const last = nudge({ kind: 'last-call', title: 'Last call.', dueAt: new Date('2026-11-27T21:00:00Z') });
    const gone = nudge({
      kind: 'time-for-it',
      title: 'Not any more.',
      dueAt: new Date('2026-11-27T19:00:00Z'),
    });
    await replan(opens, last, gone);
    await replan(opens, { ...last, dueAt: new Date('2026-11-27T22:30:00Z') });

    await until('2026-11-27T18:00:00Z');
    expect(await inbox()).toEqual(['2026-11-27T18:00:00.000Z Opens.']);
    await until('2026-11-27T22:00:00Z');
    expect(await inbox()).toHaveLength(1);
    await until('2026-11-27T22:30:00Z');
    expect(await inbox()).toEqual(['2026-11-27T18:00:00.000Z Opens.', '2026-11-27T22:30:00.000Z Last call.']);
    expect(sent).toEqual(['Opens.', 'Last call.']);
  });

  it('loses none and repeats none to a clock that slips ahead by weeks and comes back', async () => {
    const before = (await inbox()).length;
    const kinds = ['window-opens', 'time-for-it', 'last-call'] as const;
    const at = (hour: number): string => `2026-11-28T${String(hour)}:00:00Z`;
    await replan(...kinds.map((kind, i) => nudge({ kind, title: `${kind}.`, dueAt: new Date(at(10 + i)) })));
    await until(at(10));
    const told = await inbox();
    expect(told).toHaveLength(before + 1);

    await until('2026-12-18T10:00:00Z');
    expect(await inbox()).toHaveLength(before + 3);
    await until('2026-11-28T10:02:00Z');
    // The first was told in time; the others were too early, and come again when they are due.
    expect(await inbox()).toEqual(told);
    await until(at(11));
    await until(at(12));
    const came = (text: string): number => sent.filter((each) => each === text).length;
    expect((await inbox()).slice(before)).toEqual([
      '2026-11-28T10:00:00.000Z window-opens.',
      '2026-11-28T11:00:00.000Z time-for-it.',
      '2026-11-28T12:00:00.000Z last-call.',
    ]);
    expect(kinds.map((kind) => came(`${kind}.`))).toEqual([1, 2, 2]);
    expect(await workers[0]?.sweep()).toEqual({ waiting: 0, overdue: 0 });
  });
});
