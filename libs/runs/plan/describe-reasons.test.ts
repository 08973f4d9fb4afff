import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import type { RunsInput } from '#runs';
import { isoInstant, minute, minuteOfIso } from '#units';
import {
  AT_LEAST_LINK,
  AT_MOST_LINK,
  FIRM,
  NOON,
  PLIABLE,
  POURED_ON,
  READY,
  cups,
  lot,
  over,
  stage,
  under,
} from '../../../tests/support/two-layer-cups.js';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { describeConflict } from './describe-conflict.js';
import { describeLoss } from './describe-loss.js';
import { explainStage } from './explain-stage.js';
import { reasonsOutOfReach } from './latest-start-reasons.js';
import type { StageWindow } from './stage-windows.js';
import { assessRuns } from '../assess-runs.js';
import type { AssessedRun } from '../assessed-run.js';
import { buildNetwork } from './build-network.js';
import type { Network } from './network-references.js';

/** The network of the first run of an input, with what it was made from. */
function networkOf(input: RunsInput): Network & { readonly assessed: AssessedRun } {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  const runs = taken.value.map(({ assessed }) => assessed);
  return { ...buildNetwork(input, runs, { now: NOON }), assessed: runs[0]! };
}

const file = loadRunFile('ok', 'two-layer');
const [design] = file.designs;
if (design === undefined) throw new Error('no design');
const network = networkOf(cups);
const { assessed, references } = network;
const bandOf = (key: string, state: string) => {
  const clock = assessed.clocks.get(key)?.get(state as 'firm');
  return { likely: expect.closeTo(clock!.medianMin, 6), low: expect.any(Number), high: expect.any(Number) };
};

describe('requirements that cannot all be met', () => {
  it.each([
    [
      { kind: 'lag-at-least', lag: AT_LEAST_LINK },
      { code: 'conflict.at-least', stage: stage('turn'), after: stage('unmould'), minutes: 720 },
    ],
    [
      { kind: 'lag-at-most', lag: AT_MOST_LINK },
      { code: 'conflict.at-most', stage: stage('pour-over'), after: stage('pour-under'), minutes: 240 },
    ],
    [
      { kind: 'lag-at-least', lag: AT_MOST_LINK },
      { code: 'conflict.after', stage: stage('pour-over'), after: stage('pour-under') },
    ],
    [
      { kind: 'lag-at-least', lag: 'cups/made/unmould' },
      { code: 'conflict.made', stage: stage('unmould'), part: over },
    ],
    [
      { kind: 'lag-at-least', lag: FIRM },
      {
        code: 'conflict.opens',
        stage: stage('unmould'),
        part: over,
        state: 'firm',
        band: bandOf('over', 'firm'),
      },
    ],
    [
      { kind: 'lag-at-most', lag: POURED_ON },
      {
        ...{ code: 'conflict.closes', stage: stage('pour-over'), part: under, state: 'bonds-until' },
        band: bandOf('under', 'bonds-until'),
      },
    ],
    // It waits for nothing but that there is something to turn.
    [
      { kind: 'lag-at-least', lag: PLIABLE },
      { code: 'conflict.made', stage: stage('turn'), part: over },
    ],
    [
      { kind: 'lag-at-least', lag: 'cups/cure/under' },
      { code: 'conflict.cures', part: under, band: bandOf('under', 'cured') },
    ],
    [
      { kind: 'resource', resource: 'mould:cup', stages: ['cups/unmould#1', 'cups/turn#1'] },
      {
        ...{ code: 'conflict.shared', owned: 12, resource: { kind: 'mould', key: 'cup', title: 'Cups' } },
        stages: [stage('unmould'), stage('turn')],
      },
    ],
    [{ kind: 'horizon' }, { code: 'conflict.horizon', days: 120 }],
    [
      { kind: 'calendar', stage: 'cups/pour-under#1' },
      { code: 'conflict.hours', stage: stage('pour-under'), minutes: 32 },
    ],
    [
      { kind: 'earliest', stage: 'cups/turn#1' },
      { code: 'conflict.earliest', stage: stage('turn'), at: '2026-11-27T18:00:00.000Z' },
    ],
    [
      { kind: 'latest', stage: READY },
      { code: 'conflict.ready-by', stage: lot, day: '2027-01-15' },
    ],
  ] as const)('%o', (requirement, told) => {
    expect(describeConflict([requirement], network)).toEqual([told]);
  });

  it('are a start that was asked for, and what is done', () => {
    const at = minuteOfIso('2026-11-29T10:00:00Z');
    const stages = network.problem.stages.map((each) =>
      each.id === 'cups/turn#1' ? { ...each, latest: at } : { ...each, fixed: at },
    );
    const changed = { ...network, problem: { ...network.problem, stages } };
    const instant = isoInstant(at);
    expect(describeConflict([{ kind: 'latest', stage: 'cups/turn#1' }], changed)).toEqual([
      { code: 'conflict.start', stage: stage('turn'), at: instant },
    ]);
    expect(describeConflict([{ kind: 'fixed', stage: 'cups/unmould#1' }], changed)).toEqual([
      { code: 'conflict.done', stage: stage('unmould'), at: instant },
    ]);
  });

  it('are of this network alone', () => {
    for (const requirement of [
      { kind: 'lag-at-least', lag: 'nothing' },
      { kind: 'calendar', stage: 'nothing' },
      { kind: 'resource', resource: 'nothing', stages: [] },
    ] as const) {
      expect(() => describeConflict([requirement], network)).toThrow('nothing');
    }
  });
});

describe('what is lost at a stage', () => {
  const lost = (missed: Parameters<typeof describeLoss>[0]['missed'], starts?: Map<string, number>) =>
    describeLoss({ stage: 'cups/pour-over#1', missed }, references, starts);

  it('is a window that closed, at the time of the plan if there is one', () => {
    const closed = { code: 'loss.closed', stage: stage('pour-over'), part: under, state: 'bonds-until' };
    const missed = { kind: 'lag-at-most', lag: POURED_ON } as const;
    expect(lost(missed)).toEqual({ ...closed, at: null });
    const at = minuteOfIso('2026-11-27T20:00:00Z');
    expect(lost(missed, new Map([['cups/pour-over#1', at]]))).toEqual({ ...closed, at: isoInstant(at) });
  });

  it('is a link that lasted too long, hours, or what others had', () => {
    expect(lost({ kind: 'lag-at-most', lag: AT_MOST_LINK })).toEqual({
      ...{ code: 'loss.at-most', stage: stage('pour-over'), after: stage('pour-under'), minutes: 240 },
    });
    expect(lost({ kind: 'calendar', stage: 'cups/pour-over#1' })).toEqual({
      ...{ code: 'loss.hours', stage: stage('pour-over') },
    });
    expect(lost({ kind: 'resource', resource: 'hands', stages: [] })).toEqual({
      ...{ code: 'loss.shared', stage: stage('pour-over'), resource: { kind: 'hands' } },
    });
  });

  it('is something else where nothing better is known', () => {
    const other = { code: 'loss.other', stage: stage('pour-over') };
    // A link without an end, and a wait that nothing closes, cannot be missed at their ends.
    expect(lost({ kind: 'lag-at-most', lag: AT_LEAST_LINK })).toEqual(other);
    expect(lost({ kind: 'lag-at-most', lag: FIRM })).toEqual(other);
    expect(lost({ kind: 'lag-at-most', lag: 'cups/made/turn' })).toEqual(other);
    expect(lost({ kind: 'lag-at-least', lag: FIRM })).toEqual(other);
    expect(lost({ kind: 'horizon' })).toEqual(other);
  });

  it('is the day of a lot, whatever made it late', () => {
    const late = { stage: READY, missed: { kind: 'lag-at-least', lag: FIRM } } as const;
    expect(describeLoss(late, references)).toEqual({ code: 'loss.ready-by', stage: lot, day: '2027-01-15' });
    expect(describeLoss(late, networkOf(file).references)).toEqual({ code: 'loss.other', stage: lot });
  });
});

describe('why a stage lies where it does', () => {
  const whyOf = (key: string, of = assessed, kind: 'calendar' | 'origin' = 'origin') => {
    const attempt = of.progress.attempts.find((each) => each.stage.key === key)!;
    const opens = minuteOfIso('2026-11-28T09:00:00Z');
    const window = { opens, likely: { earliestBy: { kind } } };
    return explainStage(of, attempt, window as unknown as StageWindow);
  };

  it('is what it waits for and what closes it, with what pushes that most', () => {
    const [opens, closes, atMost] = whyOf('pour-over');
    expect(opens).toMatchObject({
      ...{ code: 'why.opens', part: under, state: 'holds-layer', band: bandOf('under', 'holds-layer') },
    });
    expect(closes).toMatchObject({ code: 'why.closes', part: under, state: 'bonds-until' });
    expect(atMost).toEqual({
      loses: 'pieces',
      code: 'why.at-most',
      after: stage('pour-under'),
      minutes: 240,
    });
    if (opens?.code !== 'why.opens') throw new Error('it waits first');
    const reasons = assessed.clocks.get('under')!.get('holds-layer')!.reasons;
    const size = (factor: number): number => Math.abs(Math.log(factor));
    const largest = reasons.map(({ factor }) => size(factor)).sort((a, b) => b - a);
    expect(opens.influences.map(({ factor }) => size(factor))).toEqual(
      largest.filter((each) => each > 0.02).slice(0, 2),
    );
    for (const { factor, ...influence } of opens.influences) {
      expect(reasons).toContainEqual(expect.objectContaining({ ...influence, factor }));
    }
  });

  it('tells of each clock the two influences that change it most, unless they change next to nothing', () => {
    const influence = (input: string, factor: number) => ({ input, value: 1, usual: 2, factor, rule: input });
    const told = (...factors: [string, number][]): unknown => {
      const clock = assessed.clocks.get('under')!.get('holds-layer')!;
      const reasons = factors.map(([input, factor]) => influence(input, factor));
      const clocks = new Map([
        [
          'under',
          new Map([...assessed.clocks.get('under')!, ['holds-layer', { ...clock, reasons } as never]]),
        ],
      ]);
      const [opens] = whyOf('pour-over', { ...assessed, clocks } as never);
      return opens?.code === 'why.opens' && opens.influences;
    };
    const shown = (input: string, factor: number) => ({ input, value: 1, usual: 2, factor });
    // Half as long is more than a third longer, and that more than a tenth.
    expect(told(['a', 1.1], ['b', 1.33], ['c', 0.5], ['d', 1.019])).toEqual([
      shown('c', 0.5),
      shown('b', 1.33),
    ]);
    expect(told(['a', 1.019], ['b', 0.981], ['c', 1.021])).toEqual([shown('c', 1.021)]);
    expect(told(['a', 1.1])).toEqual([shown('a', 1.1)]);
    expect(told()).toEqual([]);
  });

  it('is a link that asks for time', () => {
    expect(whyOf('turn')).toContainEqual({ code: 'why.at-least', after: stage('unmould'), minutes: 720 });
  });

  it('is the hours where they decide', () => {
    const hours = { code: 'why.hours', at: '2026-11-28T09:00:00.000Z' };
    expect(whyOf('turn', assessed, 'calendar')).toContainEqual(hours);
    expect(whyOf('turn')).not.toContainEqual(hours);
    expect(whyOf('pour-under', assessed, 'calendar')).toEqual([hours]);
  });

  it('is what it comes after, or nothing, where nothing else decides', () => {
    expect(whyOf('pour-under')).toEqual([{ code: 'why.free' }]);
    const links = [{ from: 'unmould', to: 'turn', atLeastMin: 0 }];
    const plain = networkOf({ ...file, designs: [{ ...design, links }] }).assessed;
    expect(whyOf('turn', plain)).toEqual([{ code: 'why.after', stages: [stage('unmould')] }]);
  });
});

describe('why no start has the odds that are wanted', () => {
  const why = { code: 'loss.other', stage: stage('turn') } as never;
  const link = (share: number) => ({ run: 'cups', stage: 'turn', attempt: 1, share, why });
  const plan = { odds: { soundByTheDay: 0.7 }, weakLinks: [link(0.2), link(0.08), link(0.02)] } as never;
  const open = minuteOfIso('2026-11-27T12:00:00Z');
  const base = { plan, beginAt: '2026-11-28T12:00:00.000Z', wantedOdds: 0.9, bound: 0.95, pace: 1, open };
  const codes = (more: object) =>
    reasonsOutOfReach({ ...base, lookedFrom: null, ...more }).map(({ code }) => code);

  it('is the best there is, and the two stages that lose most', () => {
    expect(reasonsOutOfReach({ ...base, lookedFrom: null })).toEqual([
      { code: 'start.out-of-reach', wanted: 0.9, best: 0.7, at: base.beginAt },
      { code: 'start.loses', probability: 0.2, because: why },
      { code: 'start.loses', probability: 0.08, because: why },
    ]);
    expect(codes({ plan: { odds: null, weakLinks: [] } })).toEqual(['start.out-of-reach']);
  });

  it('is what limits any start: the batter, or else all that can be had', () => {
    const last = (more: object) => reasonsOutOfReach({ ...base, lookedFrom: null, ...more }).at(-1);
    expect(last({ pace: 0.8, bound: 0.6 })).toEqual({ code: 'start.batter-limits', probability: 0.8 });
    expect(last({ bound: 0.85 })).toEqual({ code: 'start.nothing-exceeds', probability: 0.85 });
    expect(codes({ pace: 0.9, bound: 0.9 })).toHaveLength(3);
  });

  it('says that an earlier one is no better where one was tried that need not have been so late', () => {
    const from = (minutes: number) => ({ lookedFrom: isoInstant(minute(open + minutes)) });
    expect(codes(from(1)).at(-1)).toBe('start.earlier-is-no-better');
    expect(codes(from(0)).at(-1)).toBe('start.loses');
    expect(codes(from(-1)).at(-1)).toBe('start.loses');
  });
});

it('knows no loss of a part that was made anew by its first attempt', () => {
  const log: LogEntry[] = [
    { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' },
    { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T19:40:00Z' },
  ];
  const again = networkOf({ ...cups, log: log.map((entry) => ({ run: 'cups', entry })) });
  expect(describeConflict([{ kind: 'lag-at-least', lag: FIRM }], again)).toMatchObject([
    { part: { ...over, attempt: 2 } },
  ]);
});
