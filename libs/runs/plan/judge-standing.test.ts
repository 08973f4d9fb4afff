import { describe, expect, it } from 'vitest';
import type { PlanDocument, PlanJudgement } from '#contract';
import { judgeStanding, planRuns, runFileInput, type Busy, type RunsInput } from '#runs';
import { minute, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const now = minuteOfIso('2026-11-25T12:00:00Z');
const SCENARIOS = 400;

function demo(name: string): RunsInput {
  const input = runFileInput(loadRunFile('demo', name));
  if (!input.ok) throw new Error(JSON.stringify(input.issues));
  return input.value;
}

function planOf(input: RunsInput, at = now): PlanDocument {
  const planned = planRuns(input, { now: at, scenarios: SCENARIOS });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return planned.value;
}

function judged(input: RunsInput, document: PlanDocument): PlanJudgement {
  const found = judgeStanding({ input, document });
  if (!found.ok || found.value === undefined) throw new Error('it is not judged');
  return found.value;
}

const asStored = ({ odds, weakLinks, guarantee, runs }: PlanDocument): PlanJudgement => ({
  ...{ odds, weakLinks, guarantee },
  ready: runs.map(({ run, usable, ready, best }) => ({
    ...{ run, ready },
    ...(usable && { usable }),
    ...(best && { best }),
  })),
});

const tiles = demo('rockpool-tiles');
const plan = planOf(tiles);
const stages = plan.runs[0]!.stages;
const time = (key: string, end: 'startAt' | 'endAt'): number =>
  minuteOfIso(stages.find((stage) => stage.key === key)![end]);
const hands = (from: number, to: number): Busy => ({
  ...{ resource: 'hands', amount: 1 },
  ...{ from: minute(from), to: minute(to) },
});

describe('a plan that stands', () => {
  it.each([
    ['the tiles', tiles],
    ['the loaves', demo('orchard-loaves')],
    ['the tartlets', demo('honeycomb-tartlets')],
    ['cups without a day', loadRunFile('ok', 'two-layer')],
  ])('comes to what it was stored with while nothing has changed: %s', (_what, input) => {
    const document = planOf(input);
    expect(document.status).toBe('planned');
    expect(judged(input, document)).toEqual(asStored(document));
  });

  it('comes to what it was stored with when its day cannot be kept any more', () => {
    const input = loadRunFile('ok', 'two-layer');
    const first = planOf(input, minuteOfIso('2026-11-27T12:00:00Z'));
    const { key, startAt, endAt } = first.runs[0]!.stages[0]!;
    const late: RunsInput = {
      ...input,
      runs: input.runs.map((run) => ({ ...run, readyBy: '2026-12-06' })),
      log: [{ run: 'cups', entry: { kind: 'done', stage: key, startedAt: startAt, at: endAt } }],
    };
    const document = planOf(late, minuteOfIso(endAt));
    expect(document.runs[0]!.cautions).toContainEqual(
      expect.objectContaining({ code: 'caution.missed-day' }),
    );
    expect(judged(late, document)).toEqual(asStored(document));
  });

  it('comes to less once another run takes the hours in which the maker would have come back', () => {
    const { odds } = judged(
      { ...tiles, busy: [hands(time('unmould', 'endAt') + 60, time('unmould', 'endAt') + 300)] },
      plan,
    );
    expect(odds!.soundByTheDay).toBeLessThan(plan.odds!.soundByTheDay - 0.02);
    expect(odds!.scenarios).toBe(SCENARIOS);
  });

  it('comes to the same, and is not judged anew, when what is taken lies before it or weeks after it', () => {
    const first = Math.min(...stages.map(({ startAt }) => minuteOfIso(startAt)));
    const last = Math.max(...stages.map(({ endAt }) => minuteOfIso(endAt)));
    let basis = '';
    judgeStanding({ input: tiles, document: plan }, (text) => {
      basis = text;
      return true;
    });
    expect(basis).not.toBe('');
    const later = last + 15 * 1440;
    for (const busy of [hands(first - 60, first), hands(later, later + 60)]) {
      const input = { ...tiles, busy: [busy] };
      const again = judgeStanding({ input, document: plan }, (text) => text === basis);
      expect(again).toEqual({ ok: true, value: undefined });
    }
  });

  it('comes to nothing where its hours are gone, and moves nothing', () => {
    const { hours } = tiles.workshop;
    const without = (...days: (keyof typeof hours.weekly)[]): RunsInput => {
      const weekly = { ...hours.weekly, ...Object.fromEntries(days.map((day) => [day, []])) };
      return { ...tiles, workshop: { ...tiles.workshop, hours: { ...hours, weekly } } };
    };
    const { odds } = judged(without('sunday'), plan);
    expect(odds!.asPlanned).toBeLessThan(plan.odds!.asPlanned / 2);
    const all = Object.keys(hours.weekly) as (keyof typeof hours.weekly)[];
    expect(judged(without(...all), plan).odds).toMatchObject({
      soundAtAll: 0,
      soundByTheDay: 0,
      asPlanned: 0,
    });
  });
});
