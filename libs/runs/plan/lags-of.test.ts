import { describe, expect, it } from 'vitest';
import type { LogEntry, RunFile } from '#contract';
import type { Lag } from '#planner';
import type { RunsInput } from '#runs';
import { isoInstant, minute, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { assessRuns } from '../assess-runs.js';
import type { AssessedRun } from '../assessed-run.js';
import { lagsOf, type ReasonedLag } from './network-lags.js';

const cups = loadRunFile('ok', 'two-layer');
const tiles: RunFile = { ...loadRunFile('ok', 'plain-tiles'), earlier: [] };

function assessedOf(input: RunsInput): AssessedRun {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  return taken.value[0]!.assessed;
}

const withLog = (file: RunFile, ...entries: LogEntry[]): RunsInput => ({
  ...file,
  log: entries.map((entry) => ({ run: file.runs[0]!.key, entry })),
});
const lagsIn = (input: RunsInput): ReasonedLag[] => lagsOf(assessedOf(input));
const ofKind = (lags: readonly ReasonedLag[], kind: string): Lag[] =>
  lags.filter(({ reference }) => reference.reason.kind === kind).map(({ lag }) => lag);
const known = (minutes: number) => ({ kind: 'known', minutes });
/** From and to, without the run. */
const ends = ({ from, to }: Lag): string => [from, to].map((id) => id.replace(/^.*\//, '')).join(' ');

const drop = (part: string): LogEntry => ({
  ...{ kind: 'mishap', part, mishap: 'seized', response: 'drop-part', at: '2026-11-27T18:10:00Z' },
});
const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };

describe('the links of a design', () => {
  it('hold between the end of the one stage and the start of the other, with their limits', () => {
    const links = ofKind(lagsIn(cups), 'link');
    expect(links).toEqual([
      {
        ...{ id: 'cups/links/0', from: 'cups/unmould#1', to: 'cups/turn#1', point: 'end' },
        atLeast: known(720),
      },
    ]);
    const [press, patch] = ofKind(lagsIn(tiles), 'link');
    expect(press).toMatchObject({ atLeast: known(720) });
    expect(press).not.toHaveProperty('atMost');
    expect(patch).toMatchObject({ atLeast: known(0), atMost: known(30) });
    const { reference } = lagsIn(tiles)[1]!;
    expect(reference).toMatchObject({
      ...{ from: patch?.from, to: patch?.to, reason: { kind: 'link', atLeastMin: 0, atMostMin: 30 } },
    });
  });

  it('are kept in order across what is left out', () => {
    // The foam is piped, set with shells and turned: without it the drops follow the patching, and the stamp the drops.
    const links = ofKind(lagsIn(withLog(tiles, drop('foam'))), 'link');
    expect(links.map((lag) => [ends(lag), lag.atLeast, lag.atMost])).toEqual([
      ['press-shells#1 drops#1', known(0), undefined],
      ['unmould#1 patch#1', known(0), known(30)],
      ['patch#1 drops#1', known(0), undefined],
      ['drops#1 stamp#1', known(0), undefined],
    ]);
    expect(links.map(({ id }) => id)).toEqual([0, 1, 2, 5].map((i) => `harbour-market/links/${i}`));
  });

  it('bridge ways that part and meet again once for each way on', () => {
    const [design] = tiles.designs;
    const links = [
      ...design!.links.filter(({ from }) => from !== 'pipe-foam'),
      { from: 'pipe-foam', to: 'set-shells', atLeastMin: 0 },
      { from: 'pipe-foam', to: 'turn', atLeastMin: 0 },
    ];
    const input = withLog({ ...tiles, designs: [{ ...design!, links }] }, drop('foam'));
    const found = ofKind(lagsIn(input), 'link').map(ends);
    expect(found.filter((each) => each === 'patch#1 drops#1')).toHaveLength(1);
    expect(found.filter((each) => each === 'patch#1 stamp#1')).toHaveLength(1);
  });
});

describe('the waits of a design', () => {
  it('last as the clocks of their parts say, and end with the last piece', () => {
    const assessed = assessedOf(cups);
    const clock = (part: string, state: 'holds-layer' | 'bonds-until' | 'firm') => {
      const { medianMin: median, sigma } = assessed.clocks.get(part)!.get(state)!;
      return { kind: 'uncertain', median, sigma, draw: expect.any(String) as string };
    };
    expect(ofKind(lagsOf(assessed), 'wait')).toEqual([
      {
        ...{
          id: 'cups/waits/0',
          from: 'cups/pour-under#1',
          to: 'cups/pour-over#1',
          point: 'end',
          until: 'end',
        },
        ...{ atLeast: clock('under', 'holds-layer'), atMost: clock('under', 'bonds-until') },
      },
      {
        ...{ id: 'cups/waits/1', from: 'cups/pour-over#1', to: 'cups/unmould#1', point: 'end' },
        atLeast: clock('over', 'firm'),
      },
    ]);
  });

  it('are one draw in one batch where the clock is the same', () => {
    const lags = lagsIn(tiles).map(({ lag }) => lag);
    const drawOf = (id: string, side: 'atLeast' | 'atMost' = 'atLeast'): string | undefined => {
      const length = lags.find((lag) => lag.id === `harbour-market/${id}`)?.[side];
      return length?.kind === 'uncertain' ? length.draw : undefined;
    };
    // Firm sand and firm deep blue are two pours of one recipe; foam is of another.
    expect(drawOf('waits/1')).not.toBe(drawOf('waits/2'));
    expect(drawOf('waits/1')).toBe(drawOf('waits/3', 'atMost'));
    expect(drawOf('waits/5')).not.toBe(drawOf('waits/1'));
    expect(drawOf('cure/deep')).not.toBe(drawOf('waits/1'));
  });

  it('that nothing opens begin once there is something to wait for', () => {
    const wait = lagsIn(tiles).find(({ lag }) => lag.id === 'harbour-market/waits/3')!;
    expect(wait.lag).toMatchObject({
      ...{ from: 'harbour-market/pour-sand#1', to: 'harbour-market/patch#1', until: 'end' },
      ...{ atLeast: known(0), atMost: { kind: 'uncertain' } },
    });
    expect(wait.reference.reason).toMatchObject({ kind: 'wait', wait: { stage: 'patch', part: 'sand' } });
  });

  it('are for no part that is left out', () => {
    const waits = ofKind(lagsIn(withLog(tiles, drop('foam'))), 'wait');
    expect(waits.map(ends).filter((each) => each.includes('foam'))).toEqual([]);
    expect(ofKind(lagsIn(withLog(cups, drop('under'))), 'wait').map(ends)).toEqual(['pour-over#1 unmould#1']);
  });

  it('are of the attempt that is there', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T20:00:00Z' };
    expect(ofKind(lagsIn(withLog(cups, under, over, seized)), 'wait').map(ends)).toEqual([
      'pour-under#1 pour-over#2',
      'pour-over#2 unmould#1',
    ]);
  });
});

describe('what is handled', () => {
  it('is made before, whatever the design says', () => {
    const made = lagsIn(cups).filter(({ reference }) => reference.reason.kind === 'made');
    expect(made.map(({ lag }) => [lag.id, ends(lag), lag.atLeast])).toEqual([
      ['cups/made/unmould', 'pour-over#1 unmould#1', known(0)],
      ['cups/made/turn', 'pour-over#1 turn#1', known(0)],
    ]);
    expect(made[0]?.reference.reason).toEqual({ kind: 'made', part: 'over' });
  });
});

describe('the cure', () => {
  const cureOf = (lags: readonly ReasonedLag[]): Lag[] => ofKind(lags, 'cure');

  it('of each batch begins once it is out of its mould, or was made where it never was in one', () => {
    expect(cureOf(lagsIn(cups)).map((lag) => [lag.id, ends(lag)])).toEqual([
      ['cups/cure/under', 'unmould#1 =ready#1'],
      ['cups/cure/over', 'unmould#1 =ready#1'],
    ]);
    expect(cureOf(lagsIn(tiles)).map(ends)).toEqual([
      'unmould#1 =ready#1',
      'unmould#1 =ready#1',
      'pipe-foam#1 =ready#1',
    ]);
    expect(lagsIn(cups).at(-1)?.reference.reason).toEqual({ kind: 'cure', part: 'over' });
  });

  it('lasts as the scales have it once they tell, counted from the end of the unmoulding', () => {
    const at = (days: number): string => isoInstant(minute(minuteOfIso(unmould.at) + days * 1440));
    const weighed: LogEntry[] = [
      [1, 1500],
      [8, 1458],
      [15, 1420],
      [22, 1390],
    ].map(([days = 0, massG = 0]) => ({ kind: 'weigh-in', pieces: 12, massG, at: at(days) }));
    const assessed = assessedOf(withLog(cups, under, over, unmould, ...weighed));
    const { ready } = assessed.scales;
    if (ready === undefined) throw new Error('the scales do not tell');
    for (const { atLeast } of cureOf(lagsOf(assessed))) {
      if (atLeast?.kind !== 'uncertain') throw new Error('it varies');
      expect(atLeast.median).toBeCloseTo(ready.likely - minuteOfIso(unmould.at), 6);
      // Eight of ten lie within 1.2816 standard deviations either side (any table of the normal distribution).
      const [low, high] = [ready.low, ready.high].map((each) => each - minuteOfIso(unmould.at));
      expect(atLeast.sigma).toBeCloseTo(Math.log(high! / low!) / 2.5631, 4);
      expect(atLeast.draw).toBe('cups/scales');
    }
    // Both layers are on the scales together.
    const sure = { ...assessed, scales: { ...assessed.scales, ready: { low: 0, likely: 0, high: 0 } } };
    expect(cureOf(lagsOf(sure))[0]?.atLeast).toMatchObject({
      draw: expect.not.stringContaining('scales') as string,
    });
    const end = minuteOfIso(unmould.at) + 30_000.4;
    const exact = {
      ...assessed,
      scales: { ...assessed.scales, ready: { low: end, likely: end, high: end } },
    };
    expect(cureOf(lagsOf(exact))[0]?.atLeast).toEqual(known(30_000));
  });
});
