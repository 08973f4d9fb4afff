import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { rules, stateIds } from '#clocks';
import { clocksDocument, soapStates, type ClockRules, type ClocksDocument, type OnlyDone } from '#contract';
import { clocksCommand } from './clocks-command.js';
import { printClocks } from './print-clocks.js';
import { textsOf } from './texts-of.js';

const english = textsOf({ language: 'en', units: 'metric' }, 'Europe/Dublin');

function documentOf(name: string): ClocksDocument {
  const { stdout, status, stderr } = clocksCommand([name, '--json']);
  expect([status, stderr]).toEqual([0, '']);
  return JSON.parse(stdout) as ClocksDocument;
}

describe('npm run clocks', () => {
  it('gives every clock with reasons whose product is its likely value', () => {
    for (const name of ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets']) {
      const document = documentOf(name);
      expect(clocksDocument.parse(document)).toEqual(document);
      const clocks = document.runs.flatMap((run) => run.parts.flatMap((part) => part.clocks));
      expect(clocks.length).toBeGreaterThan(10);
      for (const { baseMin, reasons, band } of clocks) {
        const product = reasons.reduce((so, { factor }) => so * factor, baseMin);
        expect(Math.abs(product / band.likely - 1)).toBeLessThan(1e-12);
      }
    }
  });

  it('prints a table, what the log has taught and why', () => {
    const { stdout } = clocksCommand(['rockpool-tiles']);
    expect(stdout).toMatch(
      /\n {2}firm enough to unmould +\d+ h \(\d+ h to \d+ h\) +after the end of the pour/,
    );
    expect(stdout).toContain('What your log has taught');
    expect(stdout).toContain('trial-two/#4');
    expect(stdout).toMatch(/\nWhy\n {2}Stronger lye/);
    expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThan(140);
  });

  it('says where a log with nothing but done stages has taught nothing', () => {
    const untaught = documentOf('tests/fixtures/ok/two-layer.yaml');
    const [run] = untaught.runs;
    if (run === undefined) throw new Error('no run');
    const told = (onlyDone: OnlyDone[]): string =>
      printClocks({ ...untaught, runs: [{ ...run, lessons: [], onlyDone }] }, english);
    expect(told([{ pace: 'set', batches: 12 }]).replaceAll(/\s+/g, ' ')).toContain(
      'how the soap sets: you only logged when it was done (batches: 12), never a look too early.',
    );
    expect(told([])).not.toContain('What your log has taught');
  });

  it('lists each rule and state with its evidence', () => {
    const { stdout } = clocksCommand(['--rules', '--json']);
    const listed = JSON.parse(stdout) as ClockRules;
    expect(listed.rules.map(({ rule }) => rule)).toEqual(rules.map(({ id }) => id));
    expect(listed.states.map(({ state }) => state)).toEqual(stateIds);
    for (const { evidence } of [...listed.rules, ...listed.states]) {
      expect(['common practice', 'from memory', 'published']).toContain(evidence.kind);
    }
    const printed = clocksCommand(['--rules']).stdout;
    expect(printed).toContain('\n  batter temperature: ');
    expect(printed.match(/; σ /g)).toHaveLength(rules.length);
  });

  it('knows the states that the contract names, and no other', () => {
    expect([...soapStates].sort()).toEqual([...stateIds].sort());
  });

  it('prints what its JSON Schema describes', () => {
    const schema = JSON.parse(clocksCommand(['--schema']).stdout) as object;
    const validate = new Ajv2020({ strict: false, validateFormats: false }).compile(schema);
    expect(validate(documentOf('rockpool-tiles')), JSON.stringify(validate.errors)).toBe(true);
  });

  it.each([
    [[], 'Which run file?'],
    [['rockpool-tiles', '--fats'], '--fats belongs to npm run amounts'],
    [['no-such-file'], 'there is no such file'],
  ])('refuses %j with status 64', (args, says) => {
    const { stdout, stderr, status } = clocksCommand(args);
    expect([stdout, status]).toEqual(['', 64]);
    expect(stderr).toContain(says);
  });
});
