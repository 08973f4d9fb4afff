import { describe, expect, it } from 'vitest';
import type { LogEntry, PlannedStage } from '#contract';
import type { Window } from '#planner';
import type { RunsInput } from '#runs';
import { isoInstant, minute, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { assessRuns } from '../assess-runs.js';
import type { AssessedRun } from '../assessed-run.js';
import { presentRun, type Placed } from './present-run.js';

const none = { amounts: [], batches: [] };
import type { StageWindow } from './stage-windows.js';

const file = loadRunFile('ok', 'two-layer');

function assessedOf(input: RunsInput): AssessedRun {
  const taken = assessRuns(input);
  if (!taken.ok) throw new Error(JSON.stringify(taken.issues));
  return taken.value[0]!.assessed;
}

const withLog = (...entries: LogEntry[]): RunsInput => ({
  ...file,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});
const under: LogEntry = {
  ...{ kind: 'done', stage: 'pour-under' },
  ...{ startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T18:32:00Z' },
};
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };
const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-29T18:20:00Z' };

const BASE = minuteOfIso('2026-11-27T18:00:00Z');
const at = (minutes: number): string => isoInstant(minute(BASE + minutes));
const likely: Window = {
  ...{ earliest: 0, latest: 0, slack: 0 },
  ...{ earliestBy: { kind: 'origin' }, latestBy: { kind: 'horizon' } },
};

/** A plan of the cups, minutes from the start of the run. */
function placed(
  starts: Record<string, number>,
  windows: Record<string, Partial<Record<'opens' | 'lastCall' | 'surelyOpen' | 'surelyUntil', number>>> = {},
): Placed {
  const id = (key: string): string => (key.includes('#') ? `cups/${key}` : `cups/${key}#1`);
  return {
    countOn: new Map(),
    schedule: {
      starts: new Map(Object.entries(starts).map(([key, start]) => [id(key), BASE + start])),
      ...{ precedences: [], certainty: 0.5 },
    },
    windows: new Map(
      Object.keys(starts).map((key): [string, StageWindow] => {
        const { opens = starts[key]!, lastCall, surelyOpen, surelyUntil } = windows[key] ?? {};
        const instant = (minutes: number | undefined) => (minutes === undefined ? undefined : BASE + minutes);
        return [
          id(key),
          {
            ...{ opens: BASE + opens, lastCall: instant(lastCall), likely },
            ...{ surelyOpen: instant(surelyOpen), surelyUntil: instant(surelyUntil) },
          },
        ];
      }),
    ),
  };
}

const all = { 'pour-under': 0, 'pour-over': 90, unmould: 3000, turn: 4320 };
const stageOf = (stages: readonly PlannedStage[], key: string, attempt = 1): PlannedStage | undefined =>
  stages.find((stage) => stage.key === key && stage.attempt === attempt);

describe('a run as a plan shows it', () => {
  it('has each stage to come with its window and how long it takes', () => {
    const windows = { 'pour-over': { opens: 80, lastCall: 200, surelyOpen: 95, surelyUntil: 150 } };
    const { stages, ...run } = presentRun(assessedOf(file), none, placed(all, windows));
    expect(run).toMatchObject({ run: 'cups', title: 'Twelve cups', design: 'cup-soap', count: 12 });
    expect(stageOf(stages, 'pour-over')).toMatchObject({
      ...{ title: 'Pour the upper layer', kind: 'layer', part: 'over', status: 'planned' },
      // 20 min and 12 times 10 s.
      ...{ startAt: at(90), endAt: at(112), opensAt: at(80), bestAt: at(90) },
      ...{ lastCallAt: at(200), surelyOpenAt: at(95), surelyUntil: at(150) },
      cautions: [{ code: 'caution.lye' }],
    });
    expect(stageOf(stages, 'turn')).toMatchObject({
      ...{ opensAt: at(4320), lastCallAt: null, surelyOpenAt: null, surelyUntil: null },
    });
  });

  it('has no start outside its window, where it was put there', () => {
    const windows = { unmould: { opens: 3100, lastCall: 2900 } };
    const { stages } = presentRun(assessedOf(file), none, placed(all, windows));
    expect(stageOf(stages, 'unmould')).toMatchObject({ opensAt: at(3000), lastCallAt: at(3000) });
  });

  it('has the stages in the order of their times, of equal times by their keys', () => {
    const { stages } = presentRun(assessedOf(file), none, placed({ ...all, turn: 90, unmould: 90 }));
    expect(stages.map(({ key }) => key)).toEqual(['pour-under', 'pour-over', 'turn', 'unmould']);
  });

  it('has what was done or spoilt at its time, and no cautions for it any more', () => {
    const seized: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T20:00:00Z' };
    const again = placed({ 'pour-over#2': 200, unmould: 3000, turn: 4320 });
    const { stages } = presentRun(assessedOf(withLog(under, over, seized)), none, again);
    const past = { lastCallAt: null, surelyOpenAt: null, surelyUntil: null, cautions: [] };
    expect(stageOf(stages, 'pour-under')).toMatchObject({
      ...{ status: 'done', startAt: at(0), endAt: at(32), opensAt: at(0), bestAt: at(0), ...past },
      why: [{ code: 'why.done' }],
    });
    expect(stageOf(stages, 'pour-over')).toMatchObject({
      ...{ status: 'spoilt', endAt: at(112), why: [{ code: 'why.spoilt' }], ...past },
    });
    expect(stageOf(stages, 'pour-over', 2)).toMatchObject({ status: 'planned', startAt: at(200) });
  });

  it('has only what is done where there is no plan, and what is in a plan where one is', () => {
    const bare = presentRun(assessedOf(withLog(under)), none, undefined);
    expect(bare.stages.map(({ key }) => key)).toEqual(['pour-under']);
    expect(bare.ready).toBeNull();
    const { 'pour-over': _missing, ...rest } = all;
    const { stages } = presentRun(assessedOf(file), none, placed(rest));
    expect(stages.map(({ key }) => key)).toEqual(['pour-under', 'unmould', 'turn']);
    const { windows } = placed(all);
    const shut = new Map([...windows].filter(([id]) => id !== 'cups/turn#1'));
    expect(presentRun(assessedOf(file), none, { ...placed(all), windows: shut }).stages).toHaveLength(3);
  });

  it('leaves out what is not to be made any more', () => {
    const drop: LogEntry = {
      ...{ kind: 'mishap', part: 'over', mishap: 'seized', response: 'drop-part' },
      at: '2026-11-27T19:00:00Z',
    };
    const { stages } = presentRun(assessedOf(withLog(under, drop)), none, placed(all));
    expect(stages.map(({ key }) => key)).toEqual(['pour-under', 'unmould', 'turn']);
  });

  it('warns where it looks edible', () => {
    expect(presentRun(assessedOf(file), none, undefined).cautions).toEqual([]);
    const designs = file.designs.map((design) => ({ ...design, looksEdible: true }));
    expect(presentRun(assessedOf({ ...file, designs }), none, undefined).cautions).toEqual([
      { code: 'caution.looks-edible' },
    ]);
  });
});

describe('when a lot is cured', () => {
  const cured = (assessed: AssessedRun, part: string) => assessed.clocks.get(part)!.get('cured')!;
  const minutesOf = (run: ReturnType<typeof presentRun>) => {
    const { low, likely, high } = run.ready!;
    return [low, likely, high].map((instant) => minuteOfIso(instant) - BASE);
  };

  it('is told from the end of the unmoulding, planned or done, by the slowest part', () => {
    const assessed = assessedOf(file);
    const slowest = Math.max(...['under', 'over'].map((part) => cured(assessed, part).medianMin));
    const [low, likely, high] = minutesOf(presentRun(assessed, none, placed(all)));
    expect(likely).toBe(Math.round(3010 + slowest));
    expect(low).toBeLessThan(likely!);
    expect(high).toBeGreaterThan(likely!);
    const done = assessedOf(withLog(under, over, unmould));
    const [, then] = minutesOf(presentRun(done, none, placed({ turn: 4320 })));
    expect(then).toBe(Math.round(minuteOfIso(unmould.at) - BASE + slowest));
  });

  it('waits for the part that is cured last, whenever its cure begins', () => {
    const designs = file.designs.map((design) => ({
      ...design,
      parts: design.parts.map((part) => {
        const { mould: _none, ...free } = part as typeof part & { mould?: string };
        return part.key === 'over' ? free : part;
      }),
      stages: design.stages.map((stage) => (stage.key === 'unmould' ? { ...stage, part: 'under' } : stage)),
      waits: design.waits.filter(({ part }) => part !== 'over'),
    })) as typeof file.designs;
    const assessed = assessedOf({ ...file, designs });
    const late = placed({ ...all, 'pour-over': 9000 });
    const ends = [cured(assessed, 'under').medianMin + 3010, cured(assessed, 'over').medianMin + 9022];
    expect(minutesOf(presentRun(assessed, none, late))[1]).toBe(Math.round(Math.max(...ends)));
    const early = [cured(assessed, 'under').medianMin + 3010, cured(assessed, 'over').medianMin + 112];
    expect(minutesOf(presentRun(assessed, none, placed(all)))[1]).toBe(Math.round(Math.max(...early)));
  });

  it('is what the scales say once they do', () => {
    const ready = { low: BASE + 10.4, likely: BASE + 20.6, high: BASE + 30 };
    const assessed = { ...assessedOf(file), scales: { ready } } as AssessedRun;
    expect(minutesOf(presentRun(assessed, none, placed(all)))).toEqual([10, 21, 30]);
  });

  it('may be used before, and is at its best after', () => {
    const assessed = assessedOf(file);
    const days = presentRun(assessed, none, placed(all));
    const medians = (state: 'usable' | 'best'): number =>
      Math.max(...['under', 'over'].map((part) => assessed.clocks.get(part)!.get(state)!.medianMin));
    expect(minuteOfIso(days.usable!.likely) - BASE).toBe(Math.round(3010 + medians('usable')));
    expect(minuteOfIso(days.best!.likely) - BASE).toBe(Math.round(3010 + medians('best')));
    for (const side of ['low', 'likely', 'high'] as const) {
      expect(days.usable![side] <= days.ready![side] && days.ready![side] <= days.best![side]).toBe(true);
    }
    // What the scales say of the cure holds for all three.
    const soon = { low: BASE + 10, likely: BASE + 20, high: BASE + 30 };
    const weighed = presentRun({ ...assessed, scales: { ready: soon } } as AssessedRun, none, placed(all));
    expect(minuteOfIso(weighed.usable!.likely) - BASE).toBe(20);
    const later = { low: BASE + 1e6, likely: BASE + 2e6, high: BASE + 3e6 };
    const slow = presentRun({ ...assessed, scales: { ready: later } } as AssessedRun, none, placed(all));
    expect(minuteOfIso(slow.best!.likely) - BASE).toBe(2e6);
  });

  it('is not told where its cure has no place in the plan, or nothing cures', () => {
    const unplaced = presentRun(assessedOf(file), none, placed({ turn: 4320 }));
    expect(unplaced.ready).toBeNull();
    expect([unplaced.usable, unplaced.best]).toEqual([undefined, undefined]);
    const drop = (part: string): LogEntry => ({
      ...{ kind: 'mishap', part, mishap: 'seized', response: 'drop-part', at: '2026-11-27T19:00:00Z' },
    });
    expect(presentRun(assessedOf(withLog(drop('under'), drop('over'))), none, placed(all)).ready).toBeNull();
  });
});
