import { randomUUID } from 'node:crypto';
import type { DeliveredNudge, NudgeStore, WaitingNudge } from '#nudges';

interface Row extends WaitingNudge {
  readonly status: 'waiting' | 'delivered' | 'cancelled';
}

/** A nudge store in memory with the rules of the real one: a claim succeeds once, and only on time. */
export class MemoryStore implements NudgeStore {
  readonly delivered: DeliveredNudge[] = [];
  /** Every claim asked for, successful or not. */
  readonly claims: { id: string; version: number }[] = [];
  readonly #rows = new Map<string, Row>();

  add(dueAt: Date): WaitingNudge {
    return this.#put({ id: randomUUID(), version: 1, dueAt, status: 'waiting' });
  }

  move({ id }: WaitingNudge, dueAt: Date): WaitingNudge {
    const row = this.#row(id);
    return this.#put({ ...row, version: row.version + 1, dueAt });
  }

  cancel({ id }: WaitingNudge): void {
    this.#put({ ...this.#row(id), status: 'cancelled' });
  }

  async due(limit: number, before: Date): Promise<readonly WaitingNudge[]> {
    return [...this.#rows.values()]
      .filter(({ status, dueAt }) => status === 'waiting' && dueAt < before)
      .sort((a, b) => a.dueAt.getTime() - b.dueAt.getTime())
      .slice(0, limit);
  }

  /** Needs plans, which are not kept here; tested over the real store. */
  async undoEarly(_now: Date): Promise<number> {
    return 0;
  }

  async readerOf(): Promise<Awaited<ReturnType<NudgeStore['readerOf']>>> {
    return { language: 'en', units: 'metric', timeZone: 'UTC' };
  }

  async claim(id: string, version: number, now: Date): Promise<DeliveredNudge | null> {
    this.claims.push({ id, version });
    const row = this.#rows.get(id);
    if (row?.status !== 'waiting' || row.version !== version || row.dueAt > now) return null;
    this.#put({ ...row, status: 'delivered' });
    const nudge = {
      id,
      workshopId: randomUUID(),
      runId: randomUUID(),
      runTitle: 'Tiles',
      stage: 'unmould',
      attempt: 1,
      kind: 'window-opens' as const,
      title: 'Unmould',
      startAt: row.dueAt,
      lastCallAt: null,
      dueAt: row.dueAt,
      deliveredAt: now,
      sequence: this.delivered.length + 1,
    };
    this.delivered.push(nudge);
    return nudge;
  }

  #put(row: Row): WaitingNudge {
    this.#rows.set(row.id, row);
    return { id: row.id, version: row.version, dueAt: row.dueAt };
  }

  #row(id: string): Row {
    const row = this.#rows.get(id);
    if (row === undefined) throw new Error(`There is no nudge ${id}.`);
    return row;
  }
}
