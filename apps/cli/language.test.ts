import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { shippedFats } from '#chemistry';
import { planWithRemedies } from '#contract';
import { foreignIn, namesIn } from '../../tests/support/one-language.js';
import { loadRunFile, runFileText } from '../../tests/support/run-files.js';
import { amountsCommand } from './amounts-command.js';
import { clocksCommand } from './clocks-command.js';
import type { Outcome } from './outcome.js';
import { planCommand } from './plan-command.js';
import { printRemedies } from './print-remedies.js';
import { textsOf } from './texts-of.js';

const commands = { plan: planCommand, amounts: amountsCommand, clocks: clocksCommand };
type Command = keyof typeof commands;

const demos = readdirSync('apps/cli/examples').map((file) => file.replace('.yaml', ''));
/** What the makers of the demos called things; it is English whatever language is asked for. */
const names = [
  ...demos.flatMap((demo) => namesIn(parse(runFileText('demo', demo)))),
  ...demos.flatMap((demo) => loadRunFile('demo', demo).runs.map(({ key }) => key)),
  // What a recipe calls a fat is the same in any language.
  ...shippedFats.map(({ key }) => key),
];

/** Each of the two languages with a system of units, so that all four are met. */
const readers = [
  { language: 'de', units: 'us' },
  { language: 'en', units: 'metric' },
  { language: 'de', units: 'metric' },
  { language: 'en', units: 'us' },
] as const;
type Reader = (typeof readers)[number];

const asked = (command: Command, args: readonly string[], { language, units }: Reader): Outcome =>
  commands[command]([...args, '--lang', language, '--units', units]);

/** What is no sentence: options, calls, paths of fields, keys and instants as files have them. */
const NOT_SAID =
  /(?<![\p{L}\d])--?[a-z][a-z-]*|npm run [a-z]+|en\|de|metric(?:\||, )us|[a-z-]+\/#\d+|benchtide\.[a-z-]+\/\d/gu;
/** Lists of ingredients, whose names are INCI. */
const INGREDIENTS = /(?<=(?:As put in|As soap|Wie hineingetan|Als Seife):)[^.]*/gu;
/** Where something is wrong: file, line and path of the field. */
const PLACE = /^\S+\.yaml(?::\d+)?: (?:[\w.[\]]+: )?|^FILE(?::\d+)?: (?:[\w.[\]]+: )?/gmu;

function foreign({ stdout, stderr }: Outcome, reader: Reader, path = ''): string[] {
  return [stdout, stderr].flatMap((stream) => {
    const said = (path === '' ? stream : stream.replaceAll(path, 'FILE'))
      .replace(PLACE, '')
      .replace(NOT_SAID, '…')
      .replace(INGREDIENTS, ' …');
    return foreignIn(said, reader, names);
  });
}

/** Plans with what would help them, made once for all readers, as that takes some seconds. */
const helped = demos.map((demo) => {
  const { stdout } = planCommand([demo, '--remedies', '--json']);
  return { demo, answer: planWithRemedies.parse(JSON.parse(stdout)) };
});

describe.each(readers)('in $language with $units units', (reader) => {
  it.each(helped)('what would help $demo says nothing in another', ({ answer }) => {
    const stdout = printRemedies(answer, textsOf(reader, answer.plan.timeZone));
    expect(answer.remedies.remedies.length).toBeGreaterThan(0);
    expect(foreign({ stdout, stderr: '', status: 0 }, reader)).toEqual([]);
  });

  const answers: readonly (readonly [Command, readonly string[]])[] = [
    ...demos.flatMap((demo) => [
      ['plan', [demo]] as const,
      ['plan', [demo, '--odds', '0.99', '--ready-by', '2026-11-29']] as const,
      ['plan', [demo, '--at', '2026-12-24T18:00']] as const,
      ['amounts', [demo]] as const,
      ['amounts', [demo, '--count', '1']] as const,
      ['clocks', [demo]] as const,
    ]),
    ['plan', ['orchard-loaves', '--odds', '0.4', '--ready-by', '2027-01-16']],
    ['amounts', ['--fats']],
    ['clocks', ['--rules']],
    ['plan', ['--help']],
    ['amounts', ['--help']],
    ['clocks', ['--help']],
  ];
  it.each(answers)('%s %j says nothing in another', (command, args) => {
    const outcome = asked(command, args, reader);
    expect(outcome.stdout.length).toBeGreaterThan(200);
    expect(foreign(outcome, reader)).toEqual([]);
  });

  const wrongOptions: readonly (readonly string[])[] = [
    [],
    ['--speed'],
    ['--remedy', 'rockpool-tiles'],
    ['-x'],
    ['rockpool-tiles', 'orchard-loaves'],
    ['rockpool-tiles', '--count'],
    ['rockpool-tiles', '--count', '--json'],
    ['rockpool-tiles', '--json=yes'],
    ['rockpool-tiles', '--count', '0'],
    ['rockpool-tiles', '--units', 'cubits'],
    ['rockpool-tiles', '--seed', 'x'],
    ['rockpool-tiles', '--at', 'tonight'],
    ['rockpool-tiles', '--at', '2026-02-30T10:00'],
    ['rockpool-tiles', '--run', 'x'],
    ['rockpool-tiles', '--ready-by', '2027-01-16'],
    ['rockpool-tiles', '--odds', '7'],
    ['rockpool-tiles', '--odds', '0.9', '--remedies'],
    ['rockpool-tiles', '--odds', '0.9', '--ready-by', '16.1.'],
    ['rockpool-tiles', '--odds', '0.9', '--run', 'none'],
    ['rockpool-tiles', '--rules'],
    ['rockpool-tiles', '--fats'],
    ['2027.yaml'],
    ['.'],
  ];
  it.each(wrongOptions.map((args) => [args]))('refuses the options %j in no other', (args) => {
    // The language is asked for first, as what is wrong may swallow what comes after it.
    const outcome = planCommand(['--lang', reader.language, ...args]);
    expect(outcome).toMatchObject({ stdout: '', status: 64 });
    expect(foreign(outcome, reader)).toEqual([]);
  });

  describe('refuses a file', () => {
    let folder: string;
    beforeAll(() => {
      folder = mkdtempSync(join(tmpdir(), 'benchtide-language-'));
    });
    afterAll(() => rmSync(folder, { recursive: true }));
    const good = runFileText('demo', 'rockpool-tiles');
    const changed = (from: string | RegExp, to: string): string => {
      const text = good.replace(from, to);
      if (text === good) throw new Error(`there is no ${String(from)} to change`);
      return text;
    };

    const badYaml = [
      'a: [1, 2',
      'a: {b: 1',
      '- "\\q"',
      'a: "x',
      'a:\n\t- b',
      'a: *b',
      'a: &x 1\nb: &y &z 2',
      'a: !odd 1',
      '%YAML 9.9 7\n---\na: 1',
      'a: 1\n---\nb: 2',
      'a: @b',
      'a: b: c',
      'a\nb\n: c',
      'a: 1\n  b: 2',
      'a: |x\n b',
      'a: 1\na: 2',
      `${'x'.repeat(1100)}: 1\n? `,
      '['.repeat(20_000),
      `a: &a [1]\n${'abcdefgh'.replace(/./g, (k, i: number) => `b${k}: &${k} [${`*${i === 0 ? 'a' : 'abcdefgh'[i - 1]!},`.repeat(9)}]\n`)}`,
    ];
    const badValues = [
      'just words',
      changed('schema: benchtide.run-file/3', 'schema: other'),
      changed('temperatureC: 20', 'temperatureC: 95'),
      changed('temperatureC: 20', 'temperatureC: 3 lb'),
      changed('currency: EUR', 'currency: Euro'),
      changed('timeZone: Europe/Dublin', 'timeZone: Atlantis'),
      changed('cavityMl: 84', 'cavityMl: -3'),
      changed('{ fat: olive, percent: 40 }', '{ fat: olive, percent: 41 }'),
      changed('{ fat: olive, percent: 40 }', '{ fat: olivenoil, percent: 40 }'),
      changed('superfatPercent: 5', 'superfatPercent: 55'),
      changed('lyeConcentrationPercent: 36', 'lyeConcentrationPercent: 3'),
      changed(/count: 24/g, 'count: 24000'),
      changed('friday: [{ from: 18:00, to: 22:30 }]', 'friday: [{ from: 22:30, to: 18:00 }]'),
      changed('waterFillG: 17.9', 'waterFillG: many'),
      changed('startAfter:', 'startsAfter:'),
    ];
    it.each(
      [...badYaml, ...badValues].map((text) => [text.length > 60 ? `${text.slice(0, 60)}…` : text, text]),
    )('that holds %j in no other', (_, text) => {
      const path = join(folder, 'run.yaml');
      writeFileSync(path, text);
      const outcome = asked('plan', [path], reader);
      expect(outcome).toMatchObject({ stdout: '', status: 64 });
      expect(foreign(outcome, reader, path)).toEqual([]);
    });
  });
});
