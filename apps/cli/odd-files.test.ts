import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runFileText } from '../../tests/support/run-files.js';
import { planCommand } from './plan-command.js';

const ESC = '\u001b';
const RLO = '\u202e';
const text = runFileText('ok', 'two-layer');

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'benchtide-odd-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** What `plan` makes of a file with these contents, with the name of the file left out of what it says. */
function planned(
  content: string | Buffer,
  ...args: string[]
): { status: number; lines: string[]; stdout: string } {
  const path = join(folder, 'run.yaml');
  writeFileSync(path, content);
  const { status, stdout, stderr } = planCommand([path, ...args]);
  return { status, stdout, lines: stderr.replaceAll(path, 'FILE').split('\n').slice(0, -1) };
}

function refused(content: string | Buffer, ...args: string[]): string[] {
  const { status, lines } = planned(content, ...args);
  expect(status).toBe(64);
  return lines;
}

const withField = (field: string, value: string): string => {
  const changed = text.replace(new RegExp(`\\b${field}: *("[^"]*"|[^,}\\n]+)`), `${field}: ${value}`);
  if (changed === text) throw new Error(`there is no ${field} to change`);
  return changed;
};

describe('dates of other ages', () => {
  it.each(['0001-01-01T00:00', '1999-12-31T23:59', '2200-01-01T00:00', '9999-12-31T23:59'])('%s', (date) => {
    expect(refused(withField('startAfter', date))).toEqual([
      expect.stringMatching(
        `^FILE:\\d+: runs\\[0\\]\\.startAfter: “${date}” cannot be used here\\. Accepted: a date and time in the years 2000 to 2199\\.$`,
      ),
    ]);
  });

  it('as options', () => {
    for (const args of [
      ['--at', '0001-01-01T00:00'],
      ['--odds', '0.9', '--ready-by', '9999-12-31'],
    ])
      expect(refused(text, ...args)[0]).toContain('in the years 2000 to 2199');
  });

  it('but plans at both ends of those years', () => {
    for (const date of ['2000-01-01T00:00', '2199-12-31T23:59'])
      expect([0, 2]).toContain(planned(withField('startAfter', date)).status);
  });
});

describe('text that steers a terminal', () => {
  it('is shown as what it is in problems', () => {
    const [problem] = refused(`${text}\n"a${ESC}[31m${RLO}b": 1\n`);
    expect(problem).toContain('“a\\u001b[31m\\u202eb”');
    expect(problem).not.toMatch(/[\0-\x1f\x7f-\x9f\u202a-\u202e]/);
  });

  it('is not in what is printed of a title', () => {
    const { stdout, status } = planned(withField('title', `"Two\\e[31m \\u202Elayers"`));
    expect(status).toBe(0);
    expect(stdout).not.toMatch(/[\0-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e]/);
  });
});

describe('files that are none', () => {
  it('in another encoding than UTF-8', () => {
    const latin = Buffer.from(text.replace('schema:', '# gr\u00fcn\nschema:'), 'latin1');
    expect(refused(latin)).toEqual([
      expect.stringMatching(/^FILE:\d+: is not written in UTF-8, perhaps in Latin-1/),
    ]);
    for (const mark of ['\ufeff', ''])
      expect(refused(Buffer.from(mark + text, 'utf16le'))).toEqual([
        expect.stringContaining('is written in UTF-16'),
      ]);
    expect(planned(`\ufeff${text}`).status).toBe(0);
  });

  it('too large, at once', () => {
    expect(refused(`${text}\n#${'x'.repeat(50_000_000)}`)).toEqual([
      'FILE: is too large; accepted: up to 5 MB.',
    ]);
  });

  it('with faults without end: the first hundred and how many more', () => {
    const bad = refused('- "\\q"\n'.repeat(20_000));
    expect(bad).toHaveLength(101);
    expect(bad[0]).toMatch(/^FILE:1: not valid YAML/);
    expect(bad[100]).toBe('… and 19900 more.');
    const unknown = refused(
      `${text}\n${Array.from({ length: 20_000 }, (_, i) => `field${String(i)}: 1`).join('\n')}`,
    );
    expect(unknown[100]).toBe('… and 19900 more.');
    const twice = refused('a: 1\n'.repeat(20_000));
    expect(twice[0]).toBe('FILE:2: “a” stands here twice; accepted: once.');
    expect(twice).toHaveLength(101);
  });

  it('that cannot be read, or are no number where one is needed', () => {
    expect(planCommand([folder]).stderr).toContain('cannot be read: it is a folder.');
    expect(planCommand([join(folder, 'none.yaml')]).stderr).toContain('there is no such file');
    expect(refused(withField('count', '.nan'))[0]).toContain('NaN cannot be used here. Accepted: a number.');
    expect(refused(withField('count', '.inf'))[0]).toContain('∞ cannot be used here. Accepted: a number.');
    expect(refused('['.repeat(20_000))[0]).toContain('not valid YAML');
  });
});

it('ends quietly when nobody reads on', async () => {
  const main = new URL('../../dist/apps/cli/main.js', import.meta.url).pathname;
  const child = spawn(process.execPath, [main, 'plan', '--file-schema'], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  child.stdout.destroy();
  let said = '';
  child.stderr.on('data', (piece: Buffer) => (said += piece.toString()));
  const [status] = (await once(child, 'close')) as [number | null];
  expect([status, said]).toEqual([0, '']);
});
