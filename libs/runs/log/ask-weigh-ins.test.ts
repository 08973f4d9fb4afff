import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, planRuns, runFileInput } from '#runs';
import { minuteOfIso, type Issue } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { askWeighIns } from './ask-weigh-ins.js';

const file = loadRunFile('ok', 'two-layer');
const made: LogEntry[] = [
  { kind: 'done', stage: 'pour-under', at: '2026-11-27T19:00:00Z' },
  { kind: 'done', stage: 'pour-over', at: '2026-11-27T20:30:00Z' },
  { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' },
];
const weighIn = (massG: number, over: object = {}): LogEntry => ({
  kind: 'weigh-in',
  pieces: 6,
  massG,
  at: '2026-12-01T18:00:00Z',
  ...over,
});

const fileWith = (...entries: LogEntry[]) => ({
  ...file,
  log: [...made, ...entries].map((entry) => ({ run: 'cups', entry })),
});
const codesOf = (...entries: LogEntry[]): unknown[] => {
  const read = runFileInput(fileWith(...entries));
  return read.ok ? [] : read.issues.map(({ code, path }) => [code, ...path]);
};

/** By the design a piece has 75 mL, about 75 to 80 g: five times more or less for six are some 2300 and 90 g. */
describe('a weigh-in far off its forecast', () => {
  it.each([4800, 48])('is asked back in a file unless it is confirmed: %d g', (massG) => {
    expect(codesOf(weighIn(massG))).toEqual([['log.weigh-in-doubtful', 'log', 3, 'entry', 'massG']]);
    expect(codesOf(weighIn(massG, { confirmed: true }))).toEqual([]);
  });

  it.each([2000, 480, 120])('is not one within five times: %d g', (massG) => {
    expect(codesOf(weighIn(massG))).toEqual([]);
  });

  it('is told with what was expected of it, and what would be believed', () => {
    const read = runFileInput(fileWith(weighIn(4800)));
    const [issue] = (read.ok ? [] : read.issues) as [Issue & { expectedEachG: number }];
    const { expectedEachG } = issue;
    // 75 mL of a batter that is heavier than water.
    expect(expectedEachG).toBeGreaterThan(75);
    expect(expectedEachG).toBeLessThan(78);
    expect(issue).toMatchObject({
      ...{ value: 4800, massG: 4800, pieces: 6 },
      accepted: { kind: 'range', unit: 'g', low: (expectedEachG * 6) / 5, high: expectedEachG * 6 * 5 },
    });
  });

  it('is one from five times on, in grams that were weighed before', () => {
    const first = { pieces: 4, confirmed: true };
    const then = { pieces: 4, at: '2026-12-08T18:00:00Z' };
    // Above by what was weighed, and below: the design's 76 g would have asked about the first and believed the last.
    for (const [firstG, massG, asked] of [
      [4000, 20_000, 1],
      [4000, 19_999, 0],
      [40, 9, 0],
      [40, 8, 1],
    ] as const) {
      expect(codesOf(weighIn(firstG, first), weighIn(massG, then))).toHaveLength(asked);
    }
  });

  it('does not blame the right one after a slip that was confirmed', () => {
    const then = { at: '2026-12-08T18:00:00Z' };
    expect(codesOf(weighIn(4800, { confirmed: true }), weighIn(470, then))).toEqual([]);
  });

  it('counts what is bought by the piece, and is none where nothing tells what a piece weighs', () => {
    const asked = (eachG: number | undefined, massG: number): number => {
      const shell = { key: 'shell', title: 'Shell', kind: 'decor' as const, perPiece: 2, breakagePercent: 0 };
      const designs = file.designs.map((design) => ({
        ...{ ...design, stages: [], links: [], waits: [] },
        parts: [eachG === undefined ? shell : { ...shell, eachG }],
      }));
      const [run] = resolveRuns({ ...file, designs });
      return askWeighIns(run!, [{ entry: weighIn(massG) }]).length;
    };
    // Six pieces with two shells of 10 g each.
    expect([asked(10, 120), asked(10, 601), asked(10, 23)]).toEqual([0, 1, 1]);
    expect(asked(undefined, 4800)).toBe(0);
  });

  it('is held against the design and all that was weighed before', () => {
    const later = { at: '2026-12-08T18:00:00Z' };
    expect(codesOf(weighIn(120), weighIn(2400, later))).toHaveLength(1);
    expect(codesOf(weighIn(120), weighIn(650, later))).toEqual([]);
    expect(codesOf(weighIn(4800, { confirmed: true }), weighIn(4700, later))).toEqual([]);
    // A slip says nothing of the next one.
    expect(codesOf(weighIn(4800), weighIn(470, later))).toEqual([
      ['log.weigh-in-doubtful', 'log', 3, 'entry', 'massG'],
    ]);
  });

  it('is not asked about again where it stands in the log, nor where it was taken back', () => {
    const stands = fileWith(weighIn(4800));
    const done: LogEntry = { kind: 'done', stage: 'turn', at: '2026-12-02T18:00:00Z' };
    expect(checkEntry(stands, 'cups', done)).toEqual([]);
    expect(planRuns(stands, { now: minuteOfIso(done.at), scenarios: 50 }).ok).toBe(true);
    const back: LogEntry = { kind: 'take-back', entry: '#4', at: '2026-12-01T18:01:00Z' };
    expect(codesOf(weighIn(4800), back)).toEqual([]);
  });
});

it('takes a weighing of a part far off its forecast once it is confirmed', () => {
  const weighed = (over: object): LogEntry => ({
    kind: 'weighed',
    part: 'over',
    pieces: 6,
    usedG: 2200,
    at: '2026-11-27T20:30:00Z',
    ...over,
  });
  const told = (over: object) => checkEntry(fileWith(), 'cups', weighed(over)).map(({ code }) => code);
  expect(told({})).toEqual(['log.weighing-implausible']);
  expect(told({ confirmed: true })).toEqual([]);
});
