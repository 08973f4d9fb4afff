import { describe, expect, it } from 'vitest';
import type { InboxEntry } from '#contract';
import { withNudge } from './nudge-news.js';

const now = Date.parse('2026-11-27T18:00:00Z');

function nudge(sequence: number, stage: string, deliveredAt = '2026-11-27T17:59:00Z'): InboxEntry {
  const about = { runId: 'r', run: 'tiles', stage, attempt: 1, kind: 'time-for-it' } as const;
  const times = { dueAt: deliveredAt, deliveredAt };
  const message = { code: 'nudge.now', stage, lastCallAt: null, saidAt: deliveredAt } as const;
  const id = `id-${String(sequence)}`;
  return { id, ...about, message, timeZone: 'UTC', status: 'delivered', ...times, sequence };
}

describe('the nudges on the page', () => {
  it('show each once, the newest last', () => {
    const shown = [nudge(1, 'pour'), nudge(2, 'unmould')].reduce<InboxEntry[]>(
      (all, entry) => withNudge(all, entry, now),
      [],
    );
    expect(shown.map(({ stage }) => stage)).toEqual(['pour', 'unmould']);
    expect(withNudge(shown, nudge(2, 'unmould'), now)).toEqual(shown);
  });

  it('leave out what came while nobody was there', () => {
    expect(withNudge([], nudge(1, 'pour', '2026-11-27T17:40:00Z'), now)).toEqual([]);
    expect(withNudge([], nudge(1, 'pour', '2026-11-27T17:45:00Z'), now)).toHaveLength(1);
  });

  it('say the latest about a stage only', () => {
    const shown = withNudge([nudge(1, 'pour'), nudge(2, 'dip')], nudge(3, 'pour'), now);
    expect(shown.map(({ id }) => id)).toEqual(['id-2', 'id-3']);
  });

  it('never cover the page', () => {
    const shown = [1, 2, 3, 4, 5].reduce<InboxEntry[]>(
      (all, n) => withNudge(all, nudge(n, `stage-${String(n)}`), now),
      [],
    );
    expect(shown.map(({ sequence }) => sequence)).toEqual([3, 4, 5]);
  });
});
