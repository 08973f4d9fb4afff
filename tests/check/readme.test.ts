import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { planCommand } from '../../apps/cli/plan-command.js';

/** The tide table as the command prints it: from its heading to the first empty line after it. */
function printedTideTable(): string {
  const { stdout } = planCommand(['rockpool-tiles']);
  const lines = stdout.split('\n');
  const from = lines.findIndex((line) => line.startsWith('Tide table'));
  return lines.slice(from, lines.indexOf('', from)).join('\n');
}

it('shows the tide table in the README as the program prints it today', () => {
  const readme = readFileSync(new URL('../../README.md', import.meta.url), 'utf8');
  const shown = /<!-- tide table -->\n+([\s\S]*?)\n+<!-- \/tide table -->/.exec(readme)?.[1] ?? '';
  expect(shown.replace(/^ {4}/gm, '')).toBe(printedTideTable());
});
