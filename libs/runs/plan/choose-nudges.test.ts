import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlannedStage } from '#contract';
import { chooseNudges } from '#runs';
import { isoInstant, minute, parseIsoInstant } from '#units';

const NIGHT = { from: '22:30', to: '07:30' };

function planWith(times: Pick<PlannedStage, 'opensAt' | 'startAt' | 'lastCallAt'>): PlanDocument {
  const stage: PlannedStage = {
    key: 'unmould',
    attempt: 1,
    title: 'Unmould',
    kind: 'unmould',
    part: 'base',
    status: 'planned',
    endAt: times.startAt,
    bestAt: times.startAt,
    surelyOpenAt: null,
    surelyUntil: null,
    why: [],
    cautions: [],
    ...times,
  };
  return {
    schema: 'benchtide.plan/4',
    madeAt: '2026-10-23T12:00:00.000Z',
    timeZone: 'Europe/Dublin',
    status: 'planned',
    runs: [
      {
        run: 'tiles',
        title: 'Tiles',
        design: 'tile',
        count: 1,
        amounts: [],
        clocks: [],
        filling: [],
        stages: [stage],
        ready: null,
        cautions: [],
      },
    ],
    sittings: [],
    odds: null,
    weakLinks: [],
    guarantee: null,
    conflict: [],
  };
}

function chosen(times: Parameters<typeof planWith>[0], now = '2026-10-23T12:00:00Z'): [string, string][] {
  const nudges = chooseNudges(planWith(times), NIGHT, parseIsoInstant(now) ?? minute(0));
  return nudges.map((nudge) => [nudge.kind, isoInstant(nudge.dueAt)]);
}

/** When the nudges of a stage are due that begins then, and may begin as soon as it is planned. */
function due(startAt: string, now = '2026-10-23T12:00:00Z'): [string, string][] {
  return chosen({ opensAt: now, startAt, lastCallAt: null }, now);
}

describe('nudges of a stage', () => {
  it('are the opening, the time for it, and half an hour’s notice of the last call', () => {
    expect(
      chosen({
        opensAt: '2026-10-24T17:10:00.000Z',
        startAt: '2026-10-24T19:00:00.000Z',
        lastCallAt: '2026-10-24T20:45:00.000Z',
      }),
    ).toEqual([
      ['window-opens', '2026-10-24T17:10:00.000Z'],
      ['time-for-it', '2026-10-24T19:00:00.000Z'],
      ['last-call', '2026-10-24T20:15:00.000Z'],
    ]);
  });

  /** The night of 25 October 2026 in Ireland has 25 hours (IANA time zone database): 07:30 is 07:30Z, 22:30 is 21:30Z. */
  it('keep quiet at night, also when the clock goes back', () => {
    expect(
      chosen({
        opensAt: '2026-10-25T02:00:00.000Z',
        startAt: '2026-10-25T09:00:00.000Z',
        lastCallAt: '2026-10-26T01:00:00.000Z',
      }),
    ).toEqual([
      ['window-opens', '2026-10-25T07:30:00.000Z'],
      ['time-for-it', '2026-10-25T09:00:00.000Z'],
      ['last-call', '2026-10-25T22:29:00.000Z'],
    ]);
  });

  it('leave out an opening that would come no sooner than the stage, and a last call that would come before it', () => {
    expect(
      chosen({
        opensAt: '2026-10-24T22:00:00.000Z',
        startAt: '2026-10-25T07:30:00.000Z',
        lastCallAt: '2026-10-25T07:50:00.000Z',
      }),
    ).toEqual([['time-for-it', '2026-10-25T07:30:00.000Z']]);
  });

  it('are not sent for what is past', () => {
    const times = {
      opensAt: '2026-10-24T17:10:00.000Z',
      startAt: '2026-10-24T19:00:00.000Z',
      lastCallAt: null,
    };
    expect(chosen(times, '2026-10-24T18:00:00Z')).toEqual([['time-for-it', '2026-10-24T19:00:00.000Z']]);
  });

  it('know the stage by its title, and the times that the plan has for it', () => {
    const times = { startAt: '2026-10-24T19:00:00.000Z', lastCallAt: '2026-10-24T20:45:00.000Z' };
    const plan = planWith({ opensAt: '2026-10-24T17:10:00.000Z', ...times });
    const [startAt, lastCallAt] = [parseIsoInstant(times.startAt), parseIsoInstant(times.lastCallAt)];
    const about = { run: 'tiles', stage: 'unmould', attempt: 1, title: 'Unmould', startAt, lastCallAt };
    const nudges = chooseNudges(plan, NIGHT, minute(0));
    expect(nudges).toHaveLength(3);
    for (const nudge of nudges) expect(nudge).toMatchObject(about);
  });

  /** Ireland is an hour ahead of UTC on 24 October 2026 (IANA time zone database): quiet from 21:30Z to 06:30Z. */
  it.each([
    ['in the night', '2026-10-24T05:00:00.000Z'],
    ['in the first quiet minute', '2026-10-23T21:30:00.000Z'],
    ['in the last quiet minute', '2026-10-24T06:29:00.000Z'],
  ])('tell the evening before of a stage that begins %s', (_when, startAt) => {
    expect(due(startAt)).toEqual([['time-for-it', '2026-10-23T21:29:00.000Z']]);
  });

  it('tell of it once the quiet hours end where the evening before is past', () => {
    const startAt = '2026-10-24T05:00:00.000Z';
    const morning = [['time-for-it', '2026-10-24T06:30:00.000Z']];
    expect(due(startAt, '2026-10-24T00:00:00Z')).toEqual(morning);
    expect(due(startAt, '2026-10-23T21:30:00Z')).toEqual(morning);
    expect(due(startAt, '2026-10-23T21:29:00Z')).toEqual([['time-for-it', '2026-10-23T21:29:00.000Z']]);
  });

  it.each(['2026-10-23T21:29:00.000Z', '2026-10-24T06:30:00.000Z'])(
    'come at the start of a stage that begins just outside quiet hours: %s',
    (startAt) => {
      expect(due(startAt)).toEqual([['time-for-it', startAt]]);
    },
  );

  it('are none where the stage is done', () => {
    const plan = planWith({
      opensAt: '2026-10-24T17:10:00.000Z',
      startAt: '2026-10-24T19:00:00.000Z',
      lastCallAt: null,
    });
    for (const run of plan.runs) for (const stage of run.stages) stage.status = 'done';
    expect(chooseNudges(plan, NIGHT, minute(0))).toEqual([]);
  });
});
