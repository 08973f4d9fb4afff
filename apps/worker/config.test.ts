import { describe, expect, it } from 'vitest';
import { readConfig } from './config.js';

const DATABASE_URL = 'postgresql://maker:secret@db:5432/benchtide';

describe('a worker’s settings', () => {
  it('are the database, and the queue in it unless there is a Redis', () => {
    expect(readConfig({ DATABASE_URL, REDIS_URL: ' ' })).toEqual({
      databaseUrl: DATABASE_URL,
      redisUrl: undefined,
      log: 'info',
    });
    expect(readConfig({ DATABASE_URL, REDIS_URL: 'redis://queue', BENCHTIDE_LOG: 'debug' })).toEqual({
      databaseUrl: DATABASE_URL,
      redisUrl: 'redis://queue',
      log: 'debug',
    });
  });

  it.each([undefined, '', '  '])('say what to do when there is no database (%j)', (given) => {
    expect(() => readConfig({ DATABASE_URL: given })).toThrow(/^DATABASE_URL is not set\. .*postgresql:\/\//);
  });

  it('that cannot be used are all named, and no password is repeated', () => {
    const read = () =>
      readConfig({ DATABASE_URL: 'mysql://maker:hunter2@db/x', REDIS_URL: 'queue', BENCHTIDE_LOG: 'loud' });
    expect(read).toThrow(
      /DATABASE_URL cannot[^]*REDIS_URL cannot[^]*BENCHTIDE_LOG cannot.*error, warn, info, debug/,
    );
    expect(read).not.toThrow(/hunter2/);
  });
});
