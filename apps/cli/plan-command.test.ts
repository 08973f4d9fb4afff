import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import addFormats from 'ajv-formats';
import { beforeAll, describe, expect, it } from 'vitest';
import { latestStartDocument, planDocument } from '#contract';
import { runFileText } from '../../tests/support/run-files.js';
import { planCommand } from './plan-command.js';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'benchtide-cli-'));
});

function fileWith(change: (text: string) => string): string {
  const text = runFileText('ok', 'two-layer');
  const changed = change(text);
  if (changed === text) throw new Error('the change changed nothing');
  const path = join(folder, 'run.yaml');
  writeFileSync(path, changed);
  return path;
}

describe('plan', () => {
  it('reads a file of the form before, lets its stages wait as their kinds say, and says so', () => {
    const path = fileWith((text) =>
      text.replace('benchtide.run-file/3', 'benchtide.run-file/2').replace(/    links:[^]*?(?=^runs:)/mu, ''),
    );
    const { stdout, stderr, status } = planCommand([path, '--json']);
    expect(status).toBe(0);
    expect(stderr).toBe(
      `${path}:2: The file is in form 2 and is read as form 3: its stages also wait for the soap as their kinds say. ` +
        'What was added stands in the plan.\n',
    );
    const [run] = planDocument.parse(JSON.parse(stdout)).runs;
    const startOf = (key: string): number =>
      Date.parse(run?.stages.find((stage) => stage.key === key)?.startAt ?? '');
    const endOf = (key: string): number =>
      Date.parse(run?.stages.find((stage) => stage.key === key)?.endAt ?? '');
    // Silicone cavities hold soap of a third lye and lactate for a day and more: common practice, no source.
    expect(startOf('unmould') - endOf('pour-over')).toBeGreaterThan(24 * 3_600_000);
    expect(startOf('turn')).toBeGreaterThan(startOf('unmould'));
    expect(run?.added?.length).toBeGreaterThan(0);
  });

  it('prints tide table, amounts, sittings, odds and cautions of a demo by its bare name', () => {
    const { stdout, stderr, status } = planCommand(['rockpool-tiles']);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    for (const words of [
      'Tide table',
      'last call',
      'Amounts',
      'Sittings',
      'Sound pieces by the day: ',
      'Take care',
      'water drops',
    ]) {
      expect(stdout).toContain(words);
    }
  });

  it('says what it added to a design that does not say when to unmould', () => {
    const path = fileWith((text) =>
      text.replace('      - { stage: unmould, part: over, opens: firm }\n', ''),
    );
    const { stdout, status } = planCommand([path]);
    expect(status).toBe(0);
    expect(stdout).toContain('Added, as the design does not say it');
    expect(stdout).toContain('  • “Unmould” waits until Upper layer is firm enough to unmould.');
    expect(planDocument.parse(JSON.parse(planCommand([path, '--json']).stdout)).runs[0]?.added).toHaveLength(
      2,
    );
    const said = planCommand(['tests/fixtures/ok/plain-tiles.yaml']).stdout;
    expect(said).toContain(
      '  • “Mix and pipe the foam” is done while Sand layer is fresh enough to hold piping.',
    );
    expect(said).not.toContain('• “Unmould”');
  });

  it('plans every demo', () => {
    for (const demo of ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets']) {
      expect(planCommand([demo, '--json']).status).toBe(0);
    }
  });

  it('plans a loaf that is cooked, and pieces with embeds that are cast, in either language', () => {
    const planned = (name: string, ...more: string[]): string => {
      const { stdout, status } = planCommand([`tests/fixtures/ok/${name}.yaml`, ...more]);
      expect(status).toBe(0);
      return stdout;
    };
    expect(planned('hot-process-loaf')).toContain(
      '“Spoon into the mould” is done while Base is soft enough to spoon',
    );
    expect(planned('hot-process-loaf')).toContain('because it was cooked');
    expect(planned('hot-process-loaf', '--lang', 'de')).toContain('weil sie gekocht wurde');
    expect(planned('melt-embeds')).toContain('171 g of melt-and-pour base');
    expect(planned('melt-embeds')).toContain(
      '“Unmould the stars” waits until Stars is cool enough to unmould.',
    );
    expect(planned('melt-embeds', '--lang', 'de')).toContain('kühl genug zum Ausformen');
  });

  it('warns where a piece looks like food', () => {
    expect(planCommand(['honeycomb-tartlets']).stdout).toContain('could be taken for food');
    expect(planCommand(['rockpool-tiles']).stdout).not.toContain('could be taken for food');
  });

  it('prints JSON that meets its own schema, as a general JSON Schema validator (ajv) sees it', () => {
    const ajv = new Ajv2020({ strict: false });
    addFormats.default(ajv);
    const valid = ajv.compile(JSON.parse(planCommand(['--schema']).stdout) as object);
    const document: unknown = JSON.parse(planCommand(['rockpool-tiles', '--json']).stdout);
    expect(valid(document), JSON.stringify(valid.errors)).toBe(true);
    expect(planDocument.parse(document).schema).toBe('benchtide.plan/4');
    expect(valid({ ...(document as object), status: 'splendid' })).toBe(false);
  });

  it('says the same at every call, and something else for another now', () => {
    const once = planCommand(['rockpool-tiles', '--json']).stdout;
    expect(planCommand(['rockpool-tiles', '--json']).stdout).toBe(once);
    const later = planCommand(['rockpool-tiles', '--json', '--at', '2026-11-28T09:00']).stdout;
    const first = planDocument.parse(JSON.parse(later)).runs[0]?.stages[0]?.startAt;
    expect(first && first >= '2026-11-28T09:00:00.000Z').toBe(true);
  });

  it('counts back from a day to the latest start with the odds that are asked for', () => {
    const asked = ['orchard-loaves', '--ready-by', '2027-03-20', '--odds', '0.6'];
    const { stdout, stderr, status } = planCommand(asked);
    expect({ stderr, status }).toEqual({ stderr: '', status: 0 });
    expect(stdout).toMatch(
      /^Cured by Sat 20 Mar with odds of 60%\n─+\nBegin \w+ \d+ \w+, \d\d:\d\d at the latest\./,
    );
    expect(stdout).toContain('Tide table');
    const answer = latestStartDocument.parse(JSON.parse(planCommand([...asked, '--json']).stdout));
    expect(answer.plan.runs[0]?.stages[0]?.startAt).toBe(answer.beginAt);
    expect(answer.odds?.soundByTheDay).toBeGreaterThanOrEqual(0.6);
    const schema = planCommand(['--schema', '--odds', '0.6']).stdout;
    expect(schema).toContain('benchtide.latest-start/3');
  });

  it('ends with 2 where no start has the odds, and with 64 where the question makes no sense', () => {
    const never = planCommand(['orchard-loaves', '--ready-by', '2026-12-05', '--odds', '0.9']);
    expect(never.status).toBe(2);
    expect(never.stdout).toContain('There is no plan.');
    const wrong = [
      [['orchard-loaves', '--odds', '0.9'], 'Ready by when?'],
      [['orchard-loaves', '--odds', '90'], 'accepted: a number from 0.01 to 0.999'],
      [['orchard-loaves', '--odds', '0.9', '--ready-by', 'soon'], '--ready-by soon is no day'],
      [['orchard-loaves', '--odds', '0.9', '--ready-by', '2027-02-30'], 'There is no such day.'],
      [['orchard-loaves', '--odds', '0.9', '--ready-by', '2027-03-20', '--run', 'pears'], 'pears'],
      [['orchard-loaves', '--ready-by', '2027-03-20'], '--ready-by goes with --odds'],
    ] as const;
    for (const [args, says] of wrong) {
      const { stderr, status } = planCommand(args);
      expect(status, says).toBe(64);
      expect(stderr).toContain(says);
    }
  });

  it('ends with 2 and the reasons when there is no plan', () => {
    const file = fileWith((text) => text.replace('count: 12,', 'count: 13,'));
    const { stdout, status } = planCommand([file]);
    expect(status).toBe(2);
    expect(stdout).toContain('needs 13 cavities of “Cups” at once; there are 12.');
    const late = fileWith((text) =>
      text.replace(/(startAfter: 2026-11-27T18:00)/, '$1, readyBy: 2026-12-12'),
    );
    const told = planCommand([late]).stdout.replace(/\s+/g, ' ');
    expect(told).toContain('at the earliest; it must be by Sat 12 Dec.');
    expect(told).toContain('Ask for “Twelve cups” by Tue 5 Jan.');
  });
});

describe('bad input', () => {
  const cases: [what: string, from: string | RegExp, to: string, line: number, ...says: string[]][] = [
    [
      'a negative weight',
      'percent: 50',
      'percent: -50',
      24,
      'recipes[0].fats[0].percent',
      '-50',
      '0.01% to 100%',
    ],
    ['an unknown fat', 'fat: olive', 'fat: unobtainium', 24, 'recipes[0].fats[0].fat', 'unobtainium'],
    [
      'a lye concentration of 60 %',
      'lyeConcentrationPercent: 33',
      'lyeConcentrationPercent: 60',
      27,
      'recipes[0].lyeConcentrationPercent',
      '60',
      '20% to 50%',
    ],
    [
      'hours that never open',
      /\[\{ from: .*\}\]/g,
      '[]',
      10,
      'workshop.hours.weekly',
      'never open',
      'at least one span',
    ],
    [
      'links in a circle',
      '{ from: unmould, to: turn, atLeastMin: 720 }',
      '{ from: turn, to: pour-under }\n      - { from: unmould, to: turn }',
      48,
      'wait for each other in a circle',
    ],
    ['shares that do not add up', 'percent: 50', 'percent: 40', 24, 'recipes[0].fats', '90', '100'],
    ['a field nobody knows', 'title: Base', 'titel: Base', 22, 'recipes[0].titel', 'no field “titel”'],
    [
      'a design nobody knows',
      'design: cup-soap',
      'design: teapot',
      53,
      'runs[0].design',
      'teapot',
      'cup-soap',
    ],
    [
      'cavities that overflow',
      'cavityMl: 80',
      'cavityMl: 70',
      33,
      'parts[0].perPieceMl',
      '75 ml',
      'holds 70 ml',
    ],
    ['a zone that is none', 'Europe/Dublin', 'Europe/Atlantis', 5, 'workshop.timeZone', 'Europe/Atlantis'],
    ['a date that is none', '2026-11-27T18:00', '2026-02-30T18:00', 53, 'runs[0].startAfter', '2026-02-30'],
    ['broken YAML', 'count: 12,', 'count: [12,', 53, 'not valid YAML'],
  ];

  it.each(cases)(
    '%s: file, line, field, value and what is accepted; status 64',
    (_what, from, to, line, ...says) => {
      const file = fileWith((text) => text.replace(from, to));
      const { stdout, stderr, status } = planCommand([file]);
      expect(status).toBe(64);
      expect(stdout).toBe('');
      for (const words of says) expect(stderr).toContain(words);
      expect(stderr).toMatch(new RegExp(`run\\.yaml:${String(line)}: `));
      expect(stderr).not.toMatch(/\n\s+at /);
    },
  );

  it('names what is wrong with the command itself', () => {
    expect(planCommand([])).toMatchObject({ status: 64, stdout: '' });
    expect(planCommand(['no-such-file']).stderr).toContain(
      'no-such-file: cannot be read: there is no such file',
    );
    expect(planCommand(['rockpool-tiles', '--at', 'tonight']).stderr).toContain(
      '--at tonight is no local time',
    );
    expect(planCommand(['rockpool-tiles', '--at', '2026-02-30T10:00'])).toMatchObject({
      status: 64,
      stdout: '',
    });
    expect(planCommand(['rockpool-tiles', '--speed']).status).toBe(64);
  });
});
