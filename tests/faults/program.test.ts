import { execFileSync } from 'node:child_process';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { openBrowser } from '../support/browser.js';
import { freePort } from '../support/free-port.js';
import {
  accessKey,
  launch,
  newHome,
  removeHome,
  startProgram,
  type RunningProgram,
} from '../support/program.js';

const LONG = 120_000;
const home = newHome();
const running: RunningProgram[] = [];

async function start(port: number): Promise<RunningProgram> {
  const program = await startProgram(home, port);
  running.push(program);
  return program;
}

afterEach(async () => {
  for (const program of running.splice(0)) {
    if (program.child.exitCode === null && program.child.signalCode === null) program.child.kill('SIGTERM');
    await program.ended;
  }
});
afterAll(() => removeHome(home));

async function call(
  program: RunningProgram,
  method: string,
  path: string,
  body?: unknown,
): Promise<Response> {
  return fetch(`${program.url}${path}`, {
    method,
    headers: { authorization: `Bearer ${accessKey(home)}`, 'content-type': 'application/json' },
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
}

function mould(key: string) {
  return { key, title: `Mould ${key}`, kind: 'silicone-cavity', cavityMl: 80, cavities: 12 };
}

/** Writes with several hands at once until the program is gone. @returns the keys of what was acknowledged */
async function writeUntilGone(program: RunningProgram, name: string): Promise<string[]> {
  const acknowledged: string[] = [];
  const hand = async (number: number): Promise<void> => {
    for (let i = 0; ; i += 1) {
      const key = `${name}-${String(number)}-${String(i)}`;
      const answer = await call(program, 'POST', '/api/moulds', mould(key)).catch(() => undefined);
      if (answer === undefined) return;
      if (answer.status === 201) acknowledged.push(key);
    }
  };
  await Promise.all([1, 2, 3, 4].map(hand));
  return acknowledged;
}

async function storedMoulds(program: RunningProgram): Promise<Set<string>> {
  const list = (await (await call(program, 'GET', '/api/moulds')).json()) as { content: { key: string } }[];
  return new Set(list.map(({ content }) => content.key));
}

/** Process of the database in the home, or in where a database of root is kept. */
function postmaster(): number {
  const found = execFileSync('pgrep', ['-f', 'postgres.*-D'], { encoding: 'utf8' })
    .trim()
    .split('\n')
    .map(Number);
  const pid = found.find((each) => readFileSync(`/proc/${String(each)}/cmdline`, 'utf8').includes(home));
  if (pid === undefined) throw new Error('The database of this home is not running.');
  return pid;
}

describe('the program', () => {
  it('starts from nothing, says how to sign in, and ends cleanly on SIGTERM', { timeout: LONG }, async () => {
    const program = await start(await freePort());
    expect(program.printed()).toContain(`running at ${program.url}`);
    expect(program.printed()).toContain(accessKey(home));
    const [, link = '', code] = /link: (\S+)\n.*code (\S+)/.exec(program.printed()) ?? [];
    expect(link).toBe(`${program.url}/#sign-in=${code ?? ''}`);
    const browser = openBrowser(program.url);
    expect((await browser.call('POST', '/api/session', { code })).status).toBe(201);
    expect((await browser.call('GET', '/api/session')).body.workshop.timeZone).toMatch(/\//);
    // The page itself: what the link opens.
    const page = await fetch(new URL(link), { headers: { accept: 'text/html' } });
    expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
    expect(statSync(join(home, 'access-key')).mode & 0o777).toBe(0o600);
    const runs = (await (await call(program, 'GET', '/api/runs')).json()) as { key: string }[];
    expect(runs.map((run) => run.key)).toContain('harbour-market');
    program.child.kill('SIGTERM');
    expect(await program.ended).toBe(0);
    await expect(fetch(`${program.url}/api/health`)).rejects.toThrow();
  });

  it('loads the demo workshop once', { timeout: LONG }, async () => {
    const program = await start(await freePort());
    const runs = (await (await call(program, 'GET', '/api/runs')).json()) as { key: string }[];
    // Two runs to come, and the three trials that have taught the workshop.
    expect(new Set(runs.map(({ key }) => key)).size).toBe(5);
    expect(runs).toHaveLength(5);
    expect(program.printed()).not.toContain('Demo workshop');
  });

  it(
    'refuses a second copy on the same folder, and a port that is taken, each in a sentence',
    { timeout: LONG },
    async () => {
      const port = await freePort();
      await start(port);
      const second = launch(home, await freePort());
      expect(await second.ended).not.toBe(0);
      expect(second.printed()).toMatch(/in use by another copy of Benchtide/);
      const elsewhere = newHome();
      const third = launch(elsewhere, port);
      expect(await third.ended).not.toBe(0);
      expect(third.printed()).toMatch(new RegExp(`Port ${String(port)} is taken`));
      for (const { printed } of [second, third]) expect(printed()).not.toMatch(/\n\s+at /);
      removeHome(elsewhere);
    },
  );

  it('keeps everything acknowledged when it is killed while writing', { timeout: LONG }, async () => {
    const program = await start(await freePort());
    const writing = writeUntilGone(program, 'first');
    await pause(2_000);
    program.child.kill('SIGKILL');
    const acknowledged = await writing;
    expect(acknowledged.length).toBeGreaterThan(20);

    const next = await start(await freePort());
    const stored = await storedMoulds(next);
    expect(acknowledged.filter((key) => !stored.has(key))).toEqual([]);
  });

  it('keeps everything acknowledged when the database is killed with it', { timeout: LONG }, async () => {
    const program = await start(await freePort());
    const database = postmaster();
    const writing = writeUntilGone(program, 'second');
    await pause(2_000);
    program.child.kill('SIGKILL');
    process.kill(database, 'SIGKILL');
    const acknowledged = await writing;
    expect(acknowledged.length).toBeGreaterThan(20);

    const next = await start(await freePort());
    const stored = await storedMoulds(next);
    expect(acknowledged.filter((key) => !stored.has(key))).toEqual([]);
  });
});
