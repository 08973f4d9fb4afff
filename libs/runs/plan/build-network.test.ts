import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument } from '#contract';
import { instantOf } from '#hours';
import { planRuns, type PlanOptions, type RunsInput } from '#runs';
import { isoInstant, minute, minuteOfIso, type Minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { assessRuns } from '../assess-runs.js';
import { buildNetwork } from './build-network.js';
import { checkCapacity } from './capacity-check.js';
import type { Network } from './network-references.js';

const ZONE = 'Europe/Dublin';
const file = loadRunFile('ok', 'two-layer');
const [run] = file.runs;
const [design] = file.designs;
if (run === undefined || design === undefined) throw new Error('no run');

const at = (local: string): Minute => instantOf(local, ZONE) ?? minute(0);
const NOON = at('2026-11-27T12:00');
const START = at('2026-11-27T18:00');

function networkOf(input: RunsInput, options: Partial<PlanOptions> = {}): Network {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  return buildNetwork(
    input,
    taken.value.map(({ assessed }) => assessed),
    { now: NOON, ...options },
  );
}

const withLog = (...entries: LogEntry[]): RunsInput => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const stageOf = ({ problem }: Network, key: string, attempt = 1) =>
  problem.stages.find(({ id }) => id === `cups/${key}#${attempt}`);

const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };
const turn: LogEntry = { kind: 'done', stage: 'turn', at: '2026-12-01T18:10:00Z' };

describe('the stages of a plan', () => {
  it('take the hands and what they need, in the maker’s hours, from the start of the run on', () => {
    const network = networkOf(file);
    const hands = { resource: 'hands', amount: 1 };
    expect(network.problem.stages).toEqual([
      // 30 min and 12 times 10 s, then 20 and as many.
      { id: 'cups/pour-under#1', duration: 32, uses: [hands], calendar: 'bench', earliest: START },
      { id: 'cups/pour-over#1', duration: 22, uses: [hands], calendar: 'bench', earliest: START },
      {
        ...{ id: 'cups/unmould#1', duration: 10, calendar: 'bench', earliest: START },
        uses: [hands, { resource: 'equipment:tray', amount: 1 }],
      },
      { id: 'cups/turn#1', duration: 5, uses: [hands], calendar: 'bench', earliest: START },
      { id: 'cups/=ready#1', duration: 0, uses: [] },
    ]);
    expect(network.problem.deliveries).toEqual([network.problem.stages.map(({ id }) => id)]);
  });

  it('begin no sooner than now, nor than a “not yet” was said', () => {
    const late = networkOf(withLog(under, over), { now: minute(START + 300) });
    expect(stageOf(late, 'unmould')?.earliest).toBe(START + 300);
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-28T10:00:00Z' };
    const network = networkOf(withLog(under, over, notYet), { now: minute(START + 300) });
    expect(stageOf(network, 'unmould')?.earliest).toBe(minuteOfIso(notYet.at));
    expect(stageOf(network, 'turn')?.earliest).toBe(START + 300);
  });

  it('that are done lie where they were done, and take nothing any more', () => {
    const network = networkOf(withLog(under));
    const startedAt = minuteOfIso('2026-11-27T18:00:00Z');
    expect(stageOf(network, 'pour-under')).toEqual({
      ...{ id: 'cups/pour-under#1', duration: 32, uses: [], fixed: startedAt },
    });
  });

  it('know where the plan before had them, if they were planned there', () => {
    const planned = planRuns(file, { now: NOON, scenarios: 10 });
    if (!planned.ok) throw new Error('refused');
    const stages = (planned.value.runs[0]?.stages ?? []).map((stage) =>
      stage.key === 'turn' ? { ...stage, status: 'done' as const } : stage,
    );
    const previous: PlanDocument = { ...planned.value, runs: [{ ...planned.value.runs[0]!, stages }] };
    const network = networkOf(file, { previous });
    const startOf = (key: string): number => minuteOfIso(stages.find((s) => s.key === key)!.startAt);
    expect(stageOf(network, 'unmould')?.previous).toBe(startOf('unmould'));
    expect(stageOf(network, 'turn')).not.toHaveProperty('previous');
  });

  it('end with the cured lot on its day, also once all that is left is to let it cure', () => {
    const ready = (input: RunsInput) =>
      networkOf(input).problem.stages.find(({ id }) => id === 'cups/=ready#1');
    const runs = [{ ...run, readyBy: '2027-01-15' }];
    expect(ready({ ...file, runs })?.latest).toBe(at('2027-01-15T00:00'));
    expect(ready({ ...withLog(under, over, unmould, turn), runs })).toEqual({
      ...{ id: 'cups/=ready#1', duration: 0, uses: [] },
      ...{ latest: at('2027-01-15T00:00'), isDue: true },
    });
    // Nothing that cures is left.
    const drop = (part: string): LogEntry => ({
      ...{ kind: 'mishap', part, mishap: 'seized', response: 'drop-part', at: '2026-11-27T18:10:00Z' },
    });
    expect(ready(withLog(drop('under'), drop('over')))).toBeUndefined();
    expect(networkOf(withLog(drop('under'), drop('over'))).problem.deliveries).toEqual([]);
  });
});

describe('the time of a plan', () => {
  it('begins with the first thing that is or was, and lasts a season for the making and a year for the cure', () => {
    const { problem } = networkOf(file);
    expect(problem.from).toBe(NOON);
    const [first, last] = [problem.calendars['bench']?.[0], problem.calendars['bench']?.at(-1)];
    expect(first).toEqual({ from: START, to: at('2026-11-27T22:00') });
    const end = START + 120 * 1440;
    expect(problem.until).toBe(end + 540 * 1440);
    expect(last?.to).toBeGreaterThan(end - 3 * 1440);
    expect(last?.to).toBeLessThanOrEqual(end);
  });

  it('reaches back to what was done, and to a start that has passed', () => {
    const later = at('2026-12-20T12:00');
    expect(networkOf(withLog(under), { now: later }).problem.from).toBe(START);
    const early: LogEntry = { ...under, at: '2026-11-27T15:00:00Z' };
    expect(networkOf(withLog(early), { now: later }).problem.from).toBe(minuteOfIso('2026-11-27T14:28:00Z'));
    const seized: LogEntry = { kind: 'mishap', part: 'under', mishap: 'seized', at: '2026-11-27T16:00:00Z' };
    expect(networkOf(withLog(early, seized), { now: later }).problem.from).toBe(START);
    // Only what is done counts: a stage that is off for its own reasons is still to come.
    expect(networkOf(file, { now: later }).problem.until).toBe(later + (120 + 540) * 1440);
  });

  it('takes hours that were looked up before', () => {
    const open = [{ from: START, to: minute(START + 60) }];
    const taken = assessRuns(file);
    if (!taken.ok) throw new Error('refused');
    const assessed = taken.value.map((each) => each.assessed);
    expect(buildNetwork(file, assessed, { now: NOON }, open).problem.calendars).toEqual({ bench: open });
  });
});

describe('what a plan shares out', () => {
  it('is hands, moulds and equipment, less what others take', () => {
    const busy = [
      { resource: 'mould:cup', amount: 3, from: START, to: minute(START + 10) },
      { resource: 'hands', amount: 1, from: START, to: minute(START + 20) },
    ];
    const { problem, references } = networkOf({ ...file, busy });
    const span = (minutes: number) => ({ from: START, to: START + minutes });
    expect(problem.resources).toEqual([
      { id: 'hands', capacity: 1, busy: [{ ...span(20), amount: 1 }] },
      { id: 'mould:cup', capacity: 12, busy: [{ ...span(10), amount: 3 }] },
      { id: 'equipment:tray', capacity: 1, busy: [] },
    ]);
    expect([...references.resources.values()]).toEqual([
      { kind: 'hands' },
      { kind: 'mould', key: 'cup', title: 'Cups' },
      { kind: 'equipment', key: 'tray', title: 'Tray' },
    ]);
  });

  it('is the mould from the first pour to the unmoulding', () => {
    const hold = { id: 'cups/mould/cup', resource: 'mould:cup', amount: 12 };
    const held = { ...hold, from: 'cups/pour-under#1', to: 'cups/unmould#1' };
    expect(networkOf(file).problem.holds).toEqual([held]);
    const listed = { ...file, designs: [{ ...design, stages: [...design.stages].reverse() }] };
    expect(networkOf(listed).problem.holds).toEqual([held]);
    expect(networkOf(withLog(under)).problem.holds).toEqual([held]);
    expect(networkOf(withLog(under, over, unmould)).problem.holds).toEqual([]);
  });

  it('is a cavity for as many pieces as share it, and for a piece too few', () => {
    const parts = design.parts.map((part) => ({ ...part, piecesPerCavity: 5 }));
    const moulds = file.moulds.map((mould) => ({ ...mould, cavityMl: 400 }));
    const amounts = (count: number) =>
      networkOf({
        ...file,
        moulds,
        designs: [{ ...design, parts }],
        runs: [{ ...run, count }],
      }).problem.holds.map(({ amount }) => amount);
    expect([10, 11, 15].map(amounts)).toEqual([[2], [3], [3]]);
  });

  it('is all cavities that a piece is put together from', () => {
    const parts = design.parts.map((part) => ({ ...part, cavitiesPerPiece: 2 }));
    const amounts = networkOf({ ...file, designs: [{ ...design, parts }] }).problem.holds;
    expect(amounts.map(({ amount }) => amount)).toEqual([2 * run.count]);
  });

  it('says of what one stage or stretch alone needs too much', () => {
    expect(checkCapacity(networkOf(file))).toEqual([]);
    const needs = [{ equipment: 'tray', count: 2 }];
    const stages = design.stages.map((stage) => (stage.key === 'turn' ? { ...stage, needs } : stage));
    const input = { ...file, designs: [{ ...design, stages }], runs: [{ ...run, count: 13 }] };
    expect(checkCapacity(networkOf(input))).toEqual([
      {
        ...{ code: 'conflict.too-few', needed: 13, owned: 12 },
        stage: { run: 'cups', stage: 'pour-under', attempt: 1, title: 'Pour the lower layer' },
        resource: { kind: 'mould', key: 'cup', title: 'Cups' },
      },
      {
        ...{ code: 'conflict.too-few', needed: 2, owned: 1 },
        stage: { run: 'cups', stage: 'turn', attempt: 1, title: 'Turn' },
        resource: { kind: 'equipment', key: 'tray', title: 'Tray' },
      },
    ]);
  });
});

it('knows what each name stands for', () => {
  const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T19:40:00Z' };
  const { problem, references } = networkOf(withLog(under, seized));
  expect([...references.stages.keys()].sort()).toEqual(problem.stages.map(({ id }) => id).sort());
  expect(references.stages.get('cups/pour-over#2')).toMatchObject({
    ...{ run: 'cups', stage: 'pour-over', attempt: 2, title: 'Pour the upper layer' },
  });
  expect(references.stages.get('cups/=ready#1')).toMatchObject({
    ...{ run: 'cups', stage: null, attempt: 1, title: 'Twelve cups' },
  });
  expect([...references.lags.keys()].sort()).toEqual([...new Set(problem.lags.map(({ id }) => id))].sort());
  for (const { id, from, to } of problem.lags) expect(references.lags.get(id)).toMatchObject({ from, to });
});

it('means the first of the lags that bridge one gap', () => {
  const [made] = design.stages;
  const stages = [
    ...['a', 'b'].map((key) => ({ ...made!, key, title: key, kind: 'set-in' as const, part: 'top' })),
    { ...made!, key: 'top', title: 'top', kind: 'pipe' as const, part: 'top' },
  ];
  const parts = design.parts.map((part) => ({ ...part, key: 'top', title: 'Top' })).slice(0, 1);
  const links = [
    { from: 'unmould', to: 'top', atLeastMin: 0 },
    ...['a', 'b'].map((to) => ({ from: 'top', to, atLeastMin: 0 })),
    { from: 'a', to: 'turn', atLeastMin: 0 },
    { from: 'b', to: 'wrap', atLeastMin: 0 },
  ];
  const wrap = { ...design.stages[3]!, key: 'wrap', title: 'Wrap', kind: 'wrap' as const };
  const top = { ...parts[0]!, mould: undefined } as (typeof design.parts)[number];
  const designs = [
    { ...design, parts: [...design.parts, top], stages: [...design.stages, wrap, ...stages], links },
  ];
  const drop: LogEntry = {
    ...{ kind: 'mishap', part: 'top', mishap: 'seized', response: 'drop-part', at: '2026-11-27T18:10:00Z' },
  };
  const { problem, references } = networkOf({ ...withLog(drop), designs });
  const bridging = problem.lags.filter(({ id }) => id === 'cups/links/0').map(({ to }) => to);
  expect(bridging).toEqual(['cups/turn#1', 'cups/wrap#1']);
  expect(references.lags.get('cups/links/0')?.to).toBe('cups/turn#1');
});

it('plans runs together, each from its own start, with what was observed of each', () => {
  const later = { ...run, key: 'more', title: 'More', startAfter: '2026-11-28T09:00' };
  const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-28T10:00:00Z' };
  const log = [under, over, notYet].flatMap((entry) => ['cups', 'more'].map((key) => ({ run: key, entry })));
  const { problem } = networkOf({ ...file, runs: [run, later], log }, { now: at('2026-11-28T10:00') });
  expect(problem.stages.map(({ id }) => id.split('/')[0])).toEqual([
    ...Array<string>(5).fill('cups'),
    ...Array<string>(5).fill('more'),
  ]);
  expect(problem.deliveries).toHaveLength(2);
  expect(Object.keys(problem.draws).map((name) => name.split('/')[0])).toEqual(
    expect.arrayContaining(['cups', 'more']),
  );
  const only = networkOf({ ...file, runs: [run, later] }, { now: NOON });
  expect(only.problem.stages.map(({ earliest }) => earliest).filter((each) => each !== undefined)).toEqual([
    ...Array<number>(4).fill(START),
    ...Array<number>(4).fill(at('2026-11-28T09:00')),
  ]);
  expect(isoInstant(minute(only.problem.from))).toBe(isoInstant(NOON));
});
