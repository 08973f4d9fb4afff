import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';

const NOW = Date.parse('2026-11-27T18:25:00Z');

describe('the clock of the server', () => {
  const stored = new Map<string, string>();

  beforeEach(() => {
    vi.useFakeTimers({ now: NOW });
    stored.clear();
    vi.stubGlobal('localStorage', {
      getItem: (key: string) => stored.get(key) ?? null,
      setItem: (key: string, value: string) => stored.set(key, value),
    });
  });
  afterEach(() => {
    vi.useRealTimers();
    vi.unstubAllGlobals();
  });

  it('goes by the clock of the device until it is heard', async () => {
    expect((await opened()).serverNow()).toBe(NOW);
  });

  it('is kept for a page that is opened out of its reach', async () => {
    (await opened()).heardFrom(answer('Fri, 27 Nov 2026 17:00:00 GMT'));
    expect((await opened()).serverNow()).toBe(Date.parse('2026-11-27T17:00:00.500Z'));
  });

  it('counts as it is heard, whatever was kept', async () => {
    stored.set('benchtide.clock-ahead', '3000');
    const page = await opened();
    page.heardFrom(answer('Fri, 27 Nov 2026 18:25:01 GMT'));
    expect(page.serverNow()).toBe(NOW + 1_500);
  });

  it('needs no place to keep it', async () => {
    vi.stubGlobal('localStorage', undefined);
    const page = await opened();
    page.heardFrom(answer('Fri, 27 Nov 2026 17:00:00 GMT'));
    expect(page.serverNow()).toBe(Date.parse('2026-11-27T17:00:00.500Z'));
  });

  /** The module anew, as a page that is opened has it. */
  function opened(): Promise<typeof import('./server-time.js')> {
    vi.resetModules();
    return import('./server-time.js');
  }

  function answer(date: string): Response {
    return new Response(null, { headers: { date } });
  }
});
