import { describe, expect, it } from 'vitest';
import type { LogEntry, PartAmounts } from '#contract';
import { writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { assessRuns } from '../assess-runs.js';
import { liveAttempts } from '../assessed-run.js';
import { resolveRuns } from '../input/resolve-run.js';
import { foldLog } from './fold-log.js';

const file = loadRunFile('ok', 'swirl-loaf');
const [loaves] = resolveRuns(file);
if (loaves === undefined) throw new Error('no run');

type Mishap = Extract<LogEntry, { kind: 'mishap' }>;

const at = (time: string): string => `2026-11-27T${time}:00Z`;
const done = (stage: string, time: string): LogEntry => ({ kind: 'done', stage, at: at(time) });
const went = (mishap: Mishap['mishap'], part: string, more: Partial<Mishap> = {}): LogEntry => ({
  ...{ kind: 'mishap', mishap, part, response: 'remake', at: at('18:40') },
  ...more,
});
const mixed = done('mix', '18:15');
const poured = done('pour', '18:20');
const topped = done('top', '18:32');

function attempts(...entries: LogEntry[]): string[] {
  const lines = entries.map((entry) => ({ entry }));
  const { progress, issues } = foldLog(loaves!, lines);
  expect(issues).toEqual([]);
  return progress.attempts
    .filter(({ stage }) => ['mix', 'pour', 'top'].includes(stage.key))
    .map(({ stage, attempt, status, count }) => `${stage.key} ${attempt} ${status} ${count}`);
}

describe('what was mixed together', () => {
  it('is spoilt together while it is in the bowl, and mixed again at once', () => {
    expect(attempts(mixed, went('seized', 'swirl'))).toEqual([
      ...['mix 1 spoilt 20', 'mix 2 open 20', 'pour 1 spoilt 20', 'pour 2 open 20'],
      ...['top 1 spoilt 20', 'top 2 open 20'],
    ]);
  });

  it('is spared once it is poured, unless lye and fats have parted', () => {
    expect(attempts(mixed, poured, went('seized', 'top'))).toEqual([
      ...['mix 1 spoilt 20', 'mix 2 open 20', 'pour 1 done 20', 'top 1 spoilt 20', 'top 2 open 20'],
    ]);
    expect(attempts(mixed, poured, went('separated', 'top'))).toEqual([
      ...['mix 1 spoilt 20', 'mix 2 open 20', 'pour 1 spoilt 20', 'pour 2 open 20'],
      ...['top 1 spoilt 20', 'top 2 open 20'],
    ]);
  });

  it('is sound where the maker says so, or where it went wrong later, in a part alone', () => {
    expect(attempts(mixed, went('seized', 'swirl', { alone: true }))).toContain('top 1 open 20');
    expect(attempts(mixed, poured, topped, went('cracked', 'top', { pieces: 3 }))).toEqual([
      ...['mix 1 spoilt 20', 'mix 2 open 3', 'pour 1 done 20', 'top 1 spoilt 20', 'top 2 open 3'],
    ]);
  });

  it('is mixed again although nobody logged the mixing', () => {
    expect(attempts(went('seized', 'swirl'))).toEqual([
      ...['mix 1 open 20', 'pour 1 spoilt 20', 'pour 2 open 20', 'top 1 spoilt 20', 'top 2 open 20'],
    ]);
  });

  it('stays apart once one part of it was made again', () => {
    const again = went('cracked', 'top', { at: at('19:00') });
    const seized = went('separated', 'top', { at: at('20:00') });
    expect(attempts(mixed, poured, topped, again, seized)).toContain('pour 1 done 20');
  });
});

describe('amounts after a mishap', () => {
  const sheetAfter = (...entries: LogEntry[]) => {
    const log = entries.map((entry) => ({ run: 'loaves', entry }));
    const sheet = writeBatchSheet({ ...file, log });
    if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
    return sheet.value;
  };
  const spoiltOf = (...entries: LogEntry[]): PartAmounts[] => {
    const log = entries.map((entry) => ({ run: 'loaves', entry }));
    const assessed = assessRuns({ ...file, log });
    return assessed.ok ? (assessed.value[0]?.spoilt ?? []).map(({ amounts }) => amounts) : [];
  };
  const fatsOf = (amounts: readonly PartAmounts[]): number =>
    amounts.reduce((sum, { batch }) => sum + (batch?.fatsG ?? 0), 0);

  it('count a spoilt batch once, with all parts that were in the bowl', () => {
    const all = fatsOf(sheetAfter().runs[0]?.amounts ?? []);
    const spoilt = spoiltOf(mixed, went('seized', 'swirl'));
    expect(spoilt.map(({ part }) => part)).toEqual(['swirl', 'top']);
    expect(fatsOf(spoilt)).toBeCloseTo(all, 9);
    expect(spoiltOf(mixed, poured, went('seized', 'top')).map(({ part }) => part)).toEqual(['top']);
  });

  it('weigh parts together that are mixed again at once, and apart what is made again alone', () => {
    const batches = (...entries: LogEntry[]) =>
      sheetAfter(...entries).runs[0]?.batches.map(({ parts }) => parts.join(' '));
    expect(batches(mixed, went('seized', 'swirl'))).toEqual(['swirl top']);
    expect(batches(mixed, poured, topped, went('cracked', 'top', { pieces: 3 }))).toEqual(['swirl', 'top']);
  });

  it('ask for nothing more once the batch is mixed into its first part', () => {
    expect(sheetAfter(mixed, poured).gather.lines).toEqual([]);
    expect(sheetAfter().gather.lines.length).toBeGreaterThan(5);
  });

  it('take a weighing of one part of the batch', () => {
    const weighed: LogEntry = {
      ...{ kind: 'weighed', part: 'top', pieces: 20, usedG: 400, at: at('19:00') },
    };
    const [, top] = sheetAfter(mixed, poured, topped, weighed).runs[0]?.amounts ?? [];
    expect(top?.part).toBe('top');
    expect(spoiltOf(mixed, poured, topped, weighed)).toEqual([]);
  });
});

it('still prepares a batch whose stages name a part that is left out', () => {
  const drop: LogEntry = {
    kind: 'mishap',
    part: 'swirl',
    mishap: 'riced',
    response: 'drop-part',
    at: at('17:00'),
  };
  const assessed = assessRuns({ ...file, log: [{ run: 'loaves', entry: drop }] });
  const live = assessed.ok ? liveAttempts(assessed.value[0]!.assessed).map(({ stage }) => stage.key) : [];
  expect(live).toContain('mix');
  expect(live).not.toContain('pour');
});
