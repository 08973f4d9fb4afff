import { isAbsolute } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readConfig } from './config.js';

describe('settings', () => {
  it('need nothing to be set, and take an empty variable for one that is not', () => {
    const config = readConfig({ DATABASE_URL: '', PORT: ' ' });
    expect(config).toMatchObject({ port: 4780, bind: '127.0.0.1', worker: true, log: 'info' });
    expect(config.databaseUrl).toBeUndefined();
    expect(isAbsolute(config.home)).toBe(true);
    expect(Object.isFrozen(config)).toBe(true);
  });

  it('are read from the environment', () => {
    const config = readConfig({
      PORT: '8080',
      BENCHTIDE_BIND: '0.0.0.0',
      BENCHTIDE_HOME: '/var/lib/benchtide',
      DATABASE_URL: 'postgresql://maker:secret@db:5432/benchtide',
      REDIS_URL: 'redis://queue:6379',
      BENCHTIDE_WORKER: 'off',
      BENCHTIDE_LOG: 'warn',
      BENCHTIDE_THREADS: '8',
      BENCHTIDE_PLAN_SECONDS: '10',
      BENCHTIDE_SEARCH_SECONDS: '30',
    });
    expect(config).toEqual({
      port: 8080,
      bind: '0.0.0.0',
      home: '/var/lib/benchtide',
      databaseUrl: 'postgresql://maker:secret@db:5432/benchtide',
      redisUrl: 'redis://queue:6379',
      worker: false,
      log: 'warn',
      compute: { threads: 8, planS: 10, searchS: 30 },
    });
  });

  it.each([
    ['PORT', '70000', '“70000”', '1 to 65535'],
    ['PORT', '80a', '“80a”', 'whole number'],
    ['BENCHTIDE_BIND', 'everyone', '“everyone”', 'IP address'],
    ['BENCHTIDE_WORKER', 'yes', '“yes”', 'on or off'],
    ['BENCHTIDE_LOG', 'loud', '“loud”', 'error, warn, info, debug'],
    ['BENCHTIDE_THREADS', '1', '“1”', '2 to 64'],
    ['BENCHTIDE_PLAN_SECONDS', 'ten', '“ten”', '1 to 300'],
    ['BENCHTIDE_SEARCH_SECONDS', '0', '“0”', '1 to 3600'],
    ['REDIS_URL', 'queue:6379', 'no such URL', 'redis://'],
  ])('that cannot be used are named with value and what is accepted: %s=%s', (name, value, shown, says) => {
    expect(() => readConfig({ [name]: value })).toThrow(
      expect.objectContaining({
        status: 64,
        message: expect.stringMatching(new RegExp(`^${name} is ${shown}; accepted: .*${says}`)) as string,
      }),
    );
  });

  it('are all named at once, and no password is repeated', () => {
    const read = (): unknown => readConfig({ PORT: 'x', DATABASE_URL: 'mysql://maker:hunter2@db/benchtide' });
    expect(read).toThrow(/PORT is “x”[^]*DATABASE_URL is no such URL/);
    expect(read).not.toThrow(/hunter2/);
  });
});
