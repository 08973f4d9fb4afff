import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it, onTestFinished } from 'vitest';
import { parse } from 'yaml';
import type { AmountsDocument, PartAmounts } from '#contract';
import { runFileText } from '../../tests/support/run-files.js';
import { amountsCommand } from './amounts-command.js';
import { planCommand } from './plan-command.js';

function foamFor(...args: string[]): PartAmounts {
  const { stdout, status } = amountsCommand(['rockpool-tiles', '--json', ...args]);
  expect(status).toBe(0);
  const document = JSON.parse(stdout) as AmountsDocument;
  const foam = document.runs[0]?.amounts.find(({ part }) => part === 'foam');
  if (foam === undefined) throw new Error('no foam');
  return foam;
}

describe('npm run amounts', () => {
  it('prints the amounts that the plan prints, each with its certainty and what is left over', () => {
    const sheet = amountsCommand(['rockpool-tiles']).stdout;
    const plan = planCommand(['rockpool-tiles']).stdout;
    const start = sheet.indexOf('Amounts\n');
    const amounts = sheet.slice(start, sheet.indexOf('\n\n', start));
    expect(plan).toContain(amounts);
    for (const part of ['Deep-blue layer', 'Sand layer', 'Small shells', 'Sea foam', 'Clear water drops']) {
      const section = amounts.slice(amounts.indexOf(`  ${part}: `));
      expect(section).toMatch(/^[^\n]+\n(?: {4}[^\n]+\n)*? {4}Chance of running short: \d/);
      expect(section).toMatch(/Left over: likely [\d.]+ (g|piece)/);
    }
  });

  it('weighs the lye of a swirl in three colours and its top once, and says into what it is split', () => {
    const printed = amountsCommand(['tests/fixtures/ok/swirl-loaf.yaml']).stdout;
    expect(printed.match(/Lye: NaOH [\d.]+ g into water/g)).toHaveLength(1);
    expect(printed.match(/^ +Olive oil +[\d.,]+ g$/gm)).toHaveLength(1);
    expect(printed).toContain('One batch for “Swirl” and “Top”: ');
    expect(printed).toMatch(
      /Swirl: White +\d+ g +28%\n +Swirl: Blue +\d+ g +28%\n +\+ Blue mica +[\d.]+ g\n +Swirl: Green /,
    );
    const german = amountsCommand(['tests/fixtures/ok/swirl-loaf.yaml', '--lang', 'de']).stdout;
    expect(german.match(/Lauge: NaOH/g)).toHaveLength(1);
    expect(german).toContain('Ein Ansatz für „Swirl“ und „Top“: ');
  });

  it('makes the piping batch grow from 24 to 26, the chance of running short staying within 5 %', () => {
    const [at24, at26] = [foamFor(), foamFor('--count', '26')];
    expect([at24.count, at26.count]).toEqual([24, 26]);
    expect(at26.batch?.batchG).toBeGreaterThan(at24.batch?.batchG ?? NaN);
    for (const { cover } of [at24, at26]) expect(cover.shortageChance).toBeLessThanOrEqual(0.05 + 1e-9);
  });

  it('gathers, with lye on its own line and its caution under it, and costs a piece', () => {
    const { stdout } = amountsCommand(['rockpool-tiles']);
    expect(stdout).toMatch(/\n {2}Sodium hydroxide \(NaOH\) +\d+ g .*\n {4}! Lye is corrosive/);
    expect(stdout).toMatch(/\nCost of a piece: at least €\d+\.\d\d /);
    expect(stdout).toContain('\nTake care\n');
  });

  it('speaks in ounces to those who ask', () => {
    const { stdout } = amountsCommand(['rockpool-tiles', '--units', 'us']);
    expect(stdout).toMatch(/Deep-blue layer: 2 lb [\d.]+ oz of batter, [\d.]+ fl oz/);
    expect(stdout).not.toMatch(/Olive oil +\d+(\.\d)? g/);
  });

  it('reads ounces, inches and Fahrenheit as grams, millimetres and Celsius', () => {
    const folder = mkdtempSync(join(tmpdir(), 'benchtide-test-amounts-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const path = join(folder, 'run.yaml');
    const written = runFileText('demo', 'rockpool-tiles')
      .replace('bowlG: 12', 'bowlG: 0.5 oz')
      .replace('waterFillG: 17.9', 'shape: { form: box, lengthMm: 1 in, widthMm: 1 in, heightMm: 1 in }')
      .replace(/waterC: 20,? ?/, '')
      .replace('batterTemperatureC: 32', 'batterTemperatureC: 89.6 °F');
    writeFileSync(path, written);
    const { stdout, stderr } = amountsCommand([path, '--json']);
    expect(stderr).toBe('');
    const foam = (JSON.parse(stdout) as AmountsDocument).runs[0]?.amounts.find((a) => a.part === 'foam');
    // International yard and pound: an ounce is 28.349523125 g.
    expect(foam?.lossG).toBeCloseTo(28.349523125 / 2 + 23, 8);
    expect(foam?.batch?.densityGPerMl).toBeCloseTo(foamFor().batch?.densityGPerMl ?? NaN, 9);
  });

  it('lists the fats that need no entry, and what a run file may hold', () => {
    expect(amountsCommand(['--fats']).stdout).toMatch(/\nolive +Olive oil +0\.1354 /);
    const schema = JSON.parse(amountsCommand(['--file-schema']).stdout) as object;
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    const written: unknown = parse(runFileText('demo', 'rockpool-tiles'), { schema: 'core' });
    expect(validate(written), JSON.stringify(validate.errors)).toBe(true);
    expect(validate({ schema: 'benchtide.run-file/3' })).toBe(false);
  });

  it('says what is not known of a cost instead of counting it as nothing', () => {
    expect(amountsCommand(['orchard-loaves']).stdout).toContain('Cost of a piece: no prices are known yet.');
  });

  it('prints what its JSON Schema describes', () => {
    const schema = JSON.parse(amountsCommand(['--schema']).stdout) as object;
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    const document: unknown = JSON.parse(amountsCommand(['orchard-loaves', '--json']).stdout);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each([
    [['rockpool-tiles', '--units', 'stone'], 'accepted: metric, us'],
    [['rockpool-tiles', '--count', '0'], 'accepted: a whole number, 1 to 5000'],
    [['rockpool-tiles', '--count', '6000'], 'accepted: a whole number, 1 to 5000'],
    [['rockpool-tiles', '--seed', '3'], '--seed belongs to npm run plan'],
    [['--rules'], '--rules belongs to npm run clocks'],
    [['rockpool-tiles', '--unit', 'us'], 'There is no option --unit; did you mean --units?'],
    [['no-such-file'], 'there is no such file'],
    [[], 'Which run file?'],
  ])('refuses %j with status 64', (args, says) => {
    const { stdout, stderr, status } = amountsCommand(args);
    expect([stdout, status]).toEqual(['', 64]);
    expect(stderr).toContain(says);
  });
});
