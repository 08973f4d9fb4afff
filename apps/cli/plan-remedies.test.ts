import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { describe, expect, it } from 'vitest';
import { planWithRemedies } from '#contract';
import { runFileText } from '../../tests/support/run-files.js';
import { planCommand } from './plan-command.js';

/** The small fixture for one cup more than there are cavities: there is no plan. */
function fileWithoutPlan(): string {
  const path = join(mkdtempSync(join(tmpdir(), 'benchtide-cli-')), 'run.yaml');
  writeFileSync(path, runFileText('ok', 'two-layer').replace('count: 12,', 'count: 13,'));
  return path;
}

describe('plan --remedies', () => {
  it('prints under the plan what would help, with what each makes worse', () => {
    const plain = planCommand(['orchard-loaves']).stdout;
    const { stdout, stderr, status } = planCommand(['orchard-loaves', '--remedies']);
    expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
    expect(stdout.startsWith(plain)).toBe(true);
    const below = stdout.slice(plain.length);
    expect(below).toContain('Remedies');
    expect(below).toMatch(/ {2}1\. .+/);
    expect(below).toMatch(/Odds: \d+ in \d+ instead of \d+ in \d+\./);
    expect(below).toContain('Worse: ');
    expect(below).not.toMatch(/ {2}6\. /);
  });

  it('says beside the conflict what would make a plan possible; the exit status stays that of the plan', () => {
    const { stdout, status } = planCommand([fileWithoutPlan(), '--remedies']);
    expect(status).toBe(2);
    expect(stdout).toContain('There is no plan.');
    expect(stdout).toContain('1. Make 12 pieces of “Twelve cups” instead of 13');
    expect(stdout).toContain('Worse: 12 pieces instead of 13.');
  });

  it('prints plan and remedies as one document that meets its schema, as ajv sees it; the plan is the one without', () => {
    const ajv = new Ajv2020({ strict: false });
    addFormats.default(ajv);
    const valid = ajv.compile(JSON.parse(planCommand(['--schema', '--remedies']).stdout) as object);
    const document: unknown = JSON.parse(planCommand(['orchard-loaves', '--remedies', '--json']).stdout);
    expect(valid(document), JSON.stringify(valid.errors)).toBe(true);
    expect(valid({ ...(document as object), remedies: [] })).toBe(false);
    const { plan, remedies } = planWithRemedies.parse(document);
    expect(plan).toEqual(JSON.parse(planCommand(['orchard-loaves', '--json']).stdout));
    expect(remedies.odds).toEqual(plan.odds);
  });

  it('does not go with what it has no meaning for', () => {
    expect(planCommand(['orchard-loaves', '--odds', '0.9', '--remedies'])).toMatchObject({
      status: 64,
      stdout: '',
    });
    expect(planCommand(['--help']).stdout).toContain('--remedies');
  });
});
