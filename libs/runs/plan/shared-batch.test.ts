import { expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'swirl-loaf');

function planned(topPerPieceS: number) {
  const designs = file.designs.map((design) => ({
    ...design,
    stages: design.stages.map((stage) =>
      stage.key === 'top' ? { ...stage, perPieceS: topPerPieceS } : stage,
    ),
  }));
  const plan = planRuns({ ...file, designs }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 50 });
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

it('has no plan where the second part takes longer than the batter leaves', () => {
  // Twenty pieces of a minute each; the batter goes from medium to thick trace in about ten minutes.
  const { status, conflict } = planned(60);
  expect(status).toBe('conflict');
  expect(conflict.map(({ code }) => code)).toContain('conflict.closes');
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
