import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanChange, PlanDocument } from '#contract';
import { describeEffect, describeEntry, planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const [design] = file.designs;
if (design === undefined) throw new Error('no design');

const at = '2026-11-27T20:00:00Z';
const over = { part: 'over', title: 'Upper layer' };

describe('what a log entry tells', () => {
  it.each<[LogEntry, unknown]>([
    [
      { kind: 'done', stage: 'turn', at },
      { code: 'logged.done', stage: { stage: 'turn', title: 'Turn' } },
    ],
    [
      { kind: 'not-yet', stage: 'unmould', at },
      { code: 'logged.not-yet', stage: { stage: 'unmould', title: 'Unmould' } },
    ],
    // A design that was changed since may not know it any more.
    [
      { kind: 'done', stage: 'wrap', at },
      { code: 'logged.done', stage: { stage: 'wrap', title: 'wrap' } },
    ],
    [
      { kind: 'seen', part: 'over', state: 'firm', saw: 'already', at },
      { code: 'logged.seen', part: over, state: 'firm', saw: 'already' },
    ],
    [
      { kind: 'weighed', part: 'over', pieces: 3, usedG: 120, at },
      { code: 'logged.weighed', part: over, pieces: 3, usedG: 120 },
    ],
    [
      { kind: 'weigh-in', pieces: 6, massG: 480, at },
      { code: 'logged.weigh-in', pieces: 6, massG: 480 },
    ],
    [
      { kind: 'mishap', part: 'over', mishap: 'seized', at },
      { code: 'logged.mishap', part: over, mishap: 'seized', response: 'remake' },
    ],
    [
      { kind: 'mishap', part: 'over', mishap: 'seized', response: 'carry-on', at },
      { code: 'logged.mishap', part: over, mishap: 'seized', response: 'carry-on' },
    ],
    [
      { kind: 'mishap', part: 'over', mishap: 'holes', response: 'drop-part', onPurpose: true, at },
      { code: 'logged.left-out', part: over },
    ],
    [{ kind: 'note', note: 'Fine', at }, { code: 'logged.note' }],
    [
      { kind: 'note', stage: 'turn', note: 'Fine', at },
      { code: 'logged.note', stage: { stage: 'turn', title: 'Turn' } },
    ],
    [{ kind: 'forget', entry: '#1', at }, { code: 'logged.forget' }],
    [{ kind: 'take-back', entry: '#1', at }, { code: 'logged.take-back' }],
  ])('%o', (entry, told) => {
    expect(describeEntry(entry, design)).toEqual(told);
  });
});

describe('what an entry does to the plan', () => {
  const planned = planRuns(file, { now: minuteOfIso('2026-11-26T12:00:00Z'), scenarios: 50 });
  if (!planned.ok) throw new Error('refused');
  const plan = planned.value;
  const change = (kind: PlanChange['change']): PlanChange => ({
    ...{ run: 'cups', stage: 'turn', attempt: 1, fromAt: null, toAt: null, why: [] },
    change: kind,
  });

  it('is how many stages move and how many stay', () => {
    const changes = (['added', 'later', 'earlier', 'removed', 'done'] as const).map(change);
    // Four stages are planned.
    expect(describeEffect(changes, plan)).toEqual([
      { code: 'effect.moves', added: 1, removed: 1, later: 1, earlier: 1, stay: 1 },
    ]);
    expect(describeEffect([change('later')], plan)).toMatchObject([{ later: 1, stay: 3 }]);
  });

  it('is nothing where what is done was only told', () => {
    expect(describeEffect([change('done')], plan)).toEqual([{ code: 'effect.nothing-moves' }]);
  });

  it('is that nothing is left where all is done', () => {
    const runs = plan.runs.map((run) => ({
      ...run,
      stages: run.stages.map((stage) => ({ ...stage, status: 'done' as const })),
    }));
    expect(describeEffect([change('done')], { ...plan, runs })).toEqual([{ code: 'effect.nothing-left' }]);
  });

  it('is that there is no plan any more, and why, or that there was no time for one', () => {
    const because = { code: 'conflict.horizon', days: 120 } as const;
    const conflict: PlanDocument = { ...plan, status: 'conflict', conflict: [because] };
    expect(describeEffect([change('later')], conflict)).toEqual([{ code: 'effect.no-plan' }, because]);
    expect(describeEffect([], { ...plan, status: 'undecided' })).toEqual([{ code: 'effect.undecided' }]);
  });
});
