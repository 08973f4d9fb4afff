import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { checkEntry, writeClocks, type RunsInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';
import type { PartClocks } from '../clocks/forecast-clocks.js';
import { resolveRuns } from '../input/resolve-run.js';
import { foldLog } from './fold-log.js';
import { sightingsOf, type Sighting } from './sightings.js';

const file = loadRunFile('ok', 'two-layer');
const withLog = (...entries: LogEntry[]): RunsInput => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:30:00Z' };

/** The layer takes 20 minutes to mix, so begun 4 minutes after the pour it goes on 24 minutes after it. */
it('takes a layer for held when it was poured on, not when its mixing began', () => {
  const over: LogEntry = {
    kind: 'done',
    stage: 'pour-over',
    startedAt: '2026-11-27T18:34:00Z',
    at: '2026-11-27T19:00:00Z',
  };
  const written = writeClocks(withLog(under, over));
  if (!written.ok) throw new Error(JSON.stringify(written.issues));
  const part = written.value.runs[0]?.parts.find((each) => each.part === 'under');
  const held = part?.clocks.find(({ state }) => state === 'holds-layer');
  expect(held?.now.high).toBeLessThanOrEqual(24);
  expect(held?.now.high).toBeGreaterThan(20);
});

it('refuses a weigh-in from before the soap was out of its moulds', () => {
  const log = [
    under,
    { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' },
    { kind: 'done', stage: 'unmould', startedAt: '2026-11-29T18:00:00Z', at: '2026-11-29T18:20:00Z' },
  ] as const;
  const weighIn = (at: string): LogEntry => ({ kind: 'weigh-in', pieces: 6, massG: 480, at });
  expect(checkEntry(withLog(...log), 'cups', weighIn('2026-11-29T18:19:00Z'))).toMatchObject([
    { code: 'log.cure-not-begun', stage: 'Unmould' },
  ]);
  expect(checkEntry(withLog(...log), 'cups', weighIn('2026-11-29T18:20:00Z'))).toEqual([]);
});

describe('what a log tells of the states of the soap', () => {
  const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };
  const at = '2026-11-28T19:52:00Z';

  it('is that the one of several states had not come which is forecast last', () => {
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at };
    const waits = (medianOver: number) => {
      const designs = file.designs.map((design) => ({
        ...design,
        waits: [
          { stage: 'unmould', part: 'under', opens: 'firm' as const },
          { stage: 'unmould', part: 'over', opens: 'firm' as const },
        ],
      }));
      return seenIn({ ...file, designs }, { under: 1000, over: medianOver }, under, over, notYet);
    };
    // The lower layer was poured 82 minutes before: firm after 1000 minutes, so 918 after the upper one was poured.
    const look = { state: 'firm', saw: 'not-yet', by: 'look', entry: '#3', place: 2 };
    expect(waits(917).filter(({ by }) => by === 'look')).toEqual([{ ...look, part: 'under', minutes: 1522 }]);
    expect(waits(919).filter(({ by }) => by === 'look')).toEqual([{ ...look, part: 'over', minutes: 1440 }]);
  });

  it('is that a stage which was done found open what it waited for, and not closed what it was in time for', () => {
    expect(seenIn(file, {}, under, over)).toEqual([
      // Begun 22 minutes before its end; poured on once it was mixed, 20 minutes on, so 80 after the lower layer.
      {
        ...{ part: 'under', state: 'holds-layer', saw: 'already', by: 'done' },
        ...{ minutes: 80, entry: '#2', place: 1 },
      },
      {
        ...{ part: 'under', state: 'bonds-until', saw: 'not-yet', by: 'done' },
        ...{ minutes: 80, entry: '#2', place: 1 },
      },
    ]);
  });

  it('is nothing of stages that were spoilt, or that ended with the batch that ran short', () => {
    const mishap = (kind: 'seized' | 'ran-short'): LogEntry => ({
      ...{ kind: 'mishap', part: 'over', mishap: kind, at: '2026-11-27T20:00:00Z' },
    });
    expect(seenIn(file, {}, under, over, mishap('seized'))).toEqual([]);
    expect(seenIn(file, {}, under, mishap('ran-short'))).toEqual([]);
  });

  it('is of what the stage itself waited for', () => {
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };
    const told = seenIn(file, {}, under, over, unmould).filter(({ place }) => place === 2);
    // Ten minutes of work, which is counted as set up: seen as it ended.
    expect(told).toEqual([
      {
        ...{ part: 'over', state: 'firm', saw: 'already', by: 'done', entry: '#3', place: 2 },
        minutes: 2788,
      },
    ]);
  });

  it('tells from when on a plan asked for a stage, from the start of the clock', () => {
    const openedOf = (opened: string): (number | undefined)[] => {
      const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-28T18:20:00Z', opened };
      const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z', opened };
      return seenIn(file, {}, under, over, notYet, unmould).flatMap(({ state, openedMin }) =>
        state === 'firm' ? [openedMin] : [],
      );
    };
    const [early, late] = [openedOf('2026-11-28T10:00:00Z'), openedOf('2026-11-28T11:00:00Z')];
    expect(early.length).toBeGreaterThan(1);
    expect(late).toEqual(early.map((each) => (each ?? NaN) + 60));
    // Before the clock had begun nothing was asked for.
    expect(openedOf('2026-11-20T10:00:00Z').every((each) => each === undefined)).toBe(true);
  });

  it('counts the cure from the end of the unmoulding', () => {
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };
    const look: LogEntry = {
      ...{ kind: 'seen', part: 'over', state: 'cured', saw: 'not-yet', at: '2026-11-30T18:20:00Z' },
    };
    expect(seenIn(file, {}, under, over, unmould, look).at(-1)).toMatchObject({
      state: 'cured',
      minutes: 1440,
    });
  });

  it('is nothing in the minute in which the clock starts', () => {
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-27T19:52:00Z' };
    expect(seenIn(file, { over: 1000 }, under, over, notYet).filter(({ by }) => by === 'look')).toEqual([]);
  });

  it('is nothing any more of a stage that is done over, nor of a batch that is', () => {
    const [design] = file.designs;
    const waits = [
      { stage: 'unmould', part: 'under', opens: 'firm' as const },
      { stage: 'unmould', part: 'over', opens: 'firm' as const },
    ];
    const input = { ...file, designs: [{ ...design!, waits }] };
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at };
    const trace: LogEntry = {
      ...{ kind: 'seen', part: 'over', state: 'light-trace', saw: 'just-now' },
      ...{ since: '2026-11-27T19:35:00Z', at: '2026-11-27T19:41:00Z' },
    };
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };
    const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-29T19:00:00Z' };
    const looks = (...more: LogEntry[]) =>
      seenIn(input, { under: 3000, over: 1000 }, under, over, trace, notYet, unmould, ...more).filter(
        ({ by }) => by === 'look',
      );
    expect(looks()).toHaveLength(2);
    expect(looks(seized)).toEqual([]);
  });

  it('is in the order of the log, whatever it tells', () => {
    const look = (time: string, saw: 'not-yet' | 'just-now'): LogEntry => ({
      ...{ kind: 'seen', part: 'under', state: 'holds-layer', saw, at: time },
    });
    const told = seenIn(file, {}, under, look('2026-11-27T18:50:00Z', 'not-yet'), over, {
      ...look('2026-11-27T19:30:00Z', 'just-now'),
    });
    expect(told.map(({ place, saw, minutes }) => [place, saw, minutes])).toEqual([
      [1, 'not-yet', 20],
      [2, 'already', 80],
      [2, 'not-yet', 80],
      [3, 'just-now', 60],
    ]);
  });

  it('is of the batch that is there now', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-28T20:00:00Z' };
    const looks: LogEntry[] = [
      { kind: 'not-yet', stage: 'unmould', at },
      { kind: 'seen', part: 'over', state: 'firm', saw: 'not-yet', at },
    ];
    const ofOver = (...entries: LogEntry[]) =>
      seenIn(file, { over: 1000 }, ...entries).filter(({ part }) => part === 'over');
    expect(ofOver(under, over, ...looks)).toHaveLength(2);
    expect(ofOver(under, over, ...looks, seized)).toEqual([]);
    expect(ofOver(under, over, ...looks, seized, { ...over, at: '2026-11-28T22:00:00Z' })).toEqual([]);
  });

  it('counts a look from when the log says that the clock started', () => {
    const trace: LogEntry = {
      ...{ kind: 'seen', part: 'over', state: 'light-trace', saw: 'just-now' },
      ...{ since: '2026-11-27T19:35:00Z', at: '2026-11-27T19:41:00Z' },
    };
    expect(seenIn(file, {}, under, over, trace)).toContainEqual({
      ...{ part: 'over', state: 'light-trace', saw: 'just-now', by: 'look', minutes: 6 },
      ...{ entry: '#3', place: 2 },
    });
  });
});

/** @param medians of the states that a part is firm after, in minutes */
function seenIn(
  input: RunsInput,
  medians: Record<string, number>,
  ...entries: LogEntry[]
): Omit<Sighting, 'at'>[] {
  const [run] = resolveRuns(input);
  const clocks = new Map(
    Object.entries(medians).map(([part, medianMin]) => [
      part,
      new Map([['firm', { medianMin, sigma: 5 }]]) as unknown as PartClocks,
    ]),
  );
  const { issues, progress } = foldLog(
    run!,
    entries.map((entry) => ({ entry })),
  );
  expect(issues).toEqual([]);
  return sightingsOf({ run: run!, progress, clocks }).map(({ at: _at, ...sighting }) => sighting);
}
