import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { minuteOfIso, type Issue } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { foldLog, type FoldedLog } from './fold-log.js';

const file = loadRunFile('ok', 'two-layer');
const [cups] = resolveRuns({
  ...file,
  designs: file.designs.map((design) => ({
    ...design,
    parts: [
      ...design.parts,
      { ...design.parts[0]!, key: 'spare', title: 'Never poured' },
      { key: 'shell', title: 'Shell', kind: 'decor' as const, perPiece: 1, breakagePercent: 0 },
    ],
    stages: [
      ...design.stages,
      { ...design.stages[3]!, key: 'press', kind: 'press-decor' as const, part: 'shell' },
    ],
  })),
});
if (cups === undefined) throw new Error('no run');

const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };

function folded(...entries: LogEntry[]): FoldedLog {
  return foldLog(
    cups!,
    entries.map((entry) => ({ entry })),
  );
}

const issuesOf = (...entries: LogEntry[]): readonly Issue[] => folded(...entries).issues;

describe('a weighing of pieces as they are made', () => {
  const at = '2026-11-27T19:55:00Z';
  const weighed = (usedG: number, more: object = {}): LogEntry => ({
    ...{ kind: 'weighed', part: 'over', pieces: 6, usedG, at },
    ...more,
  });
  const range = (): { low: number; high: number } => {
    const [issue] = issuesOf(under, over, weighed(1e6));
    return issue?.accepted as { kind: 'range'; low: number; high: number };
  };

  it('is taken where it is within four times what the design says', () => {
    const { low, high } = range();
    // Six times 35 mL of batter, a little heavier than water.
    expect(Math.sqrt(low * high) / (6 * 35)).toBeGreaterThan(1);
    expect(Math.sqrt(low * high) / (6 * 35)).toBeLessThan(1.1);
    expect(high / low).toBeCloseTo(16, 9);
    for (const usedG of [low, high]) expect(issuesOf(under, over, weighed(usedG))).toEqual([]);
    for (const usedG of [low * 0.999, high * 1.001]) {
      expect(issuesOf(under, over, weighed(usedG))).toMatchObject([
        {
          ...{ code: 'log.weighing-implausible', path: [2, 'usedG'], value: usedG, usedG, pieces: 6 },
          ...{ title: 'Upper layer', accepted: { kind: 'range', unit: 'g' } },
        },
      ]);
    }
    const issue = issuesOf(under, over, weighed(high * 2))[0] as Issue & { expectedG: number };
    expect(issue.expectedG).toBeCloseTo(high / 4, 9);
  });

  it('is kept with what it tells', () => {
    const kept = { part: 'over', pieces: 6, usedG: 230, at: minuteOfIso(at), entry: '#3' };
    expect(folded(under, over, weighed(230)).progress.weighed).toEqual([kept]);
    expect(folded(under, over, weighed(9000, { confirmed: true })).progress.weighed).toHaveLength(1);
    expect(folded(under, over, weighed(9000)).progress.weighed).toEqual([]);
  });

  it('is of a part that a scale can tell, once it is made', () => {
    for (const part of ['lid', 'spare', 'shell']) {
      expect(issuesOf(under, over, weighed(230, { part }))).toMatchObject([
        { code: 'part.unknown', path: [2, 'part'], value: part, known: ['under', 'over', 'spare'] },
      ]);
    }
    expect(issuesOf(under, weighed(230))).toEqual([
      {
        ...{ code: 'log.not-made', path: [1, 'part'], value: 'over' },
        ...{ title: 'Upper layer', stage: 'Pour the upper layer' },
      },
    ]);
  });

  it('is of no more pieces than were made', () => {
    const mass = 38 * 12;
    expect(issuesOf(under, over, weighed(mass, { pieces: 12 }))).toEqual([]);
    expect(issuesOf(under, over, weighed(mass, { pieces: 13 }))).toEqual([
      {
        ...{ code: 'log.more-than-made', path: [2, 'pieces'], value: 13, made: 12, pieces: 13 },
        accepted: { kind: 'range', low: 1, high: 12, unit: 'pieces' },
      },
    ]);
  });
});

describe('a weigh-in', () => {
  const at = '2026-12-01T18:00:00Z';
  const weighIn: LogEntry = { kind: 'weigh-in', pieces: 6, massG: 480, at };

  it('is kept with what it tells, once the soap is out of its moulds', () => {
    const { issues, progress } = folded(under, over, unmould, weighIn);
    expect(issues).toEqual([]);
    expect(progress.weighIns).toEqual([{ pieces: 6, massG: 480, at: minuteOfIso(at), entry: '#4' }]);
  });

  it('waits for the stage that is to come before', () => {
    expect(issuesOf(under, over, weighIn)).toEqual([
      { code: 'log.cure-not-begun', path: [2, 'at'], value: at, at, stage: 'Unmould' },
    ]);
  });

  it('has nothing to weigh where all that cures was left out', () => {
    const drop = (part: string): LogEntry => ({
      ...{ kind: 'mishap', part, mishap: 'seized', response: 'drop-part', at: '2026-11-27T20:00:00Z' },
    });
    const [plain] = resolveRuns(file);
    const lines = [under, over, drop('under'), drop('over'), weighIn].map((entry) => ({ entry }));
    expect(foldLog(plain!, lines).issues).toEqual([
      { code: 'log.cure-not-begun', path: [4, 'at'], value: at, at },
    ]);
  });
});
