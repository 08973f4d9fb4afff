import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { withTimeout } from './with-timeout.js';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

describe('waiting for work, but not for ever', () => {
  it('gives what the work gives, and leaves no timer behind that keeps the process up', async () => {
    expect(await withTimeout(1_000, 'add', Promise.resolve(7))).toBe(7);
    await expect(withTimeout(1_000, 'add', Promise.reject(new Error('refused')))).rejects.toThrow('refused');
    expect(vi.getTimerCount()).toBe(0);
  });

  it('waits as long as it may, and then says what took too long', async () => {
    let late: unknown;
    const waiting = withTimeout(1_000, 'add', new Promise(() => undefined)).catch((error: unknown) => {
      late = error;
    });
    await vi.advanceTimersByTimeAsync(999);
    expect(late).toBeUndefined();
    await vi.advanceTimersByTimeAsync(1);
    await waiting;
    expect(late).toMatchObject({ name: 'TookTooLongError', message: 'add: no answer within 1000 ms' });
  });
});
