import { expect, it } from 'vitest';
import type { BatchPart, RunFile } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { soapRisks } from './soap-risks.js';
import { resolveRuns, type ResolvedRun } from '../input/resolve-run.js';
import { inputsFor } from '../clocks/part-inputs.js';
import { batchCooling } from '../clocks/batch-cooling.js';

const file = loadRunFile('ok', 'goat-milk-bars');

function madeOf(over: Partial<RunFile['recipes'][number]> = {}, stages: object[] = []) {
  const recipes = file.recipes.map((recipe) => ({ ...recipe, ...over }));
  const designs = file.designs.map((design) => ({
    ...design,
    stages: [...(stages as typeof design.stages), ...design.stages],
  }));
  const [run] = resolveRuns({ ...file, recipes, designs });
  const part = run?.design.parts[0];
  if (run === undefined || part?.kind !== 'batch') throw new Error('no batch');
  return { run, part };
}

const inputsOf = ({ run, part }: { run: ResolvedRun; part: BatchPart }) =>
  inputsFor(part, run, file.workshop);

it('counts sugar and salt of liquids for the clocks, and their water as the lye’s', () => {
  const milk = inputsOf(madeOf());
  // 184.7 g of goat's milk with 4.45 % and 60 g of coconut milk with 2.8 % of sugar, on 1000 g of fats.
  expect(milk.sugarPercent).toBeCloseTo((184.7 * 0.0445 + 60 * 0.028) / 10, 2);
  expect(milk.lyeConcentrationPercent).toBe(30);
  expect(inputsOf(madeOf({ liquids: [], sugarPercent: 1 }))).toMatchObject({
    sugarPercent: 1,
    saltPercent: 0,
  });
  const brine = madeOf({
    saltPercent: 0.5,
    liquids: [{ liquid: 'brine', percentOfLiquid: 40, addedTo: 'lye' }],
  });
  // About 340 g of water with the lye: 40 % of some 370 g of liquid is brine, a fifth of it salt.
  expect(inputsOf(brine).saltPercent).toBeGreaterThan(0.5 + 2.5);
  expect(inputsOf(brine).saltPercent).toBeLessThan(0.5 + 3.5);
});

it('counts the sugar of milk, and not that of tea, among what overheats', () => {
  const warm = { gel: 'full', batterTemperatureC: 70 } as const;
  const signsOf = (liquid: string): string[] => {
    const { run, part } = madeOf({
      ...warm,
      liquids: [{ liquid, percentOfLiquid: 60, addedTo: 'batter' }],
      lyeConcentrationPercent: 25,
    });
    const recipe = run.recipes.get('milk-bar');
    if (recipe === undefined) throw new Error('no recipe');
    return soapRisks({ ...part, kept: 'wrapped' }, recipe, run, file.workshop).flatMap((risk) =>
      risk.code === 'soap.overheats' ? risk.signs.map(({ sign }) => sign) : [],
    );
  };
  expect(signsOf('goat-milk')).toContain('sugar-or-milk');
  expect(signsOf('tea')).not.toContain('sugar-or-milk');
});

it('cools lye as strong and as much as it is in its jug', () => {
  const made = {
    key: 'lye',
    title: 'Lye',
    kind: 'make-lye',
    part: 'bar',
    setupMin: 10,
    perPieceS: 0,
    needs: [],
  };
  const lyeOf = (addedTo: 'lye' | 'batter') => {
    const liquids = [{ liquid: 'tea', percentOfLiquid: 50, addedTo }];
    const { run, part } = madeOf({ liquids }, [made]);
    const { lye } = batchCooling(part, run, file.workshop);
    if (lye === undefined) throw new Error('no lye');
    return lye;
  };
  // With half of the liquid kept for the batter the jug is stronger, so hotter, and there is less of it.
  expect(lyeOf('batter').startC).toBeGreaterThan(lyeOf('lye').startC + 5);
  expect(lyeOf('batter').timeConstantMin).toBeLessThan(lyeOf('lye').timeConstantMin);
});
