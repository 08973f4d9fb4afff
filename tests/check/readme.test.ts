import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { amountsCommand } from '../../apps/cli/amounts-command.js';
import { clocksCommand } from '../../apps/cli/clocks-command.js';
import { planCommand } from '../../apps/cli/plan-command.js';
import { runFileText } from '../support/run-files.js';

const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
const commands: Record<string, typeof planCommand> = {
  plan: planCommand,
  amounts: amountsCommand,
  clocks: clocksCommand,
};

/** The tide table as the command prints it: from its heading to the first empty line after it. */
function printedTideTable(): string {
  const { stdout } = planCommand(['rockpool-tiles']);
  const lines = stdout.split('\n');
  const from = lines.findIndex((line) => line.startsWith('Tide table'));
  return lines.slice(from, lines.indexOf('', from)).join('\n');
}

it('shows the tide table in the README as the program prints it today', () => {
  const shown = /<!-- tide table -->\n+([\s\S]*?)\n+<!-- \/tide table -->/.exec(readme)?.[1] ?? '';
  expect(shown.replace(/^ {4}/gm, '')).toBe(printedTideTable());
});

describe('a command that the README shows', () => {
  const calls = [...readme.matchAll(/`npm run (plan|amounts|clocks) -- ([^`]+)`/g)].map(
    ([, command = '', args = '']) => ({ command, args: args.replaceAll(/\s+/g, ' ') }),
  );

  it('is there', () => {
    expect(calls.length).toBeGreaterThan(4);
  });

  it.each(calls)('$command $args does what it is shown for', ({ command, args }) => {
    const { stdout, stderr, status } = (commands[command] as typeof planCommand)(args.split(' '));
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).not.toBe('');
  });

  // Options that it names by themselves go with the demo of its first command.
  it.each([
    ['plan', '--json'],
    ['plan', '--schema'],
    ['plan', '--lang de'],
    ['plan', '--units us'],
    ['plan', '--remedies'],
    ['amounts', '--count 26'],
  ])('%s with %s does what it is shown for', (command, option) => {
    expect(readme).toContain(`\`${option}`);
    const { stdout, stderr, status } = (commands[command] as typeof planCommand)([
      ...(option === '--schema' ? [] : ['rockpool-tiles']),
      ...option.split(' '),
    ]);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).not.toBe('');
  });
});

describe('a piece of a run file that the README shows', () => {
  const folder = mkdtempSync(join(tmpdir(), 'benchtide-readme-'));
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });
  const logs = [...readme.matchAll(/^ {4}log:\n(?: {6}.*\n)+/gm)].map(([text]) =>
    text.replace(/^ {4}/gm, ''),
  );

  it('is there', () => {
    expect(logs).toHaveLength(1);
  });

  it.each(logs)('is read and moves the plan of the demo: %s', (log) => {
    const path = join(folder, 'run.yaml');
    writeFileSync(path, `${runFileText('demo', 'rockpool-tiles')}\n${log}`);
    const { stdout, stderr, status } = planCommand([path]);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).not.toBe(planCommand(['rockpool-tiles']).stdout);
  });
});
