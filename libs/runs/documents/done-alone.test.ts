import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import {
  learnedFrom,
  planRuns,
  teachingsOf,
  workshopLessons,
  writeClocks,
  type PastRun,
  type RunsInput,
} from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const demo = loadRunFile('ok', 'plain-tiles');
const file: RunsInput = demo;
const POURED = Date.parse('2026-11-27T20:00:00Z');

/** So many hours after the end of the pour, as an instant. */
const after = (hours: number): string => new Date(POURED + hours * 3_600_000).toISOString();

const poured: LogEntry[] = [
  { kind: 'done', stage: 'pour-deep', startedAt: after(-2), at: after(-1.2) },
  { kind: 'done', stage: 'pour-sand', startedAt: after(-0.5), at: after(0) },
];
const unmoulded = (hours: number): LogEntry => ({
  kind: 'done',
  stage: 'unmould',
  startedAt: after(hours),
  at: after(hours + 0.25),
});
const patched = (hours: number): LogEntry => ({
  kind: 'done',
  stage: 'patch',
  startedAt: after(hours),
  at: after(hours + 0.25),
});
const notYet = (hours: number): LogEntry => ({ kind: 'not-yet', stage: 'unmould', at: after(hours) });

function pastRun(i: number, entries: readonly LogEntry[]): PastRun {
  const [design] = file.designs;
  const [order] = file.runs;
  if (design === undefined || order === undefined) throw new Error('no run');
  const { recipes, fats, moulds } = file;
  const log = [...poured, ...entries].map((entry) => ({ entry }));
  return { order: { ...order, key: `past-${String(i)}` }, design, recipes, fats, moulds, log };
}

function teachingsAfter(ofRun: (i: number) => readonly LogEntry[], runs = 30) {
  return Array.from({ length: runs }, (_, i) => teachingsOf(pastRun(i, ofRun(i)), file.workshop).teachings);
}

/** The median of “firm enough to unmould” of the sand layer, in hours, after 30 runs that were logged so. */
function learned(ofRun: (i: number) => readonly LogEntry[], runs = 30): number {
  const teachings = teachingsAfter(ofRun, runs);
  const written = writeClocks({ ...file, log: [], learned: learnedFrom(teachings) });
  if (!written.ok) throw new Error(JSON.stringify(written.issues));
  const part = written.value.runs[0]?.parts.find((each) => each.part === 'sand');
  const firm = part?.clocks.find(({ state }) => state === 'firm');
  if (firm === undefined) throw new Error('no clock');
  return firm.band.likely / 60;
}

const unlearned = learned(() => [], 0);

/** No drift is allowed at all but for rounding: 1 in 1000. */
const FLOOR = unlearned * 0.999;

/** When the soap of run i is firm, spread about 48 h by a factor of 1.3: quantiles of a log-normal, in no order. */
const firmAfter = (i: number): number => 48 * Math.exp(0.26 * (((i * 7) % 15) / 5 - 1.4));

describe('stages that are only ever logged as done', () => {
  it('do not make forecasts run ahead of a maker who always unmoulds at 48 h', () => {
    expect(learned(() => [unmoulded(48)])).toBeGreaterThan(FLOOR);
  });

  it('nor of one who unmoulds on the first evening on which the soap is firm, and logs nothing before', () => {
    const evening = (i: number): number => 23 + 24 * Math.max(0, Math.ceil((firmAfter(i) - 23) / 24));
    expect(learned((i) => [unmoulded(evening(i))])).toBeGreaterThan(FLOOR);
  });

  it('nor behind one who always patches, whether or not it was in time', () => {
    const median = learned(() => [unmoulded(48), patched(48.5)]);
    expect(median).toBeGreaterThan(FLOOR);
    expect(median).toBeLessThan(unlearned * 1.001);
  });
});

describe('what is told of a log with nothing but done stages', () => {
  /** A run pours two layers. */
  it('is that it says nothing of the soap, and of how many batches', () => {
    const told = workshopLessons(teachingsAfter(() => [unmoulded(48)], 5));
    expect(told.lessons).toEqual([]);
    expect(told.onlyDone).toEqual([{ pace: 'set', batches: 10 }]);
    const looked = workshopLessons(
      teachingsAfter((i) => [...(i === 2 ? [notYet(30)] : []), unmoulded(48)], 5),
    );
    expect(looked.lessons.map(({ pace }) => pace)).toContain('set');
    expect(looked).not.toHaveProperty('onlyDone');
  });

  it('is, of the stage in the plan, that it is held by the soonest that it was ever done', () => {
    const whyAfter = (ofRun: (i: number) => readonly LogEntry[]) => {
      const learnedSo = learnedFrom(teachingsAfter(ofRun, 4));
      const planned = planRuns(
        { ...file, log: [], learned: learnedSo },
        { now: minute(29_700_000), scenarios: 20 },
      );
      if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
      const stages = planned.value.runs[0]?.stages ?? [];
      return stages.find(({ key }) => key === 'unmould')?.why ?? [];
    };
    const held = whyAfter((i) => [unmoulded(90 + i)]);
    expect(held).toContainEqual({
      code: 'why.soonest-done',
      ...{ part: expect.objectContaining({ part: 'sand' }), state: 'firm' },
      // Setting up may come before the first touch.
      minutes: expect.closeTo(90 * 60, -2),
    });
    for (const free of [[unmoulded(20)], [notYet(60), unmoulded(90)]]) {
      expect(whyAfter(() => free).map(({ code }) => code)).not.toContain('why.soonest-done');
    }
  });
});

describe('stages that are logged as done after “not yet”', () => {
  it('teach both sides: the soap was ready between the two', () => {
    const slow = learned(() => [notYet(52), unmoulded(60)]);
    expect(slow).toBeGreaterThan(52);
    expect(slow).toBeLessThan(60);
    const fast = learned(() => [notYet(20), unmoulded(24)]);
    expect(fast).toBeGreaterThan(20);
    expect(fast).toBeLessThan(24.5);
  });

  it('teach nothing below their time once that look is to be forgotten', () => {
    const forget: LogEntry = { kind: 'forget', entry: '#3', at: after(90) };
    expect(learned(() => [notYet(20), unmoulded(24), forget])).toBeGreaterThan(FLOOR);
  });
});
