import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { badBatch } from './bad-batch.js';
import { foldLog, type FoldedLog } from './fold-log.js';
import { builtOn } from './respond-to-mishap.js';
import { handsOnMinutes } from './run-progress.js';

const file = loadRunFile('ok', 'two-layer');
const [cups] = resolveRuns(file);
if (cups === undefined) throw new Error('no run');

type Mishap = Extract<LogEntry, { kind: 'mishap' }>;

const at = (time: string): string => `2026-11-27T${time}:00Z`;
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: at('18:32') };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: at('19:52') };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };
const mishap = (
  part: string,
  kind: Mishap['mishap'],
  time: string,
  more: Partial<Mishap> = {},
): LogEntry => ({
  ...{ kind: 'mishap', part, mishap: kind, at: time },
  ...more,
});

function folded(...entries: LogEntry[]): FoldedLog {
  return foldLog(
    cups!,
    entries.map((entry) => ({ entry })),
  );
}

const attempts = (log: FoldedLog): string[] =>
  log.progress.attempts.map(
    ({ stage, attempt, status, count }) => `${stage.key} ${attempt} ${status} ${count}`,
  );

describe('a batch that is made again', () => {
  it('takes all with it that was done on it, and leaves what was not', () => {
    const log = folded(under, over, unmould, mishap('over', 'separated', '2026-11-29T19:00:00Z'));
    expect(log.issues).toEqual([]);
    expect(attempts(log)).toEqual([
      'pour-under 1 done 12',
      'pour-over 1 spoilt 12',
      'pour-over 2 open 12',
      'unmould 1 spoilt 12',
      'unmould 2 open 12',
      'turn 1 open 12',
    ]);
    const again = log.progress.attempts.filter(({ attempt }) => attempt === 2);
    for (const each of again) expect(each.notBefore).toBe(minuteOfIso('2026-11-29T19:00:00Z'));
    // What was done has its own times still.
    expect(log.progress.attempts[1]?.endedAt).toBe(minuteOfIso(at('19:52')));
  });

  it('ends with the mishap where it was never finished', () => {
    const log = folded(under, mishap('over', 'seized', at('19:40')));
    const now = minuteOfIso(at('19:40'));
    expect(log.progress.attempts[1]).toMatchObject({ status: 'spoilt', startedAt: now, endedAt: now });
    expect(attempts(log).slice(1, 4)).toEqual([
      'pour-over 1 spoilt 12',
      'pour-over 2 open 12',
      'unmould 1 open 12',
    ]);
  });

  it('is for the pieces that it concerns, and for no more than there are', () => {
    expect(attempts(folded(under, over, mishap('over', 'seized', at('20:00'), { pieces: 5 })))).toContain(
      'pour-over 2 open 5',
    );
    expect(attempts(folded(under, over, mishap('over', 'seized', at('20:00'), { pieces: 50 })))).toContain(
      'pour-over 2 open 12',
    );
  });

  it('can go wrong again', () => {
    const twice = [mishap('over', 'seized', at('20:00')), mishap('over', 'seized', at('21:00'))];
    const log = folded(under, over, ...twice);
    expect(attempts(log).slice(1, 4)).toEqual([
      'pour-over 1 spoilt 12',
      'pour-over 2 spoilt 12',
      'pour-over 3 open 12',
    ]);
    expect(log.progress.mishaps.map(({ attempt }) => attempt)).toEqual([1, 2]);
  });

  it('is not spoilt where it only ran short: the rest is made in a second one', () => {
    const done = attempts(folded(under, over, mishap('over', 'ran-short', at('20:00'), { pieces: 3 })));
    expect(done.slice(1, 3)).toEqual(['pour-over 1 done 12', 'pour-over 2 open 3']);
    const open = folded(under, mishap('over', 'ran-short', at('20:00'), { pieces: 3 }));
    const now = minuteOfIso(at('20:00'));
    expect(open.progress.attempts[1]).toMatchObject({ status: 'done', startedAt: now, endedAt: now });
  });
});

describe('a mishap', () => {
  it('changes nothing but the record where one carries on', () => {
    const log = folded(under, over, mishap('over', 'holes', at('20:00')));
    expect(attempts(log)).toEqual(attempts(folded(under, over)));
    expect(log.progress.mishaps).toEqual([
      { part: 'over', attempt: 1, mishap: 'holes', response: 'carry-on', at: minuteOfIso(at('20:00')) },
    ]);
  });

  it('leaves a part out where the maker does, once', () => {
    const drop = mishap('over', 'riced', at('20:00'), { response: 'drop-part' });
    const log = folded(under, over, drop);
    expect([...log.progress.dropped]).toEqual(['over']);
    expect(attempts(log)).toEqual(attempts(folded(under, over)));
    expect(folded(under, over, drop, drop).issues).toMatchObject([
      { code: 'part.unknown', path: [3, 'part'], known: ['under'] },
    ]);
  });

  it('makes a bad batch of the one that is there, until it is made again', () => {
    const bad = (...entries: LogEntry[]): boolean => {
      const { progress } = folded(under, over, ...entries);
      return badBatch({ run: cups, progress, clocks: new Map() }, 'over');
    };
    expect(bad()).toBe(false);
    expect(bad(mishap('over', 'riced', at('20:00')))).toBe(true);
    expect(bad(mishap('under', 'riced', at('20:00')))).toBe(false);
    expect(bad(mishap('over', 'seized', at('20:00')))).toBe(false);
    expect(bad(mishap('over', 'ran-short', at('20:00'), { response: 'carry-on' }))).toBe(false);
    const { progress } = folded(under, mishap('over', 'seized', at('19:40'), { response: 'drop-part' }));
    expect(badBatch({ run: cups, progress, clocks: new Map() }, 'over')).toBe(false);
  });

  it('is of a part of the design', () => {
    expect(folded(under, over, mishap('lid', 'holes', at('20:00'))).issues).toMatchObject([
      { code: 'part.unknown', path: [2, 'part'], value: 'lid', known: ['under', 'over'] },
    ]);
  });
});

it('finds what builds on a stage through links and waits', () => {
  expect([...builtOn(cups, 'pour-under')]).toEqual(['pour-under', 'pour-over', 'unmould', 'turn']);
  expect([...builtOn(cups, 'unmould')]).toEqual(['unmould', 'turn']);
  expect([...builtOn(cups, 'turn')]).toEqual(['turn']);
});

it('counts hands-on time for each piece, in minutes that are begun', () => {
  const stage = { ...file.designs[0]!.stages[0]!, setupMin: 30, perPieceS: 10 };
  expect([0, 1, 6, 7, 12].map((count) => handsOnMinutes(stage, count))).toEqual([30, 31, 31, 32, 32]);
});
