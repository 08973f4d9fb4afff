import { describe, expect, it } from 'vitest';
import { planRuns, writePlanInput, type RunsInput } from '#runs';
import { minuteOfIso, type Minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { answerWish } from './answer-wish.js';
import type { Base, Outcome, Wish } from './messages.js';

const file = loadRunFile('demo', 'orchard-loaves');
const order = file.runs[0]!;
const now = minuteOfIso('2026-11-27T12:00:00Z');
const library: RunsInput = { ...file, runs: [], log: [] };

/** As it comes out of a worker: messages are copied, not shared. */
function answered(input: RunsInput, wish: Wish, more: Partial<Base> = {}): Outcome {
  const base = structuredClone({ input: writePlanInput(input, now), ...more });
  return structuredClone(answerWish(base, structuredClone(wish), now, 200));
}

const planOf = (outcome: Outcome) => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.issues));
  return outcome.plan;
};

describe('a wish about a run that there is not yet', () => {
  it('is answered as the library plans it', () => {
    const plain = answered(library, { kind: 'order', order, recipes: [] });
    expect(planRuns(file, { now, scenarios: 200 })).toEqual({ ok: true, value: planOf(plain) });
  });

  it('has its own water and hardener', () => {
    const recipes = [{ recipe: 'orchard-loaf', lyeConcentrationPercent: 28, sodiumLactatePercent: 3 }];
    const changed = { ...file.recipes[0]!, lyeConcentrationPercent: 28, sodiumLactatePercent: 3 };
    const written = planRuns({ ...file, recipes: [changed] }, { now, scenarios: 200 });
    expect(written).toEqual({
      ok: true,
      value: planOf(answered(library, { kind: 'order', order, recipes })),
    });
  });

  it('counts back from a day where that is asked for', () => {
    const due = { ...order, readyBy: '2027-02-27' };
    const outcome = answered(library, { kind: 'order', order: due, recipes: [], latestWithOdds: 0.7 });
    expect(outcome).toMatchObject({ ok: true, latest: { status: 'found', readyBy: '2027-02-27' } });
    expect(planOf(outcome).odds?.soundByTheDay).toBeGreaterThanOrEqual(0.7);
  });

  it('says which designs there are when it names another', () => {
    const outcome = answered(library, {
      kind: 'order',
      order: { ...order, design: 'teapot' },
      recipes: [],
    });
    expect(outcome).toMatchObject({ ok: false, issues: [{ path: ['design'], known: ['orchard-bar'] }] });
  });
});

describe('a wish about a run that there is', () => {
  const previous = planOf(answered(library, { kind: 'order', order, recipes: [] }));
  const input: RunsInput = { ...file };
  const startOf = (outcome: Outcome, stage: string): string | undefined =>
    planOf(outcome).runs[0]?.stages.find(({ key }) => key === stage)?.startAt;

  it('moves a pinned stage and leaves the others where they were', () => {
    const was = startOf({ ok: true, plan: previous }, 'stamp') ?? '';
    const startAt = (minuteOfIso(was) + 30) as Minute;
    const pins = [{ run: order.key, stage: 'stamp', startAt }];
    const outcome = answered(input, { kind: 'run', pins }, { previous });
    expect(minuteOfIso(startOf(outcome, 'stamp') ?? '')).toBe(startAt);
    expect(startOf(outcome, 'cut')).toBe(startOf({ ok: true, plan: previous }, 'cut'));
  });

  it('takes entries and a change as the log and the library would', () => {
    const entry = { kind: 'done', stage: 'pour-bark', at: '2026-11-27T11:30:00Z' } as const;
    const done = planOf(answered(input, { kind: 'run', entries: [entry] }, { previous }));
    expect(done.runs[0]?.stages[0]).toMatchObject({ key: 'pour-bark', status: 'done' });
    const fewer = answered(input, { kind: 'run', change: { kind: 'count', run: order.key, count: 10 } });
    expect(planOf(fewer).runs[0]?.count).toBe(10);
  });
});
