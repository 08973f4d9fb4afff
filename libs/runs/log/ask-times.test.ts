import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, runFileInput } from '#runs';
import { isoInstant, minute, minuteOfIso, type Issue } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import type { PartClocks } from '../clocks/forecast-clocks.js';
import { resolveRuns } from '../input/resolve-run.js';
import { askTimes } from './ask-times.js';

const file = loadRunFile('ok', 'two-layer');
const [cups] = resolveRuns(file);
if (cups === undefined) throw new Error('no run');

const POURED = minuteOfIso('2026-11-27T19:52:00Z');
const after = (minutes: number): string => isoInstant(minute(POURED + minutes));
const made: LogEntry[] = [
  { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' },
  { kind: 'done', stage: 'pour-over', at: isoInstant(POURED) },
];

/** Firm after 1000 minutes, give or take a tenth in logarithms: three standard deviations are 741 and 1350 minutes. */
const forecast = { medianMin: 1000, sigma: 0.1 };
const clocks = new Map([['over', new Map([['firm', forecast]]) as unknown as PartClocks]]);
const asked = (...entries: LogEntry[]): Issue[] =>
  askTimes(
    cups,
    [...made, ...entries].map((entry) => ({ entry })),
    clocks,
  );

const look = (saw: 'not-yet' | 'already' | 'just-now', minutes: number, more: object = {}): LogEntry => ({
  ...{ kind: 'seen', part: 'over', state: 'firm', saw, at: after(minutes) },
  ...more,
});
/** Unmoulding takes ten minutes before it handles the soap: told as begun so that it handles it then. */
const unmould = (minutes: number, more: object = {}): LogEntry => ({
  ...{ kind: 'done', stage: 'unmould', startedAt: after(minutes - 10), at: after(minutes + 5) },
  ...more,
});
const notFirm = (minutes: number, more: object = {}): LogEntry => ({
  ...{ kind: 'not-yet', stage: 'unmould', at: after(minutes) },
  ...more,
});

describe('a time that is hard to believe', () => {
  it.each([
    ['a look, not yet', look('not-yet', 1349), look('not-yet', 1350)],
    ['a look, already', look('already', 741), look('already', 740)],
    ['a look, just now, early', look('just-now', 741), look('just-now', 740)],
    ['a look, just now, late', look('just-now', 1349), look('just-now', 1350)],
    ['not ready for a stage', notFirm(1349), notFirm(1350)],
    ['a stage that was done', unmould(741), unmould(740)],
  ])('is asked about three standard deviations from its forecast: %s', (_what, near, far) => {
    expect(asked(near)).toEqual([]);
    const [issue, ...more] = asked(far) as [Issue & { leastMin: number; mostMin: number }];
    expect(more).toEqual([]);
    expect(issue).toMatchObject({ code: 'log.time-doubtful', path: [2, 'at'], state: 'firm', value: far.at });
    expect(issue).toMatchObject({ title: 'Upper layer' });
    expect([issue.leastMin, issue.mostMin].map(Math.round)).toEqual([741, 1350]);
  });

  it.each([
    ['a look', look('just-now', 5000, { confirmed: true })],
    ['not ready', notFirm(5000, { confirmed: true })],
    ['a stage', unmould(60, { confirmed: true })],
  ])('is taken as it is once it is confirmed: %s', (_what, entry) => {
    expect(asked(entry)).toEqual([]);
  });

  it('is none where a stage was done late: the maker comes when she can', () => {
    expect(asked(unmould(50_000))).toEqual([]);
    expect(asked(look('already', 50_000))).toEqual([]);
    expect(asked(look('not-yet', 1))).toEqual([]);
  });

  it('is not doubted again where an earlier look of this run has told it', () => {
    const early = look('already', 600, { confirmed: true });
    expect(asked(early, unmould(640))).toEqual([]);
    const late = notFirm(2000, { confirmed: true });
    expect(asked(late, look('not-yet', 1900))).toEqual([]);
    // Nor does one at another state of the part.
    expect(asked(look('already', 600, { state: 'patchable', confirmed: true }), unmould(640))).toHaveLength(
      1,
    );
    // A look that said the opposite tells nothing of the sort.
    expect(asked(look('not-yet', 600), unmould(640))).toHaveLength(1);
  });

  it('is none of a state that nothing is forecast for', () => {
    expect(asked(look('not-yet', 90_000, { state: 'skinned' }))).toEqual([]);
  });
});

describe('asking back', () => {
  const fileWith = (...entries: LogEntry[]) => ({
    ...file,
    log: [...made, ...entries].map((entry) => ({ run: 'cups', entry })),
  });

  it('is done when the entry is made and when a file is read, not of what stands in the log', () => {
    const slip = unmould(60);
    expect(checkEntry(fileWith(), 'cups', slip)).toMatchObject([{ code: 'log.time-doubtful', path: ['at'] }]);
    expect(checkEntry(fileWith(), 'cups', { ...slip, confirmed: true } as LogEntry)).toEqual([]);
    const read = runFileInput(fileWith(slip));
    expect(read.ok ? [] : read.issues).toMatchObject([
      { code: 'log.time-doubtful', path: ['log', 2, 'entry', 'at'] },
    ]);
    const turned: LogEntry = { kind: 'done', stage: 'turn', at: after(5000) };
    expect(checkEntry(fileWith(slip), 'cups', turned)).toEqual([]);
  });

  it('goes by what the workshop has learned', () => {
    const learned = (mean: number) => ({
      ...{ earliest: [], uses: [] },
      paces: [{ pace: 'set' as const, workshop: { mean, sd: 0.05 }, spread: 1, batches: 9, recipes: [] }],
    });
    // Three times as quick as the rules say: what is early for others is not for this one.
    const early = unmould(600);
    const codes = (mean: number) =>
      checkEntry({ ...fileWith(), learned: learned(mean) }, 'cups', early).map(({ code }) => code);
    expect(codes(0)).toEqual(['log.time-doubtful']);
    expect(codes(-1.1)).toEqual([]);
  });
});
