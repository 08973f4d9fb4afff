import { expect, it } from 'vitest';
import { clocksCommand } from './clocks-command.js';
import { planCommand } from './plan-command.js';

/** Everything that hurries a loaf at once: by its recipe alone it would be cut after a quarter of an hour. */
const SALT_LOAF = 'tests/fixtures/ok/salt-loaf.yaml';
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

it('says in the plan and in the clocks what a loaf that is held up waits for', () => {
  const plan = flat(planCommand([SALT_LOAF]).stdout);
  for (const state of ['firm enough to unmould', 'firm enough to cut']) {
    expect(plan).toMatch(
      new RegExp(
        `is ${state} \\d+ h( \\d\\d)? \\([^)]*\\) after the end of the pour: faster, because there is salt in it \\(100%\\) and [^;]*; not sooner, because it has to cool first \\(about \\d+ h\\)\\.`,
      ),
    );
  }
  expect(plan).not.toMatch(/slower, because it (has to cool|is hot)/);
  expect(flat(clocksCommand([SALT_LOAF]).stdout)).toMatch(
    /firm enough to cut: .*?not sooner, because it has to cool first \(about \d+ h\) ×\d/,
  );
  expect(flat(planCommand([SALT_LOAF, '--lang', 'de']).stdout)).toMatch(
    /; nicht eher, weil sie erst abkühlen muss \(etwa \d+ h\)\./,
  );
});
