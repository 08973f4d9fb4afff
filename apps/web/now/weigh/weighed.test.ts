import { describe, expect, it } from 'vitest';
import { latest, readWeighed, tickOf } from './weighed.js';

describe('what was ticked', () => {
  it('is ticked as long as the amount is the same, and says so once it is another', () => {
    const ticks = { 'fats olive': 412.34 };
    expect(tickOf(ticks, 'fats olive', 412.34)).toBe('ticked');
    expect(tickOf(ticks, 'fats olive', 412.36)).toBe('ticked');
    expect(tickOf(ticks, 'fats olive', 420)).toBe('changed');
    expect(tickOf(ticks, 'fats coconut', 412.34)).toBe('open');
  });

  it('is read from whatever stands in the store, without what makes no sense there', () => {
    const sound = { at: 5, ticks: { 'lye naoh': 74.6 } };
    expect(readWeighed({ one: sound, two: { at: 'x', ticks: {} }, three: null })).toEqual({ one: sound });
    expect(readWeighed({ one: { at: 5, ticks: { 'lye naoh': 74.6, 'lye water': 'much' } } })).toEqual({
      one: sound,
    });
    for (const kept of [undefined, null, 'text', 7]) expect(readWeighed(kept)).toEqual({});
  });

  it('is forgotten of the oldest batches only', () => {
    const all = Object.fromEntries(
      Array.from({ length: 80 }, (_, i) => [`batch ${String(i)}`, { at: i, ticks: {} }]),
    );
    const left = Object.keys(latest(all));
    expect(left).toHaveLength(60);
    expect(left).toContain('batch 79');
    expect(left).not.toContain('batch 19');
  });
});
