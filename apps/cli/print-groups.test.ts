import { describe, expect, it } from 'vitest';
import { planRuns, runFileInput } from '#runs';
import { minuteOfIso } from '#units';
import type { Language } from '#words';
import { loadRunFile } from '../../tests/support/run-files.js';
import { printPlan } from './print-plan.js';
import { textsOf } from './texts-of.js';

function printedIn(language: Language): string {
  const input = runFileInput(loadRunFile('ok', 'parting-ways'));
  if (!input.ok) throw new Error('no input');
  const plan = planRuns(input.value, { now: minuteOfIso('2026-11-27T17:00:00Z'), scenarios: 20 });
  if (!plan.ok) throw new Error('no plan');
  return printPlan(plan.value, textsOf({ language, units: 'metric' }, 'Europe/Dublin'));
}

describe('groups in a printed plan', () => {
  it('are told under the title, and at each stage that is not for all pieces', () => {
    const text = printedIn('en');
    expect(text).toContain('Coated: 12 pieces with Base and Coat\nPiped: 12 pieces with Base and Foam\n');
    expect(text).toContain('Not made, as no group has it: Drops');
    const table = text
      .split('\n')
      .filter((line) => /\S {2,}\S/.test(line) && /^(Pour|Unmould|Dip|Pipe |Turn|Wrap)/.test(line));
    expect(new Set(table.map((line) => line.split(/ {2}/)[0]))).toEqual(
      new Set([
        ...['Pour the base', 'Unmould', 'Turn', 'Wrap'],
        ...['Dip, Coated: 12 pieces', 'Pipe the foam, Piped: 12 pieces'],
      ]),
    );
  });

  it('are told in German too', () => {
    const text = printedIn('de');
    expect(text).toContain('Coated: 12 Stück mit Base und Coat\n');
    expect(text).toContain('Dip, Coated: 12 Stück');
    expect(text).toContain('Wird nicht gemacht, weil keine Gruppe es hat: Drops');
  });
});
