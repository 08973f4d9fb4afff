import { describe, expect, it } from 'vitest';
import type { Recipe, RunFile } from '#contract';
import { planRuns, writeBatchSheet, writeClocks } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const options = { now: minute(29_600_000), scenarios: 20 };

function withRecipes(over: Partial<Recipe>): RunFile {
  return { ...file, recipes: file.recipes.map((each) => ({ ...each, ...over })) };
}

/** Common practice, no source: from about a tenth of KOH on, a soap is soft, and with most of it a paste. */
describe('potash soap', () => {
  const potash = withRecipes({ kohSharePercent: 10.1, kohPurityPercent: 90 });

  it('has amounts, no clocks, and is said to have none', () => {
    const sheet = writeBatchSheet(potash);
    const [run] = sheet.ok ? sheet.value.runs : [];
    expect(run?.batches[0]?.amounts.kohG).toBeGreaterThan(0);
    expect(run?.amounts[0]?.risks).toContainEqual({
      ...{ code: 'soap.not-forecast', level: 'high', potashPercent: 10.1 },
    });
    const clocks = writeClocks(potash);
    const parts = clocks.ok ? clocks.value.runs[0]?.parts : undefined;
    expect(parts?.flatMap((part) => [...part.clocks, ...part.moves])).toEqual([]);
    expect(parts?.[0]?.risks.map(({ code }) => code)).toContain('soap.not-forecast');
  });

  it('is not planned, by the name of its recipe and its share', () => {
    const plan = planRuns(potash, options);
    expect(plan.ok ? [] : plan.issues).toMatchObject([
      {
        ...{ code: 'plan.potash', path: ['recipes', 0, 'kohSharePercent'], value: 10.1, percent: 10.1 },
        ...{ recipe: file.recipes[0]?.title, accepted: { low: 0, high: 10 } },
      },
    ]);
  });

  it('begins above a tenth', () => {
    const some = withRecipes({ kohSharePercent: 10, kohPurityPercent: 90 });
    expect(planRuns(some, options).ok).toBe(true);
  });
});

describe('a batter that is too wet', () => {
  const wetColour = {
    key: 'white',
    title: 'White',
    percent: 3,
    carrier: { kind: 'water' as const, perGram: 20 },
  };

  it('is told at the colours whose water makes it so, not at the lye', () => {
    const designs = file.designs.map((design) => ({
      ...design,
      parts: design.parts.map((part, i) =>
        i === 1 && part.kind === 'batch' ? { ...part, colourants: [wetColour] } : part,
      ),
    }));
    const plan = planRuns({ ...file, designs }, options);
    expect(plan.ok ? [] : plan.issues).toMatchObject([
      {
        ...{ code: 'recipe.too-wet', path: ['designs', 0, 'parts', 1, 'colourants'], ofColours: true },
        part: file.designs[0]?.parts[1]?.title,
      },
    ]);
  });

  it('is told at the acids where it is theirs', () => {
    const acids: Recipe['acids'] = [
      { acid: 'acetic-acid', percent: 40, strengthPercent: 5, replacesWater: false },
    ];
    const plan = planRuns(withRecipes({ acids }), options);
    const issues = plan.ok ? [] : plan.issues;
    expect(issues[0]).toMatchObject({
      code: 'recipe.too-wet',
      path: ['recipes', 0, 'acids'],
      ofColours: false,
    });
  });
});
