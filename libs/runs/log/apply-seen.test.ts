import { describe, expect, it } from 'vitest';
import type { LogEntry, SoapState } from '#contract';
import { isoInstant, minute, minuteOfIso, type Issue } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { foldLog, type FoldedLog } from './fold-log.js';

const file = loadRunFile('ok', 'two-layer');
const [cups] = resolveRuns(file);
if (cups === undefined) throw new Error('no run');

const POURED = '2026-11-27T19:52:00Z';
const FREED = '2026-11-29T18:20:00Z';
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: POURED };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: FREED };

function folded(...entries: LogEntry[]): FoldedLog {
  return foldLog(
    cups!,
    entries.map((entry) => ({ entry })),
  );
}

function look(state: SoapState, saw: 'not-yet' | 'already' | 'just-now', at: string, over = {}): LogEntry {
  return { kind: 'seen', part: 'over', state, saw, at, ...over };
}

const after = (instant: string, minutes: number): string =>
  isoInstant(minute(minuteOfIso(instant) + minutes));
const issuesOf = (...entries: LogEntry[]): readonly Issue[] => folded(...entries).issues;

describe('a look at a part', () => {
  it('is at one that a stage makes, with the names of those that one does', () => {
    const design = {
      ...file.designs[0]!,
      parts: [
        ...file.designs[0]!.parts,
        { ...file.designs[0]!.parts[0]!, key: 'spare', title: 'Never poured' },
        { key: 'shell', title: 'Shell', kind: 'decor' as const, perPiece: 1, breakagePercent: 0 },
      ],
      stages: [
        ...file.designs[0]!.stages,
        { ...file.designs[0]!.stages[3]!, key: 'press', kind: 'press-decor' as const, part: 'shell' },
      ],
    };
    const [run] = resolveRuns({ ...file, designs: [design] });
    for (const part of ['lid', 'spare', 'shell']) {
      const line = { entry: { ...look('firm', 'already', FREED), part } as LogEntry };
      expect(foldLog(run!, [line]).issues).toEqual([
        {
          code: 'part.unknown',
          path: [0, 'part'],
          value: part,
          accepted: { kind: 'one-of', values: ['under', 'over'] },
          known: ['under', 'over'],
        },
      ]);
    }
  });

  it('is for a state that it comes into', () => {
    expect(issuesOf(under, over, look('glaze-set', 'already', FREED))).toEqual([
      {
        code: 'log.state-without-clock',
        path: [2, 'state'],
        value: 'glaze-set',
        title: 'Upper layer',
        state: 'glaze-set',
      },
    ]);
  });

  it('waits until the clock of the state runs: from the pour, and for the cure from the unmoulding', () => {
    const early = (state: SoapState, stage: string) => ({
      code: 'log.clock-not-started',
      path: [expect.any(Number), 'state'],
      value: state,
      ...{ state, stage },
    });
    expect(issuesOf(under, look('firm', 'not-yet', POURED))).toEqual([early('firm', 'Pour the upper layer')]);
    expect(issuesOf(under, over, look('cured', 'not-yet', FREED))).toEqual([early('cured', 'Unmould')]);
    expect(issuesOf(under, over, unmould, look('cured', 'not-yet', after(FREED, 1)))).toEqual([]);
    expect(issuesOf(under, over, unmould, look('cured', 'not-yet', FREED))).toMatchObject([
      { code: 'log.before-clock', path: [3, 'at'], value: FREED, at: FREED },
    ]);
  });

  it('says of a state of the batter when the lye went in', () => {
    const [lyeIn, seen] = ['2026-11-27T19:35:00Z', '2026-11-27T19:40:00Z'];
    expect(issuesOf(under, look('light-trace', 'already', seen))).toEqual([
      { code: 'log.clock-not-started', path: [1, 'since'], value: undefined, state: 'light-trace' },
    ]);
    // No later stage tells it either.
    expect(issuesOf(under, over, look('light-trace', 'already', FREED))).toMatchObject([
      { code: 'log.clock-not-started', path: [2, 'since'] },
    ]);
    const { issues, progress } = folded(under, look('light-trace', 'already', seen, { since: lyeIn }));
    expect(issues).toEqual([]);
    expect(progress.seen).toEqual([
      {
        ...{ part: 'over', attempt: 1, state: 'light-trace', saw: 'already' },
        ...{ at: minuteOfIso(seen), since: minuteOfIso(lyeIn), entry: '#2', place: 1 },
      },
    ]);
    expect(issuesOf(under, look('light-trace', 'already', lyeIn, { since: lyeIn }))).toMatchObject([
      { code: 'log.before-clock' },
    ]);
  });

  it('is of the batch that is there when one was made anew', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T20:00:00Z' };
    const again: LogEntry = { ...over, at: '2026-11-27T21:00:00Z' };
    const { progress } = folded(under, over, seized, again, look('firm', 'already', FREED));
    expect(progress.seen).toMatchObject([{ part: 'over', attempt: 2 }]);
    expect('since' in progress.seen[0]!).toBe(false);
    // Nothing has set since the new batch was poured.
    expect(issuesOf(under, over, seized, look('firm', 'not-yet', '2026-11-27T20:10:00Z'))).toMatchObject([
      { code: 'log.clock-not-started' },
    ]);
  });

  /** Five standard deviations are half a unit of the logarithm here: from 1000 e^-0.5 = 606.5 to 1000 e^0.5 = 1648.7. */
});
