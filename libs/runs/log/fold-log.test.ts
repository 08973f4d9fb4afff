import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, checkInput, planRuns } from '#runs';
import { minuteOf, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { resolveRuns } from '../input/resolve-run.js';
import { foldLog, underEntries, type FoldedLog } from './fold-log.js';

const file = loadRunFile('ok', 'two-layer');
const withLog = (...entries: LogEntry[]) => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };

function folded(input: typeof file, ...entries: LogEntry[]): FoldedLog {
  const [run] = resolveRuns(input);
  return foldLog(
    run!,
    entries.map((entry) => ({ entry })),
  );
}

describe('a stage that is done', () => {
  it('has the times that are told, or as long before as it takes', () => {
    const began: LogEntry = { ...over, startedAt: '2026-11-27T19:20:00Z' };
    const { issues, progress } = folded(file, under, began);
    expect(issues).toEqual([]);
    // 30 min and 12 times 10 s.
    expect(progress.attempts[0]).toMatchObject({
      status: 'done',
      startedAt: minuteOfIso('2026-11-27T18:00:00Z'),
      endedAt: minuteOfIso(under.at),
      ...{ entry: '#1', place: 0 },
    });
    expect(progress.attempts[1]).toMatchObject({
      startedAt: minuteOfIso('2026-11-27T19:20:00Z'),
      endedAt: minuteOfIso(over.at),
      ...{ entry: '#2', place: 1 },
    });
  });

  it('may begin and end in one minute, and no earlier than it began', () => {
    expect(folded(file, { ...under, startedAt: under.at }).issues).toEqual([]);
    const startedAt = '2026-11-27T18:33:00Z';
    expect(folded(file, { ...under, startedAt }).issues).toEqual([
      {
        ...{ code: 'log.ends-before-start', path: [0, 'startedAt'], value: startedAt },
        ...{ accepted: { kind: 'until', at: under.at }, startedAt, at: under.at },
      },
    ]);
  });

  it('is one of the design, and not done before', () => {
    expect(folded(file, { ...under, stage: 'fly' }).issues).toMatchObject([
      {
        ...{ code: 'stage.unknown', path: [0, 'stage'], value: 'fly' },
        known: ['pour-under', 'pour-over', 'unmould', 'turn'],
      },
    ]);
    expect(folded(file, under, under).issues).toEqual([
      { code: 'log.already-done', path: [1, 'stage'], value: 'pour-under', title: 'Pour the lower layer' },
    ]);
  });

  it('names a stage once that was done over, where none is known of that name', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'under', mishap: 'seized', at: '2026-11-27T18:40:00Z' };
    expect(folded(file, under, seized, { ...under, stage: 'fly' }).issues).toMatchObject([
      { known: ['pour-under', 'pour-over', 'unmould', 'turn'] },
    ]);
  });

  it('comes after the making of its part, though nothing in the design says so', () => {
    const designs = file.designs.map((design) => ({ ...design, links: [], waits: [] }));
    const turn: LogEntry = { kind: 'done', stage: 'turn', at: '2026-11-29T18:00:00Z' };
    expect(folded({ ...file, designs }, turn).issues).toMatchObject([
      { code: 'log.out-of-order', path: [0, 'stage'], value: 'turn', missing: ['Pour the upper layer'] },
    ]);
    expect(folded({ ...file, designs }, over, turn).issues).toEqual([]);
  });

  it('comes after what is linked before it', () => {
    const turn: LogEntry = { kind: 'done', stage: 'turn', at: '2026-11-29T18:00:00Z' };
    expect(folded(file, under, over, turn).issues).toMatchObject([
      { code: 'log.out-of-order', missing: ['Unmould'] },
    ]);
  });

  it('waits for no part that was left out', () => {
    const drop: LogEntry = {
      ...{ kind: 'mishap', part: 'under', mishap: 'seized', response: 'drop-part' },
      at: '2026-11-27T18:40:00Z',
    };
    expect(folded(file, over).issues).toMatchObject([{ missing: ['Pour the lower layer'] }]);
    expect(folded(file, drop, over).issues).toEqual([]);
  });
});

describe('“not yet”', () => {
  const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-28T10:00:00Z' };

  it('puts the stage off until then', () => {
    const { issues, progress } = folded(file, under, over, notYet);
    expect(issues).toEqual([]);
    const at = minuteOfIso(notYet.at);
    expect(progress.notYet).toEqual([{ stage: 'unmould', attempt: 1, at, entry: '#3', place: 2 }]);
    expect(progress.attempts[2]).toMatchObject({ status: 'open', notBefore: at });
  });

  it('is said of a stage of the design', () => {
    expect(folded(file, { ...notYet, stage: 'fly' }).issues).toMatchObject([
      { code: 'stage.unknown', path: [0, 'stage'], value: 'fly' },
    ]);
  });

  it('is not said of what is done, nor of what waits for no soap', () => {
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
    expect(folded(file, under, over, unmould, notYet).issues).toMatchObject([
      { code: 'log.already-done', path: [3, 'stage'], title: 'Unmould' },
    ]);
    expect(folded(file, under, over, unmould, { ...notYet, stage: 'turn' }).issues).toEqual([
      { code: 'log.nothing-to-wait-for', path: [3, 'stage'], value: 'turn', title: 'Turn' },
    ]);
    const closes = file.designs.map((design) => ({
      ...design,
      waits: [...design.waits, { stage: 'turn', part: 'over', closes: 'pliable-until' as const }],
    }));
    expect(
      folded({ ...file, designs: closes }, under, over, unmould, { ...notYet, stage: 'turn' }).issues,
    ).toMatchObject([{ code: 'log.nothing-to-wait-for' }]);
  });
});

it('keeps which entries are to teach nothing', () => {
  const forget: LogEntry = { kind: 'forget', entry: '#1', at: under.at };
  expect([...folded(file, under, forget).progress.forgotten]).toEqual(['#1']);
});

it('tells issues where the entry stands in the file', () => {
  const { issues } = folded(file, under, under);
  expect(underEntries(['log'], issues).map(({ path }) => path)).toEqual([['log', 1, 'entry', 'stage']]);
  expect(underEntries([], issues, (place) => place + 5).map(({ path }) => path)).toEqual([
    [6, 'entry', 'stage'],
  ]);
});

describe('an entry that is checked before it is made', () => {
  it('must leave later ones possible', () => {
    const back: LogEntry = { kind: 'take-back', entry: '#1', at: over.at };
    expect(checkEntry(withLog(under, over), 'cups', back)).toEqual([
      {
        ...{ code: 'log.needed-later', path: ['entry'] },
        because: {
          ...{ code: 'log.out-of-order', path: [1, 'stage'], value: 'pour-over' },
          ...{ title: 'Pour the upper layer', missing: ['Pour the lower layer'] },
        },
      },
    ]);
    expect(checkEntry(withLog(under, over), 'cups', { ...back, entry: '#2' })).toEqual([]);
  });

  it('is told nothing of what was wrong before, nor of other runs', () => {
    const runs = [...file.runs, { ...file.runs[0]!, key: 'more' }];
    const wrong = { run: 'cups', entry: over };
    const elsewhere = { run: 'more', entry: over };
    const input = { ...file, runs, log: [elsewhere, wrong, { run: 'cups', entry: under }] };
    const again: LogEntry = { ...over, at: '2026-11-27T20:10:00Z' };
    expect(checkEntry(input, 'cups', again)).toEqual([]);
    expect(() => checkEntry(input, 'none', again)).toThrow('none');
    const poured = { ...file, runs, log: [{ run: 'more', entry: under }] };
    expect(checkEntry(poured, 'cups', under)).toEqual([]);
  });

  it('is asked about where it is hard to believe, itself and not what stands', () => {
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
    const weighIn = (massG: number, day: string): LogEntry => ({
      ...{ kind: 'weigh-in', pieces: 6, massG, at: `2026-12-${day}T18:00:00Z` },
    });
    const doubtful = { code: 'log.weigh-in-doubtful', path: ['massG'] };
    const before = withLog(under, over, unmould, weighIn(4800, '01'));
    expect(checkEntry(before, 'cups', weighIn(48, '02'))).toMatchObject([doubtful]);
    expect(checkEntry(before, 'cups', weighIn(480, '02'))).toEqual([]);
  });
});

it('refuses a stage before those it comes after, and names them', () => {
  const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
  expect(checkEntry(withLog(under), 'cups', unmould)).toMatchObject([
    { code: 'log.out-of-order', missing: ['Pour the upper layer'] },
  ]);
  expect(checkEntry(withLog(under, over), 'cups', unmould)).toEqual([]);
});

it('takes “not yet” only for soap that is setting', () => {
  const notYet = (stage: string): LogEntry => ({ kind: 'not-yet', stage, at: '2026-11-27T20:00:00Z' });
  expect(checkEntry(withLog(), 'cups', notYet('unmould'))).toMatchObject([
    { code: 'log.nothing-to-wait-for' },
  ]);
  expect(checkEntry(withLog(), 'cups', notYet('pour-under'))).toMatchObject([
    { code: 'log.nothing-to-wait-for' },
  ]);
  expect(checkEntry(withLog(under, over), 'cups', notYet('unmould'))).toEqual([]);
});

it('sees soap through that can no longer be cured by its day', () => {
  const late = { ...withLog(under, over), runs: file.runs.map((r) => ({ ...r, readyBy: '2026-12-06' })) };
  const planned = planRuns(late, { now: minuteOf(Date.parse('2026-11-27T20:00Z')), scenarios: 100 });
  if (!planned.ok) throw new Error('refused');
  expect(planned.value.status).toBe('planned');
  expect(planned.value.runs[0]?.stages.filter((s) => s.status === 'planned')).toHaveLength(2);
  expect(planned.value.runs[0]?.cautions).toMatchObject([
    { code: 'caution.missed-day', readyBy: expect.any(String) },
  ]);
});

it('refuses a wait for a state that the part has no clock for', () => {
  const designs = file.designs.map((design) => ({
    ...design,
    waits: [...design.waits, { stage: 'turn', part: 'over', opens: 'glaze-set' as const }],
  }));
  expect(checkInput({ ...file, designs })).toMatchObject([
    { code: 'design.state-without-clock', path: ['designs', 0, 'waits', 2, 'opens'], value: 'glaze-set' },
  ]);
});
