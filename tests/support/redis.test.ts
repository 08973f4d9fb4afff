import { Redis } from 'ioredis';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { startRedis } from './redis.js';

describe('a Redis for tests', () => {
  afterEach(() => {
    vi.unstubAllEnvs();
    vi.restoreAllMocks();
  });

  it('is empty, keeps nothing, never evicts, and is gone when stopped', async ({ skip }) => {
    vi.stubEnv('TEST_REDIS_URL', '');
    const redis = await startRedis();
    if (redis === null) return skip('there is no redis-server');
    const client = new Redis(redis.url, { retryStrategy: () => null });
    client.on('error', () => undefined);
    expect(await client.dbsize()).toBe(0);
    expect(await client.config('GET', 'maxmemory-policy')).toEqual(['maxmemory-policy', 'noeviction']);
    expect(await client.config('GET', 'save')).toEqual(['save', '']);
    expect(await client.config('GET', 'appendonly')).toEqual(['appendonly', 'no']);
    client.disconnect();
    await redis.stop();
    const after = new Redis(redis.url, { retryStrategy: () => null, lazyConnect: true });
    after.on('error', () => undefined);
    await expect(after.connect()).rejects.toThrow();
  });

  it('is the one named by TEST_REDIS_URL when there is one', async () => {
    vi.stubEnv('TEST_REDIS_URL', 'redis://127.0.0.1:6999');
    expect((await startRedis())?.url).toBe('redis://127.0.0.1:6999');
  });

  it('is left out with a warning where there is no redis-server', async () => {
    vi.stubEnv('TEST_REDIS_URL', '');
    vi.stubEnv('BENCHTIDE_REQUIRE', '');
    vi.stubEnv('PATH', '/nowhere');
    const warn = vi.spyOn(console, 'warn').mockImplementation(() => undefined);
    expect(await startRedis()).toBeNull();
    expect(warn).toHaveBeenCalledTimes(1);
  });

  it('must be there when it is required', async () => {
    vi.stubEnv('TEST_REDIS_URL', '');
    vi.stubEnv('BENCHTIDE_REQUIRE', 'chromium,redis');
    vi.stubEnv('PATH', '/nowhere');
    await expect(startRedis()).rejects.toThrow('BENCHTIDE_REQUIRE asks for redis');
  });
});
