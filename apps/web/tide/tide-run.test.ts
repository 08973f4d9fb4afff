import { describe, expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { tideRun } from './tide-run.js';

const now = Date.parse('2026-11-27T17:00Z');
const file = loadRunFile('ok', 'plain-tiles');
const planned = planRuns({ ...file }, { now: minuteOf(now), scenarios: 100 });
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const [run] = planned.value.runs;
const tide = tideRun(planned.value, 'harbour-market', run!.clocks, now)!;

describe('the demo run on the chart', () => {
  it('has a mark for each stage of the tide table, numbered in its order, on the ribbon of its part', () => {
    expect(tide.marks.map(({ stage }) => stage)).toEqual(run!.stages);
    expect(tide.marks.map(({ number }) => number)).toEqual(run!.stages.map((_, i) => i + 1));
    for (const { row, stage } of tide.marks) expect(tide.parts[row]?.key).toBe(stage.part);
  });

  it('knows at which stage most runs are lost, as the plan tells it', () => {
    const told = planned.value.weakLinks.filter(({ stage }) => stage !== 'ready');
    expect(told.length).toBeGreaterThan(0);
    for (const { id, stage, lost } of tide.marks) {
      const own = told.filter((link) => link.stage === stage.key);
      expect(lost, id).toBeCloseTo(
        own.reduce((sum, { share }) => sum + share, 0),
        9,
      );
    }
  });

  it('has a ribbon for each part, from its making on', () => {
    expect(tide.parts.map(({ key }) => key)).toEqual(['deep', 'sand', 'shells', 'foam', 'drops']);
    for (const [row, part] of tide.parts.entries()) {
      const making = tide.marks.find((mark) => mark.row === row)!;
      const begins = part.edges[0]!.points[0]!.at;
      expect(begins).toBeGreaterThanOrEqual(making.at);
      expect(begins).toBeLessThanOrEqual(making.end);
    }
  });

  it('cures from the unmoulding of what shares its mould, foam piped later from its making', () => {
    const cured = run!.clocks.filter(({ state }) => state === 'cured');
    const endOf = (key: string): number => tide.marks.find(({ stage }) => stage.key === key)!.end;
    for (const [part, from] of [
      ['deep', 'unmould'],
      ['sand', 'unmould'],
      ['foam', 'pipe-foam'],
    ] as const) {
      const likely = tide.parts.find(({ key }) => key === part)!.edges[2]!;
      const full = likely.points.find(({ thickness }) => thickness === 1)!;
      const { now: band } = cured.find((clock) => clock.part === part)!;
      expect(full.at).toBeCloseTo(endOf(from) + band.likely * 60_000, 0);
    }
  });

  it('can be looked at up to the slow end of the cure', () => {
    expect(tide.whole.from).toBeLessThan(now);
    expect(tide.whole.to).toBeGreaterThan(tide.ready!.high);
    expect(tide.making.to).toBeLessThan(tide.ready!.low);
  });
});

it('draws nothing of a run without any stage that has a time', () => {
  const none = { ...planned.value, runs: planned.value.runs.map((each) => ({ ...each, stages: [] })) };
  expect(tideRun(none, 'harbour-market', [], now)).toBeUndefined();
  expect(tideRun(planned.value, 'another', [], now)).toBeUndefined();
});
