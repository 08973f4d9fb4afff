import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument, PlannedStage } from '#contract';
import { instantOf, localTimeOf } from '#hours';
import { comparePlans, planRuns, type RunsInput } from '#runs';
import { minuteOf, type Minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const ZONE = 'Europe/Dublin';

function at(local: string): Minute {
  const found = instantOf(local, ZONE);
  if (found === undefined) throw new Error(local);
  return found;
}

function planned(input: RunsInput, now: string, previous?: PlanDocument): PlanDocument {
  const result = planRuns(input, { now: at(now), scenarios: 500, previous });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

function stageOf(plan: PlanDocument, key: string, attempt = 1): PlannedStage {
  const found = plan.runs.flatMap((run) => run.stages).find((s) => s.key === key && s.attempt === attempt);
  if (found === undefined) throw new Error(`no stage ${key} #${String(attempt)}`);
  return found;
}

const time = (text: string): number => Date.parse(text);

/** What the demo promises, checked from the document alone, against local wall-clock hours read by Intl. */
describe('rockpool tiles', () => {
  const file = loadRunFile('ok', 'plain-tiles');
  const plan = planned(file, '2026-11-27T18:00');
  const run = plan.runs[0];

  it('is planned from Friday evening to Monday evening', () => {
    expect(plan.status).toBe('planned');
    const stages = run?.stages ?? [];
    expect(stages).toHaveLength(10);
    expect(stages.every((s) => s.startAt >= '2026-11-27T18:00' && s.endAt <= '2026-11-30T22:00')).toBe(true);
  });

  it('has every stage in its window and in working hours', () => {
    const dayName = new Intl.DateTimeFormat('en-GB', { timeZone: ZONE, weekday: 'long' });
    for (const stage of run?.stages ?? []) {
      expect(time(stage.startAt), stage.key).toBeGreaterThanOrEqual(time(stage.opensAt));
      if (stage.lastCallAt !== null) expect(time(stage.startAt)).toBeLessThanOrEqual(time(stage.lastCallAt));
      const day = dayName
        .format(time(stage.startAt))
        .toLowerCase() as keyof typeof file.workshop.hours.weekly;
      const [from, to] = [stage.startAt, stage.endAt].map((t) => localTimeOf(minuteOf(time(t)), ZONE));
      const spans = file.workshop.hours.weekly[day];
      expect(
        spans.some((s) => s.from <= (from ?? '') && (to ?? '') <= s.to),
        `${stage.key} on ${day}`,
      ).toBe(true);
    }
  });

  it('never asks for more hands than there are', () => {
    const stages = [...(run?.stages ?? [])].sort((a, b) => time(a.startAt) - time(b.startAt));
    stages.slice(1).forEach((stage, i) => {
      expect(time(stage.startAt)).toBeGreaterThanOrEqual(time(stages[i]?.endAt ?? ''));
    });
  });

  it('honours the links of the design', () => {
    for (const link of file.designs[0]?.links ?? []) {
      const gap = (time(stageOf(plan, link.to).startAt) - time(stageOf(plan, link.from).endAt)) / 60_000;
      expect(gap).toBeGreaterThanOrEqual(link.atLeastMin);
      if (link.atMostMin !== undefined) expect(gap).toBeLessThanOrEqual(link.atMostMin);
    }
  });

  it('gives reasons whose product is the likely value', () => {
    for (const clock of run?.clocks ?? []) {
      const product = clock.reasons.reduce((p, reason) => p * reason.factor, clock.baseMin);
      expect(product / clock.band.likely).toBeCloseTo(1, 6);
    }
  });

  it('shows the lye caution at each act with lye, and what fresh soap does at each act with that', () => {
    expect(stageOf(plan, 'pour-deep').cautions.map((c) => c.code)).toContain('caution.lye');
    expect(stageOf(plan, 'patch').cautions.map((c) => c.code)).toContain('caution.fresh-soap');
    expect(stageOf(plan, 'drops').cautions.map((c) => c.code)).toEqual([
      'caution.hot-base',
      'caution.alcohol',
    ]);
  });

  it('is the same at every call', () => {
    expect(planned(file, '2026-11-27T18:00')).toEqual(plan);
  });
});

describe('two runs at once', () => {
  it('share the hands without overlap', () => {
    const tiles = loadRunFile('ok', 'plain-tiles');
    const loaves = loadRunFile('demo', 'orchard-loaves');
    const both: RunsInput = {
      ...tiles,
      moulds: [...tiles.moulds, ...loaves.moulds],
      recipes: [...tiles.recipes, ...loaves.recipes],
      designs: [...tiles.designs, ...loaves.designs],
      runs: [...tiles.runs, ...loaves.runs],
    };
    const plan = planned(both, '2026-11-27T18:00');
    expect(plan.status).toBe('planned');
    const stages = plan.runs.flatMap((r) => r.stages).sort((a, b) => time(a.startAt) - time(b.startAt));
    expect(stages).toHaveLength(16);
    stages.slice(1).forEach((stage, i) => {
      expect(time(stage.startAt)).toBeGreaterThanOrEqual(time(stages[i]?.endAt ?? ''));
    });
  });
});

describe('a wait for the cure', () => {
  it('counts from the unmoulding, as the forecast of the lot does', () => {
    const file = loadRunFile('ok', 'two-layer');
    const [design] = file.designs;
    if (design === undefined) throw new Error('no design');
    const wrap = { ...design.stages[3]!, key: 'wrap', title: 'Wrap', kind: 'wrap' as const };
    const waits = [...design.waits, { stage: 'wrap', part: 'over', opens: 'cured' as const }];
    const designs = [{ ...design, stages: [...design.stages, wrap], waits }];
    const plan = planned({ ...file, designs }, '2026-11-27T18:00');
    expect(time(stageOf(plan, 'wrap').opensAt)).toBeGreaterThanOrEqual(
      time(plan.runs[0]?.ready?.likely ?? ''),
    );
  });
});

describe('a design that says nothing of order', () => {
  it('is made in order all the same: nothing is unmoulded before it is poured', () => {
    const file = loadRunFile('demo', 'orchard-loaves');
    const designs = file.designs.map((design) => ({ ...design, links: [], waits: [] }));
    const plan = planned({ ...file, designs }, '2026-11-27T18:00');
    const [design] = designs;
    const making = new Set(['pour', 'layer', 'dip', 'pipe', 'glaze', 'press-decor']);
    for (const stage of design?.stages ?? []) {
      if (making.has(stage.kind)) continue;
      const maker = design?.stages.find((s) => s.part === stage.part && making.has(s.kind));
      if (maker === undefined) continue;
      const [first, then] = [stageOf(plan, maker.key), stageOf(plan, stage.key)];
      expect(time(then.startAt), stage.key).toBeGreaterThanOrEqual(time(first.endAt));
    }
  });
});

describe('moulds', () => {
  it('are held from whichever layer is poured first, however the stages are listed', () => {
    const file = loadRunFile('ok', 'two-layer');
    const [design] = file.designs;
    if (design === undefined) throw new Error('no design');
    const designs = [{ ...design, stages: [...design.stages].reverse() }];
    const busy = [
      { resource: 'mould:cup', amount: 1, from: at('2026-11-27T12:00'), to: at('2026-11-27T19:00') },
    ];
    const plan = planned({ ...file, designs, busy }, '2026-11-27T18:00');
    expect(stageOf(plan, 'pour-under').startAt >= '2026-11-27T19:00').toBe(true);
  });
});

describe('what cannot be', () => {
  it('names the deadline and the cure that collide', () => {
    const file = loadRunFile('ok', 'two-layer');
    const [run] = file.runs;
    if (run === undefined) throw new Error('no run');
    const plan = planned({ ...file, runs: [{ ...run, readyBy: '2026-12-06' }] }, '2026-11-27T18:00');
    expect(plan.status).toBe('conflict');
    expect(plan.conflict).toContainEqual(
      expect.objectContaining({ code: 'conflict.ready-by', day: '2026-12-06' }),
    );
    expect(plan.conflict.map(({ code }) => code)).toContain('conflict.cures');
    expect(plan.runs[0]?.amounts).toHaveLength(2);
  });

  it('says that a stage is longer than any of the hours', () => {
    const file = loadRunFile('ok', 'two-layer');
    const [design] = file.designs;
    if (design === undefined) throw new Error('no design');
    const stages = design.stages.map((s) => (s.key === 'turn' ? { ...s, perPieceS: 3600, setupMin: 60 } : s));
    const plan = planned({ ...file, designs: [{ ...design, stages }] }, '2026-11-27T18:00');
    expect(plan.status).toBe('conflict');
    const stage = { run: 'cups', stage: 'turn', attempt: 1, title: 'Turn' };
    expect(plan.conflict).toEqual([{ code: 'conflict.hours', stage, minutes: 13 * 60 }]);
  });
});

describe('the bench log', () => {
  const file = loadRunFile('ok', 'two-layer');
  const first = planned(file, '2026-11-27T18:00');
  const pours: LogEntry[] = [
    { kind: 'done', stage: 'pour-under', startedAt: '2026-11-27T18:00:00Z', at: '2026-11-27T18:32:00Z' },
    { kind: 'done', stage: 'pour-over', startedAt: '2026-11-27T19:30:00Z', at: '2026-11-27T19:52:00Z' },
  ];
  const withLog = (...entries: LogEntry[]): RunsInput => ({
    ...file,
    log: entries.map((entry) => ({ run: 'cups', entry })),
  });

  it('fixes what was done, where it was done', () => {
    const plan = planned(withLog(...pours), '2026-11-27T20:00', first);
    expect(stageOf(plan, 'pour-over')).toMatchObject({
      status: 'done',
      startAt: '2026-11-27T19:30:00.000Z',
      endAt: '2026-11-27T19:52:00.000Z',
    });
  });

  it('moves the window on “not firm yet”, and never earlier', () => {
    const before = planned(withLog(...pours), '2026-11-29T09:00');
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
    const after = planned(withLog(...pours, notYet), '2026-11-29T18:00', before);
    expect(after.status).toBe('planned');
    expect(time(stageOf(after, 'unmould').startAt)).toBeGreaterThan(time(notYet.at));
    expect(time(stageOf(after, 'unmould').opensAt)).toBeGreaterThan(time(stageOf(before, 'unmould').opensAt));
    expect(stageOf(after, 'unmould').why).not.toEqual(stageOf(before, 'unmould').why);
  });

  it('makes a seized batch again, keeps what is finished, and says what moved', () => {
    const before = planned(withLog(pours[0] as LogEntry), '2026-11-27T18:40', first);
    const mishap: LogEntry = { kind: 'mishap', part: 'over', mishap: 'seized', at: '2026-11-27T19:40:00Z' };
    const after = planned(withLog(pours[0] as LogEntry, mishap), '2026-11-27T19:40', before);
    expect(stageOf(after, 'pour-under')).toEqual(stageOf(before, 'pour-under'));
    expect(stageOf(after, 'pour-over').status).toBe('spoilt');
    expect(stageOf(after, 'pour-over', 2).status).toBe('planned');
    expect(time(stageOf(after, 'pour-over', 2).startAt)).toBeGreaterThanOrEqual(time(mishap.at));
    const changes = comparePlans(before, after);
    expect(changes.find((c) => c.attempt === 2)).toMatchObject({ stage: 'pour-over', change: 'added' });
    expect(changes.some((c) => c.stage === 'pour-under')).toBe(false);
    expect(changes.every((c) => c.why.length > 0)).toBe(true);
  });

  it('keeps the pieces of a batch that ran short and makes the rest', () => {
    const short: LogEntry = {
      kind: 'mishap',
      part: 'over',
      mishap: 'ran-short',
      pieces: 2,
      at: '2026-11-27T19:52:00Z',
    };
    const after = planned(withLog(pours[0] as LogEntry, short), '2026-11-27T19:52');
    expect(stageOf(after, 'pour-over').status).toBe('done');
    const again = stageOf(after, 'pour-over', 2);
    expect((time(again.endAt) - time(again.startAt)) / 60_000).toBe(21); // 20 min + 2 × 10 s, rounded up
    expect(after.runs[0]?.amounts.find((a) => a.part === 'over')?.count).toBe(2);
  });

  it('leaves a dropped part out', () => {
    const drop: LogEntry = {
      kind: 'mishap',
      part: 'over',
      mishap: 'seized',
      response: 'drop-part',
      at: '2026-11-27T19:40:00Z',
    };
    const after = planned(withLog(pours[0] as LogEntry, drop), '2026-11-27T19:40');
    // What is in the mould must come out of it all the same.
    expect(after.runs[0]?.stages.map((s) => s.key)).toEqual(['pour-under', 'unmould', 'turn']);
    expect(after.runs[0]?.amounts.map((a) => a.part)).toEqual(['under']);
    expect(after.runs[0]?.ready).not.toBeNull();
  });

  it('refuses what cannot have happened', () => {
    const twice = planRuns(withLog(...pours, pours[0] as LogEntry), { now: at('2026-11-27T20:00') });
    expect(twice).toMatchObject({
      ok: false,
      issues: [{ code: 'log.already-done', path: ['log', 2, 'entry', 'stage'] }],
    });
    const unknown = planRuns(withLog({ kind: 'not-yet', stage: 'fly', at: '2026-11-27T20:00:00Z' }), {
      now: at('2026-11-27T20:00'),
    });
    expect(unknown).toMatchObject({ ok: false, issues: [{ code: 'stage.unknown', value: 'fly' }] });
  });
});
