import { expect, it } from 'vitest';
import type { RunFile } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'swirl-loaf');

function planned(topPerPieceS: number, log: RunFile['log'] = [], now = '2026-11-27T12:00:00Z') {
  const designs = file.designs.map((design) => ({
    ...design,
    stages: design.stages.map((stage) =>
      stage.key === 'top' ? { ...stage, perPieceS: topPerPieceS } : stage,
    ),
  }));
  const plan = planRuns({ ...file, designs, log }, { now: minuteOfIso(now), scenarios: 50 });
  if (!plan.ok) throw new Error(JSON.stringify(plan.issues));
  return plan.value;
}

it('pours all parts of a batch before its batter is too thick, in the sitting in which it is mixed', () => {
  const { sittings, runs } = planned(3);
  expect(sittings[0]?.stages.map(({ stage }) => stage)).toEqual(['mix', 'pour', 'top']);
  const added = runs[0]?.added ?? [];
  expect(added).toContainEqual({ stage: 'pour', part: 'swirl', closes: 'medium-trace' });
  expect(added).toContainEqual({ stage: 'top', part: 'top', closes: 'thick-trace' });
});

it('counts against the odds that the second part takes longer than the batter leaves', () => {
  const oddsOf = (perPieceS: number): number => planned(perPieceS).odds?.soundByTheDay ?? NaN;
  // Twenty pieces of a minute and a half each; the batter goes from medium to thick trace in about fifteen minutes.
  expect(oddsOf(90)).toBeLessThan(oddsOf(3) / 2);
});

it('spoons a layer onto soap of its own batch as its own batter has it, and onto other soap as that has it', () => {
  const waits = (input: typeof file): string[] => {
    const plan = planRuns(input, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 1 });
    if (!plan.ok) throw new Error(JSON.stringify(plan.issues));
    return (plan.value.runs[0]?.added ?? []).flatMap((each) =>
      each.stage === 'top' && 'opens' in each ? [`${each.part} ${each.opens}`] : [],
    );
  };
  expect(waits(file)).toEqual(['top medium-trace']);
  const designs = file.designs.map((design) => ({
    ...design,
    parts: design.parts.map((part) =>
      part.kind === 'batch' && part.key === 'top' ? { ...part, batch: undefined } : part,
    ),
  }));
  expect(waits({ ...file, designs })).toEqual(['swirl holds-layer']);
});

it('plans a part of a batch again by itself, with a mixing of its own, while the other stays poured', () => {
  const entry = (stage: string, at: string) => ({ kind: 'done' as const, stage, at });
  const log = [
    entry('mix', '2026-11-27T18:15:00Z'),
    entry('pour', '2026-11-27T18:20:00Z'),
    { kind: 'mishap' as const, part: 'top', mishap: 'seized' as const, at: '2026-11-27T18:25:00Z' },
  ].map((each) => ({ run: 'loaves', entry: each }));
  const { status, runs } = planned(3, log, '2026-11-27T18:25:00Z');
  expect(status).toBe('planned');
  const stages = runs[0]?.stages.map(({ key, attempt, status: now }) => `${key} ${attempt} ${now}`) ?? [];
  expect(stages).toEqual(expect.arrayContaining(['pour 1 done', 'mix 2 planned', 'top 2 planned']));
  expect(runs[0]?.batches?.map(({ parts }) => parts)).toEqual([['swirl'], ['top']]);
});
