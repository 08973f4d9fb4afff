import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import { WorkshopBusyError, type Storage } from '#storage';
import { testDatabase, type TestDatabase } from '../support/database.js';
import { facts, mould, planToSave, seedRun } from '../support/database-samples.js';

let database: TestDatabase;
let storage: Storage;
let workshopId: string;
let runId: string;
beforeAll(async () => {
  database = await testDatabase();
  storage = await database.open({ poolSize: 10 });
});
beforeEach(async () => {
  ({ workshopId, runId } = await seedRun(storage));
});
afterAll(() => database.drop());

const at = '2026-11-27T17:00:00.000Z';

describe('idempotency.once', () => {
  it('does the work once for twenty requests at once, and answers all alike', async () => {
    const asking = Array.from({ length: 20 }, () =>
      storage.idempotency.once(workshopId, 'k1', 'hash', async (tx) => {
        const { id } = await tx.log.append(workshopId, runId, { kind: 'not-yet', stage: 'pour-base', at });
        return { status: 201, response: { id } };
      }),
    );
    const answers = await Promise.all(asking);
    const logged = await storage.log.list(workshopId);
    expect(logged).toHaveLength(1);
    expect(answers.filter((answer) => answer.ok && !answer.replayed)).toHaveLength(1);
    for (const answer of answers) {
      expect(answer).toMatchObject({ ok: true, status: 201, response: { id: logged[0]?.id } });
    }
  });

  it('refuses the same key for another request', async () => {
    const work = vi.fn(async () => ({ status: 204, response: null }));
    await storage.idempotency.once(workshopId, 'k2', 'hash', work);
    const other = await storage.idempotency.once(workshopId, 'k2', 'other hash', work);
    expect(other).toEqual({ ok: false, reason: 'key-reused' });
    expect(await storage.idempotency.once(workshopId, 'k2', 'hash', work)).toEqual({
      ok: true,
      replayed: true,
      status: 204,
      response: null,
    });
    expect(work).toHaveBeenCalledTimes(1);
  });

  it('keeps the keys of workshops apart', async () => {
    const other = await seedRun(storage);
    const work = vi.fn(async () => ({ status: 200, response: 'done' }));
    await storage.idempotency.once(workshopId, 'k3', 'hash', work);
    await storage.idempotency.once(other.workshopId, 'k3', 'another', work);
    expect(work).toHaveBeenCalledTimes(2);
  });

  it('frees the key when the work fails, for one that was waiting as well', async () => {
    let fail = (): void => undefined;
    const failing = storage.idempotency.once(workshopId, 'k4', 'hash', async () => {
      await new Promise<void>((resolve) => (fail = resolve));
      throw new Error('out of lye');
    });
    const failed = expect(failing).rejects.toThrow('out of lye');
    await vi.waitFor(async () => expect(await openTransactions()).toBe(1));
    const second = storage.idempotency.once(workshopId, 'k4', 'hash', async () => ({
      status: 200,
      response: 2,
    }));
    await vi.waitFor(async () => expect(await waitingForRow()).toBe(1));
    fail();
    await failed;
    expect(await second).toEqual({ ok: true, replayed: false, status: 200, response: 2 });
  });
});

describe('idempotency.once, asked inside its own work', () => {
  it('says so instead of waiting for itself', async () => {
    const again = storage.idempotency.once(workshopId, 'k6', 'hash', async (tx) => {
      await tx.idempotency.once(workshopId, 'k6', 'hash', async () => ({ status: 200, response: 1 }));
      return { status: 200, response: 2 };
    });
    await expect(again).rejects.toThrow('The idempotency key k6 is used inside its own work.');
    expect(await storage.idempotency.find(workshopId, { key: 'k6', requestHash: 'hash' })).toBeNull();
  });
});

describe('idempotency.find', () => {
  const asked = { key: 'k7', requestHash: 'hash' };

  it('gives what was answered to this request under this key in this workshop, and nothing else', async () => {
    const answer = { status: 201, response: { made: [1, null] } };
    await storage.idempotency.once(workshopId, 'k7', 'hash', async () => answer);
    const find = (key: typeof asked, workshop = workshopId) => storage.idempotency.find(workshop, key);
    expect(await find(asked)).toEqual({ ok: true, ...answer, revisionId: null });
    expect(await find({ ...asked, requestHash: 'other' })).toEqual({ ok: false, reason: 'key-reused' });
    expect(await find({ ...asked, key: 'k8' })).toBeNull();
    expect(await find(asked, (await seedRun(storage)).workshopId)).toBeNull();
  });

  it('gives nothing while the work is not over', async () => {
    await storage.idempotency.once(workshopId, 'k7', 'hash', async (tx) => {
      expect(await tx.idempotency.find(workshopId, asked)).toBeNull();
      return { status: 200, response: null };
    });
    expect(await storage.idempotency.find(workshopId, asked)).toMatchObject({ status: 200, response: null });
  });

  it('finds what was kept beside the work, under a key that is then used', async () => {
    const kept = { ...asked, status: 200, response: ['kept'], revisionId: null };
    await storage.idempotency.keep(workshopId, kept);
    expect(await storage.idempotency.find(workshopId, asked)).toEqual({
      ...{ ok: true, status: 200, response: ['kept'], revisionId: null },
    });
    await expect(storage.idempotency.keep(workshopId, kept)).rejects.toThrow();
  });
});

describe('withWorkshopLock', () => {
  it('lets one at a time into a workshop, and others into other workshops', async () => {
    let inside = 0;
    let most = 0;
    const enter = () =>
      storage.withWorkshopLock(workshopId, async (tx) => {
        most = Math.max(most, (inside += 1));
        const found = await tx.workshops.get(workshopId);
        await tx.workshops.update(workshopId, found?.version ?? 0, facts);
        inside -= 1;
      });
    await Promise.all(Array.from({ length: 8 }, enter));
    expect(most).toBe(1);
    expect((await storage.workshops.get(workshopId))?.version).toBe(9);

    const other = await seedRun(storage);
    await storage.withWorkshopLock(workshopId, () =>
      storage.withWorkshopLock(other.workshopId, async () => undefined),
    );
  });

  it('lets keys be added meanwhile, and tells for how long the workshop was held', async () => {
    const held: number[] = [];
    const watched = await database.open({ onLockHeld: (milliseconds) => held.push(milliseconds) });
    await database.sql("SET lock_timeout = '1s'");
    await watched.withWorkshopLock(workshopId, async () => {
      const insert = `INSERT INTO access_key (id, workshop_id, label, hash, created_at)
        VALUES (gen_random_uuid(), $1, 'phone', sha256('beside'), now())`;
      await database.sql(insert, [workshopId]);
      expect(held).toEqual([]);
    });
    expect(held).toEqual([expect.any(Number)]);
    const failed = watched.withWorkshopLock(workshopId, async () => Promise.reject(new Error('power cut')));
    await expect(failed).rejects.toThrow('power cut');
    expect(held).toHaveLength(2);
  });

  it('goes together with once in one transaction', async () => {
    const work = storage.withWorkshopLock(workshopId, async (tx) => {
      await tx.idempotency.once(workshopId, 'k5', 'hash', async () => ({ status: 200, response: 1 }));
      throw new Error('power cut');
    });
    await expect(work).rejects.toThrow('power cut');
    const again = await storage.idempotency.once(workshopId, 'k5', 'other', async () => ({
      status: 200,
      response: 2,
    }));
    expect(again).toMatchObject({ ok: true, replayed: false });
  });

  it('says so when the workshop stays busy, and when there is none', async () => {
    const impatient = await database.open({ lockTimeoutMs: 100 });
    await storage.withWorkshopLock(workshopId, async () => {
      const second = impatient.withWorkshopLock(workshopId, async () => undefined);
      await expect(second).rejects.toBeInstanceOf(WorkshopBusyError);
    });
    await expect(storage.withWorkshopLock(runId, async () => undefined)).rejects.toThrow(
      'There is no workshop',
    );
  });
});

async function openTransactions(): Promise<number> {
  const rows = await database.sql(`SELECT 1 FROM pg_stat_activity
    WHERE datname = current_database() AND state = 'idle in transaction'`);
  return rows.length;
}

async function waitingForRow(): Promise<number> {
  const rows = await database.sql(`SELECT 1 FROM pg_stat_activity
    WHERE datname = current_database() AND wait_event_type = 'Lock'`);
  return rows.length;
}

describe('snapshot', () => {
  it('sees everything as it was at its first query, and stores nothing', async () => {
    await storage.snapshot(async (tx) => {
      expect((await tx.workshops.get(workshopId))?.version).toBe(1);
      await storage.workshops.update(workshopId, 1, facts);
      expect((await tx.workshops.get(workshopId))?.version).toBe(1);
    });
    expect((await storage.workshops.get(workshopId))?.version).toBe(2);
    const write = storage.snapshot((tx) => tx.workshops.update(workshopId, 2, facts));
    await expect(write).rejects.toThrow(/read-only/);
  });
});

describe('planBasis', () => {
  it('is another one after everything that a plan is made from, and the same after what it is not', async () => {
    const read = () => storage.planBasis.read(workshopId, null);
    const seen = new Set([await read()]);
    const moved = async (step: () => Promise<unknown>): Promise<void> => {
      const before = seen.size;
      await step();
      seen.add(await read());
      expect(seen.size, step.toString()).toBe(before + 1);
    };
    const pour = { kind: 'not-yet', stage: 'pour-base', at: '2026-11-27T17:00:00Z' } as const;
    await moved(() => storage.workshops.update(workshopId, 1, facts));
    await moved(() => storage.library.moulds.create(workshopId, mould));
    await moved(() => storage.log.append(workshopId, runId, pour));
    await moved(() => storage.plans.save(workshopId, planToSave(runId, [])));
    await moved(() => storage.plans.save(workshopId, planToSave(runId, [])));
    await moved(() => storage.runs.update(workshopId, runId, 1, { state: 'making' }));
    await moved(() => storage.runs.update(workshopId, runId, 2, { state: 'abandoned' }));
    // A run that is over counts only where the plan is its own.
    const before = [await read(), await storage.planBasis.read(workshopId, runId)];
    await storage.log.append(workshopId, runId, pour);
    await storage.keys.create(workshopId, 'phone');
    expect(await read()).toBe(before[0]);
    expect(await storage.planBasis.read(workshopId, runId)).not.toBe(before[1]);
    expect(await storage.planBasis.read(runId, null)).toBeNull();
  });

  it('is another one once the key of an answer is used', async () => {
    const read = () => storage.planBasis.read(workshopId, null, 'basis-key');
    const [before, other] = [await read(), await storage.planBasis.read(workshopId, null)];
    const answer = { key: 'basis-key', requestHash: 'hash', status: 201, response: null, revisionId: null };
    await storage.idempotency.keep(workshopId, answer);
    expect(await read()).not.toBe(before);
    expect(await storage.planBasis.read(workshopId, null)).toBe(other);
  });
});
