import { describe, expect, it } from 'vitest';
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
  ZONE,
  cups,
  lot,
  over,
  stage,
  under,
} from '../../../tests/support/two-layer-cups.js';
import { describeRelaxation } from './describe-relaxation.js';
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

const network = networkOf(cups);

describe('what would have to give way', () => {
  const asked = (lag: string, kind: 'lag-at-least' | 'lag-at-most', enough: number | undefined, was = 9999) =>
    describeRelaxation(
      { requirement: { kind, lag }, enough, now: was, starts: new Map() },
      {
        ...network,
        zone: ZONE,
        timing: undefined,
      },
    );
  const given = (relaxed: object, starts: Record<string, number> = {}, timing?: unknown) =>
    describeRelaxation(
      { enough: undefined, now: undefined, starts: new Map(Object.entries(starts)), ...relaxed } as never,
      { ...network, zone: ZONE, timing } as never,
    );
  const minutesOf = (found: ReturnType<typeof asked>): unknown =>
    found && 'minutes' in found && found.minutes;

  /** Up to 90 minutes by the minute, to 20 hours by five, to 100 hours by the hour, to three weeks by days, then by fifths of a week. */
  it.each([
    [89, 89, 89],
    [91, 90, 95],
    [1199, 1195, 1200],
    [1201, 1200, 1260],
    [5999, 5940, 6000],
    [6000, 5760, 7200],
    [6001, 5760, 7200],
    [30_239, 28_800, 30_240],
    [30_241, 30_240, 31_248],
  ])('is rounded so that it is still enough: %d min is at least %d, at most %d', (enough, down, up) => {
    expect(minutesOf(asked(AT_LEAST_LINK, 'lag-at-least', enough))).toBe(down);
    expect(minutesOf(asked(AT_MOST_LINK, 'lag-at-most', enough))).toBe(up);
  });

  it('is a link, a clock or a cure, with what it is now', () => {
    const lengths = { minutes: 60, insteadOf: 100 };
    expect(asked(AT_LEAST_LINK, 'lag-at-least', 60, 100)).toEqual({
      ...{ code: 'relaxation.at-least', stage: stage('turn'), after: stage('unmould'), ...lengths },
    });
    expect(asked(AT_MOST_LINK, 'lag-at-most', 60, 100)).toEqual({
      ...{ code: 'relaxation.at-most', stage: stage('pour-over'), after: stage('pour-under'), ...lengths },
    });
    expect(asked(FIRM, 'lag-at-least', 60, 100)).toEqual({
      ...{ code: 'relaxation.opens', stage: stage('unmould'), part: over, state: 'firm', ...lengths },
    });
    expect(asked(POURED_ON, 'lag-at-most', 60, 100)).toEqual({
      ...{
        code: 'relaxation.closes',
        stage: stage('pour-over'),
        part: under,
        state: 'bonds-until',
        ...lengths,
      },
    });
    expect(asked('cups/cure/over', 'lag-at-least', 60, 100)).toEqual({
      ...{ code: 'relaxation.cures', part: over, ...lengths },
    });
  });

  it('is more of what there is too little of', () => {
    const requirement = { kind: 'resource', resource: 'mould:cup', stages: [] };
    const owned = {
      code: 'relaxation.owned',
      resource: { kind: 'mould', key: 'cup', title: 'Cups' },
      count: 24,
    };
    expect(given({ requirement, enough: 24, now: 12 })).toEqual({ ...owned, insteadOf: 12 });
    expect(given({ requirement, enough: 24 })).toEqual({ ...owned, insteadOf: 0 });
    expect(given({ requirement, now: 12 })).toBeUndefined();
  });

  it('is an earlier or a later start, where it would come without that', () => {
    const at = minuteOfIso('2026-11-29T10:00:00Z');
    const turn = { stage: 'cups/turn#1' };
    for (const relaxed of [
      { enough: at, starts: new Map() },
      { enough: undefined, starts: new Map([['cups/turn#1', at]]) },
    ]) {
      const told = { stage: stage('turn'), at: isoInstant(at) };
      expect(given({ ...relaxed, requirement: { kind: 'earliest', ...turn } })).toEqual({
        ...{ code: 'relaxation.earliest', ...told },
      });
      expect(given({ ...relaxed, requirement: { kind: 'latest', ...turn } })).toEqual({
        ...{ code: 'relaxation.start', ...told },
      });
    }
  });

  /** In Ireland the clocks go back in the night to 25 October 2026, a day of 25 hours (IANA time zone database). */
  it.each([
    ['2026-10-24T23:00:00Z', '2026-10-25'],
    ['2026-10-24T23:01:00Z', '2026-10-26'],
    ['2026-10-25T23:59:00Z', '2026-10-26'],
    ['2026-10-26T00:00:00Z', '2026-10-26'],
    ['2027-01-15T00:00:00Z', '2027-01-15'],
    ['2027-01-15T12:00:00Z', '2027-01-16'],
  ])('is the first day on whose start a lot is cured: at %s, %s', (instant, day) => {
    const requirement = { kind: 'latest', stage: READY };
    expect(given({ requirement, enough: minuteOfIso(instant) })).toEqual({
      ...{ code: 'relaxation.ready-by', stage: lot, day },
    });
  });

  it('is an hour at the bench when the stage would come, in all of its window where that is known', () => {
    const requirement = { kind: 'calendar', stage: 'cups/turn#1' };
    const at = minuteOfIso('2026-11-29T03:00:00Z');
    const hours = (from: number, to: number | null) => ({
      ...{ code: 'relaxation.hours', stage: stage('turn'), minutes: 5 },
      ...{ from: isoInstant(minute(from)), to: to === null ? null : isoInstant(minute(to)) },
    });
    const window = { kind: 'hours', stage: 'cups/turn#1', earliest: at - 60, latest: at + 60 };
    const told = (timing: unknown, start: number = at) =>
      given({ requirement }, { 'cups/turn#1': start }, timing);
    expect(told(undefined)).toEqual(hours(at, at));
    expect(told(window)).toEqual(hours(at - 60, at + 60));
    expect(told({ ...window, latest: Infinity })).toEqual(hours(at - 60, null));
    for (const start of [at - 60, at + 60]) expect(told(window, start)).toEqual(hours(at - 60, at + 60));
    for (const start of [at - 61, at + 61]) expect(told(window, start)).toEqual(hours(start, start));
    expect(told({ ...window, stage: 'cups/unmould#1' })).toEqual(hours(at, at));
    expect(told({ ...window, kind: 'too-late' })).toEqual(hours(at, at));
  });

  it('is nothing that was done, nor time itself', () => {
    expect(
      given({ requirement: { kind: 'fixed', stage: 'cups/turn#1' }, enough: 1, now: 1 }),
    ).toBeUndefined();
    expect(given({ requirement: { kind: 'horizon' }, enough: 1, now: 1 })).toBeUndefined();
  });

  it('is nothing that makes no sense to ask for', () => {
    // No order is turned about, nothing takes less than no time, and nothing is unmoulded before it is made.
    expect(asked(AT_MOST_LINK, 'lag-at-least', 0, 0)).toBeUndefined();
    expect(asked(AT_LEAST_LINK, 'lag-at-least', -1)).toBeUndefined();
    expect(asked(AT_LEAST_LINK, 'lag-at-least', 0)).toBeDefined();
    expect(asked(AT_LEAST_LINK, 'lag-at-least', undefined)).toBeUndefined();
    const { requirement } = { requirement: { kind: 'lag-at-least', lag: FIRM } } as const;
    expect(given({ requirement, enough: 10, now: undefined })).toBeUndefined();
    expect(asked('cups/made/turn', 'lag-at-least', 10)).toBeUndefined();
    expect(asked(PLIABLE, 'lag-at-least', 10)).toBeUndefined();
    expect(asked(FIRM, 'lag-at-most', 10)).toBeUndefined();
  });
});
