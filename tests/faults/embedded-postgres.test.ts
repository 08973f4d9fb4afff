import { spawn } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, it, onTestFinished, vi } from 'vitest';
import { DatabaseStartError, HomeInUseError, startEmbeddedPostgres, type EmbeddedPostgres } from '#storage';
import { startedOwner, startOwner } from '../support/embedded-owner.js';

const isRoot = process.getuid?.() === 0;
const NOBODY = 65534;

let home: string;
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'benchtide-test-home-'));
  chmodSync(home, 0o711);
});
const running: EmbeddedPostgres[] = [];
afterEach(async () => {
  for (const postgres of running.splice(0)) await postgres.stop();
  rmSync(home, { recursive: true, force: true });
});

const start = async (folder = home): Promise<EmbeddedPostgres> => {
  const postgres = await startEmbeddedPostgres({
    home: folder,
    log: () => undefined,
    settings: { fsync: false },
  });
  running.push(postgres);
  return postgres;
};

async function query(url: string, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: url });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(sql)).rows;
  } finally {
    await client.end();
  }
}

const postmasterPid = (dataFolder: string): number =>
  Number(readFileSync(join(dataFolder, 'postmaster.pid'), 'utf8').split('\n')[0]);
/** A zombie, which nobody has asked after yet, is dead (proc(5): the state follows the name). */
const lives = (pid: number): boolean =>
  existsSync(`/proc/${pid}/stat`) && !/\) [ZX] /.test(readFileSync(`/proc/${pid}/stat`, 'utf8'));

describe('in good order', () => {
  it('keeps its data over a stop and a start, and leaves no process behind', async () => {
    const first = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
    await query(first.databaseUrl, 'CREATE TABLE kept AS SELECT 1 AS n');
    const pid = postmasterPid(first.dataFolder);
    await first.stop();
    expect(lives(pid)).toBe(false);
    expect(existsSync(join(home, 'lock'))).toBe(false);
    const second = await start();
    expect(second.adopted).toBe(false);
    expect(await query(second.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
  });

  it('listens to this machine only, asks for the password, and keeps it to its owner', async () => {
    const postgres = await start();
    const wrong = new URL(postgres.databaseUrl);
    wrong.password = 'wrong';
    await expect(query(wrong.toString(), 'SELECT 1')).rejects.toThrow('password authentication failed');
    expect(await query(postgres.databaseUrl, 'SHOW listen_addresses')).toEqual([
      { listen_addresses: '127.0.0.1' },
    ]);
    const password = statSync(join(dirname(postgres.dataFolder), 'password'));
    expect(password.mode & 0o777).toBe(0o600);
    expect(statSync(postgres.dataFolder).mode & 0o777).toBe(0o700);
  });

  it('stores in Unicode and compares by code point, whatever the machine is set to', async () => {
    const { databaseUrl } = await start();
    const settings = await query(
      databaseUrl,
      `SELECT pg_encoding_to_char(encoding) AS encoding, datlocale, current_setting('timezone') AS zone
       FROM pg_database WHERE datname = current_database()`,
    );
    expect(settings).toEqual([{ encoding: 'UTF8', datlocale: 'C.UTF-8', zone: 'UTC' }]);
  });
});

describe('after a kill', () => {
  it('of the owner: the database goes down by itself and the next start has everything', async () => {
    const owner = await startedOwner({ home });
    await query(owner.databaseUrl, 'CREATE TABLE kept AS SELECT generate_series(1, 1000) AS n');
    const pid = postmasterPid(owner.dataFolder);
    await owner.kill();
    await vi.waitFor(() => expect(lives(pid)).toBe(false), 10_000);
    const next = await start();
    expect(next.adopted).toBe(false);
    expect(await query(next.databaseUrl, 'SELECT count(*)::int FROM kept')).toEqual([{ count: 1000 }]);
  });

  it('of the owner, started anew at once while the database is still going down', async () => {
    const owner = await startedOwner({ home });
    await query(owner.databaseUrl, 'CREATE TABLE kept AS SELECT 1 AS n');
    await owner.kill();
    const next = await start();
    expect(await query(next.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
  });

  it('of an owner whose database lives on: it is adopted as it is, and stopped by the new owner', async () => {
    const owner = await startedOwner({ home, withoutSetpriv: true });
    await query(owner.databaseUrl, 'CREATE TABLE kept AS SELECT 1 AS n');
    const pid = postmasterPid(owner.dataFolder);
    await owner.kill();
    expect(lives(pid)).toBe(true);
    const next = await startEmbeddedPostgres({ home, log: () => undefined });
    expect(next.adopted).toBe(true);
    expect(next.databaseUrl).toBe(owner.databaseUrl);
    expect(await query(next.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
    await next.stop();
    expect(lives(pid)).toBe(false);
  });

  it('of owner and database in the middle of writing: every acknowledged row is there', async () => {
    const owner = await startedOwner({ home, withoutSetpriv: true });
    await query(owner.databaseUrl, 'CREATE TABLE kept (n int PRIMARY KEY)');
    const client = new pg.Client({ connectionString: owner.databaseUrl });
    client.on('error', () => undefined);
    await client.connect();
    let acknowledged = 0;
    const writing = (async () => {
      for (let n = 1; ; n += 1) {
        await client.query('INSERT INTO kept VALUES ($1)', [n]);
        acknowledged = n;
      }
    })().catch(() => undefined);
    await vi.waitFor(() => expect(acknowledged).toBeGreaterThan(50), 10_000);
    process.kill(postmasterPid(owner.dataFolder), 'SIGKILL');
    await owner.kill();
    await writing;
    const next = await start();
    const [row] = await query(next.databaseUrl, 'SELECT count(*)::int AS n, max(n) AS last FROM kept');
    const { n, last } = row as { n: number; last: number };
    expect(n).toBe(last);
    expect(last).toBeGreaterThanOrEqual(acknowledged);
  });

  it('in the middle of making the database: the half-made one is thrown away', async () => {
    mkdirSync(join(home, 'database', 'data.init'), { recursive: true });
    writeFileSync(join(home, 'database', 'data.init', 'PG_VERSION'), '18\n');
    const { databaseUrl } = await start();
    expect(await query(databaseUrl, 'SELECT 1 AS n')).toEqual([{ n: 1 }]);
  });

  it('when its id went to another process of the same user: that one is not taken for the database', async () => {
    const first = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
    const { uid, gid } = statSync(first.dataFolder);
    await first.stop();
    const stranger = spawn('sleep', ['60'], { ...(isRoot && { uid, gid }), stdio: 'ignore' });
    onTestFinished(() => void stranger.kill());
    const file = join(first.dataFolder, 'postmaster.pid');
    writeFileSync(file, `${stranger.pid}\n${first.dataFolder}\n1\n54329\n\n127.0.0.1\n  1 1\nready\n`);
    chownSync(file, uid, gid);
    const next = await start();
    expect(next.adopted).toBe(false);
    expect(lives(stranger.pid ?? 0)).toBe(true);
  });
});

describe('a second copy on the same folder', () => {
  it('is refused with a sentence that names the first', async () => {
    const owner = await startedOwner({ home });
    const second = startEmbeddedPostgres({ home, log: () => undefined });
    await expect(second).rejects.toBeInstanceOf(HomeInUseError);
    await expect(second).rejects.toThrow(`in use by another copy of Benchtide (process ${owner.pid})`);
    expect(await query(owner.databaseUrl, 'SELECT 1 AS n')).toEqual([{ n: 1 }]);
    await owner.stop();
    await start();
  });

  it('is refused as well when both begin at once from nothing', async () => {
    const both = await Promise.all([startOwner({ home }), startOwner({ home })]);
    const started = both.flatMap((owner) => ('error' in owner ? [] : [owner]));
    const refused = both.filter((owner) => 'error' in owner);
    for (const owner of started) await owner.stop();
    expect(started).toHaveLength(1);
    expect(refused).toMatchObject([{ error: { name: 'HomeInUseError' } }]);
  });

  it.each([
    ['of a process that is gone', { pid: 2 ** 22 + 1, start: 'long ago' }],
    ['of a process whose id now belongs to another', { pid: process.ppid, start: 'another boot:1' }],
    ['that cannot be read', 'not what we wrote'],
  ])('starts over a lock %s', async (_, lock) => {
    writeFileSync(join(home, 'lock'), typeof lock === 'string' ? lock : JSON.stringify(lock));
    const { databaseUrl } = await start();
    expect(await query(databaseUrl, 'SELECT 1 AS n')).toEqual([{ n: 1 }]);
    expect(JSON.parse(readFileSync(join(home, 'lock'), 'utf8'))).toMatchObject({ pid: process.pid });
  });
});

describe('what cannot work', () => {
  it('data of another PostgreSQL: says so, touches nothing and gives the folder up', async () => {
    const first = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
    await first.stop();
    writeFileSync(join(first.dataFolder, 'PG_VERSION'), '12\n');
    const failing = startEmbeddedPostgres({ home, log: () => undefined });
    await expect(failing).rejects.toBeInstanceOf(DatabaseStartError);
    await expect(failing).rejects.toThrow('was made by PostgreSQL 12; this is PostgreSQL 18');
    expect(existsSync(join(home, 'lock'))).toBe(false);
  });

  it('damaged data: shows the end of the log', async () => {
    const first = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
    await first.stop();
    rmSync(join(first.dataFolder, 'global', 'pg_control'));
    await expect(startEmbeddedPostgres({ home, log: () => undefined })).rejects.toThrow('pg_control');
  });
});

describe.skipIf(!isRoot)('as root', () => {
  it('runs the database as another user', async () => {
    const { dataFolder } = await start();
    expect(statSync(`/proc/${postmasterPid(dataFolder)}`).uid).not.toBe(0);
    expect(statSync(dataFolder).uid).toBe(statSync(`/proc/${postmasterPid(dataFolder)}`).uid);
  });

  it('keeps the data elsewhere when that user cannot enter the folder, and finds it again', async () => {
    chmodSync(home, 0o700);
    const lines: string[] = [];
    const log = (line: string): void => void lines.push(line);
    const first = await startEmbeddedPostgres({ home, log, settings: { fsync: false } });
    const folder = dirname(first.dataFolder);
    onTestFinished(() => rmSync(folder, { recursive: true }));
    expect(folder.startsWith('/var/lib/benchtide/')).toBe(true);
    expect(lines).toEqual([expect.stringContaining(folder)]);
    await query(first.databaseUrl, 'CREATE TABLE kept AS SELECT 1 AS n');
    await first.stop();
    const second = await startEmbeddedPostgres({ home, log, settings: { fsync: false } });
    expect(await query(second.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
    await second.stop();
  });

  it('carries on with the data of an ordinary user, and leaves it to her', async () => {
    chownSync(home, NOBODY, NOBODY);
    const hers = await startedOwner({ home, uid: NOBODY });
    expect(statSync(`/proc/${postmasterPid(hers.dataFolder)}`).uid).toBe(NOBODY);
    await query(hers.databaseUrl, 'CREATE TABLE kept AS SELECT 1 AS n');
    await hers.stop();
    const ours = await startEmbeddedPostgres({ home, log: () => undefined, settings: { fsync: false } });
    expect(await query(ours.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
    await ours.stop();
    const again = await startedOwner({ home, uid: NOBODY });
    expect(await query(again.databaseUrl, 'SELECT n FROM kept')).toEqual([{ n: 1 }]);
    await again.stop();
  });
});
