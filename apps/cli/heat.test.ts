import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ClocksDocument } from '#contract';
import { clocksCommand } from './clocks-command.js';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'benchtide-heat-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

/** The demo of loaves with something of it changed, as a file of its own. */
function loaves(...changes: readonly (readonly [RegExp, string])[]): string {
  const text = changes.reduce(
    (before, [from, to]) => {
      const after = before.replaceAll(from, to);
      expect(after).not.toBe(before);
      return after;
    },
    readFileSync('apps/cli/examples/orchard-loaves.yaml', 'utf8'),
  );
  const path = join(folder, 'loaves.yaml');
  writeFileSync(path, text);
  return path;
}

const kept = (way: string) => [/mould: loaf,/g, `mould: loaf, kept: ${way},`] as const;
const asked = (gel: string) => [/superfatPercent: 5/g, `superfatPercent: 5\n    gel: ${gel}`] as const;

/** The lines that tell the heat of the first part. */
function toldOf(file: string, ...options: readonly string[]): string[] {
  const { stdout, stderr, status } = clocksCommand([file, ...options]);
  expect([status, stderr]).toEqual([0, '']);
  const lines = stdout.split('\n');
  const first = lines.findIndex((line) =>
    /^ {2}(It (gels|does not gel|only cools)|You want|Sie (geliert|wollen|kühlt))/.test(line),
  );
  const end = lines.findIndex((line, i) => i > first && (line === '' || line.startsWith('  !')));
  return lines.slice(first, end);
}
/** The sentences without their line breaks. */
const flat = (lines: readonly string[]): string => lines.map((line) => line.trim()).join(' ');

describe('the heat of a loaf', () => {
  it('is told in sentences and a table, within 80 columns', () => {
    const told = toldOf('orchard-loaves');
    expect(flat(told)).toMatch(
      /^It gels wholly \(about \d in 10\), in its middle only \(about \d+ in 10+\) or not at all \(about \d in 10\)\. Its middle is hottest about [\dh ]+ after the pour: \d\d °C \(\d\d to \d\d\)\./,
    );
    const table = told.slice(told.findIndex((line) => line.includes('middle  edge')));
    expect(table[0]).toBe('    after the pour  middle  edge');
    expect(table[1]).toBe('    0 h             34 °C   34 °C');
    expect(table.length).toBeGreaterThan(5);
    for (const line of told) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('has the same hottest moment in the sentence, in the table and in the document', () => {
    const document = JSON.parse(clocksCommand(['orchard-loaves', '--json']).stdout) as ClocksDocument;
    const heat = document.runs[0]?.parts[0]?.heat;
    const likely = `${String(Math.round(heat?.hottestC.likely ?? NaN))} °C`;
    const told = toldOf('orchard-loaves');
    expect(flat(told)).toContain(`after the pour: ${likely} (`);
    const middles = told.flatMap((line) => /^ {4}\d.*?(\d+) °C +\d+ °C$/.exec(line)?.[1] ?? []).map(Number);
    expect(Math.max(...middles)).toBe(Math.round(heat?.hottestC.likely ?? NaN));
  });

  it('is told once for layers that share it', () => {
    const { stdout } = clocksCommand(['orchard-loaves']);
    expect(stdout.match(/after the pour {2}middle/g)).toHaveLength(1);
    expect(stdout.match(/Its heat is that of “Bark layer”\./g)).toHaveLength(2);
  });

  it('is told in German and in °F', () => {
    const told = toldOf('orchard-loaves', '--lang', 'de', '--units', 'us');
    expect(flat(told)).toMatch(
      /^Sie geliert ganz \(etwa \d von 10\).* am heißesten: 1\d\d °F \(1\d\d bis 1\d\d\)\./,
    );
    expect(told).toContain('    nach dem Gießen  Mitte   Rand');
    expect(told).toContain('    0 h              93 °F   93 °F');
    for (const line of told) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('says what to do about gel that is unsure, and no more where it is sure', () => {
    expect(flat(toldOf('orchard-loaves'))).toMatch(
      /Assumed: it stands covered\. .* Wrap it in towels, and it gels wholly: about 9\d in 100\. Set it in the refrigerator, and it does not gel: about \d in 10\./,
    );
    const wrapped = flat(toldOf(loaves(kept('wrapped'))));
    expect(wrapped).toMatch(
      /^It gels wholly: about 9\d in 100\. .* It stands covered and wrapped in towels\. /,
    );
    expect(wrapped).not.toMatch(/Wrap it|refrigerator|Assumed/);
  });

  it('sets what the maker wants beside what is to be expected', () => {
    expect(flat(toldOf(loaves(asked('full'))))).toMatch(
      /^You want gel\. At these settings: it gels wholly \(about \d in 10\).* Wrap it in towels, and it gels wholly: /,
    );
    const none = flat(toldOf(loaves(asked('none'))));
    expect(none).toMatch(
      /^You want no gel\. At these settings: .* Set it in the refrigerator, and it does not gel: /,
    );
    expect(none).not.toContain('towels');
    // Nothing is cooler than the refrigerator, but a cooler batter.
    expect(
      flat(
        toldOf(loaves(asked('none'), kept('chilled'), [/batterTemperatureC: 34/g, 'batterTemperatureC: 45'])),
      ),
    ).toMatch(/It stands in the refrigerator\. To keep it cooler, pour it cooler\./);
  });

  it('warns of overheating and says how to keep it cooler', () => {
    const sweet = loaves(
      kept('wrapped'),
      [/superfatPercent: 5/g, 'superfatPercent: 5\n    sugarPercent: 5'],
      [/batterTemperatureC: 34/g, 'batterTemperatureC: 48'],
    );
    expect(flat(toldOf(sweet))).toMatch(
      /It may overheat, crack or rise: .* It stands covered and wrapped in towels\. .*, and it does not overheat: /,
    );
    expect(flat(toldOf('orchard-loaves'))).not.toContain('overheat');
  });
});
