import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countdownText, timingOf } from './countdown.js';

const minute = 60_000;
const opens = Date.parse('2026-11-27T16:00:00Z');
const stage = { opensAt: '2026-11-27T16:00:00Z', lastCallAt: '2026-11-27T18:00:00Z' };

describe('how a stage stands', () => {
  it('counts to its opening, and on to its last call', () => {
    expect(timingOf(stage, opens - 5 * minute)).toEqual({
      kind: 'ahead',
      opensIn: 5 * minute,
      lastCallIn: 125 * minute,
    });
  });

  it('is open from its opening to its last call, both included, and urgent in the last half hour', () => {
    expect(timingOf(stage, opens)).toEqual({ kind: 'open', lastCallIn: 120 * minute, isUrgent: false });
    expect(timingOf(stage, opens + 89 * minute)).toMatchObject({ isUrgent: false });
    expect(timingOf(stage, opens + 90 * minute)).toMatchObject({ isUrgent: true });
    expect(timingOf(stage, opens + 120 * minute)).toMatchObject({ kind: 'open', lastCallIn: 0 });
  });

  it('says for how long it has been too late', () => {
    expect(timingOf(stage, opens + 121 * minute)).toEqual({ kind: 'over', since: minute });
  });

  it('is never too late where nothing closes it', () => {
    const open = timingOf({ ...stage, lastCallAt: null }, opens + 1e9);
    expect(open).toEqual({ kind: 'open', lastCallIn: null, isUrgent: false });
  });
});

describe('a countdown as text', () => {
  it.each([
    [0, '00:00'],
    [999, '00:00'],
    [309_000, '05:09'],
    [3_599_000, '59:59'],
    [3_600_000, '1:00:00'],
    [3_909_000, '1:05:09'],
    [86_399_000, '23:59:59'],
  ])('%i ms: %s', (ms, text) => {
    expect(countdownText(ms)).toBe(text);
  });

  it('can be read back to the second below a day', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 86_399_999 }), (ms) => {
        const parts = countdownText(ms).split(':').map(Number);
        const seconds = parts.reduce((sum, part) => sum * 60 + part, 0);
        expect(seconds).toBe(Math.floor(ms / 1000));
      }),
    );
  });
});
