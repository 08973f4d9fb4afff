import { describe, expect, it } from 'vitest';
import { newId } from './session.js';

describe('newId', () => {
  it('sorts ids in the order they were made, also within one millisecond', () => {
    const now = (): Date => new Date('2026-11-25T09:00:00Z');
    const ids = Array.from({ length: 200 }, () => newId({ now }));
    expect(new Set(ids).size).toBe(200);
    expect(ids.toSorted()).toEqual(ids);
  });

  it('sorts them by time first', () => {
    const at = (instant: string): string => newId({ now: () => new Date(instant) });
    const later = at('2026-11-25T09:00:00.001Z');
    const earlier = at('2026-11-25T09:00:00.000Z');
    expect(earlier < later).toBe(true);
  });
});
