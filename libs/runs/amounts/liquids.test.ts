import { expect, it } from 'vitest';
import { batchForFats, ingredientLists, recipeRisks } from '#chemistry';
import { evaluate, heatBalance, type ClockInputs, type HeatBalance } from '#clocks';
import type { BatchPart, RunFile } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { soapRisks } from './soap-risks.js';
import { resolveRuns, type ResolvedRun } from '../input/resolve-run.js';
import { inputsFor } from '../clocks/part-inputs.js';
import { heatInputs } from '../clocks/part-heat.js';
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

/** The heat of the same batter in a loaf of 1.2 L, of which it is enough to tell apart what hurries it. */
function asLoaf({ run, part }: { run: ResolvedRun; part: BatchPart }): HeatBalance {
  const asked = heatInputs(part, run, inputsOf({ run, part }));
  if (asked === undefined) throw new Error('not cast');
  return heatBalance({
    ...asked,
    volumeMl: 1200,
    surfaceCm2: undefined,
    mould: 'lined-wood',
    kept: 'covered',
  });
}

function soapRisksOf({ run }: { run: ResolvedRun }): string[] {
  const recipe = run.recipes.get('milk-bar')!;
  const batch = batchForFats(recipe, run.fats, 1000);
  return batch.ok ? recipeRisks(recipe, batch.value, run.fats).map(({ code }) => code) : [];
}

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

it('counts alcohol that is left in a liquid, and none of what a label does not tell', () => {
  const poured = (liquid: string, own?: { title: string; alcoholPercent?: number }) =>
    inputsOf(madeOf({ liquids: [{ liquid, percentOfLiquid: 100, addedTo: 'lye', ...(own && { own }) }] }))
      .alcoholPercent;
  // Some 340 g of water in all to a kilogram of fats, as lye of 30 % needs it.
  expect(poured('gin', { title: 'Gin', alcoholPercent: 30 })).toBeGreaterThan(9);
  expect(poured('gin', { title: 'Gin', alcoholPercent: 30 })).toBeLessThan(12);
  expect(poured('beer')).toBeGreaterThan(0.3);
  expect(poured('beer')).toBeLessThan(0.6);
  expect(poured('gin', { title: 'Gin' })).toBe(0);
  expect(inputsOf(madeOf()).alcoholPercent).toBe(0);
});

/** Honey is 82 % sugar (USDA 19296, from memory): 3 % of it is 2.46 % of sugar, which speeds trace and heats the block. */
it('counts honey as the sugar that it mostly is, in trace, heat and what to weigh', () => {
  const honey = { key: 'honey', title: 'Honey', kind: 'honey', percent: 3 } as const;
  const [without, made] = [madeOf({ liquids: [] }), madeOf({ liquids: [], additions: [honey] })];
  expect(inputsOf(made).sugarPercent).toBeCloseTo(2.46, 9);
  const trace = (inputs: ClockInputs) => evaluate('medium-trace', inputs).medianMin;
  expect(trace(inputsOf(made))).toBeLessThan(0.85 * trace(inputsOf(without)));
  const hottest = (which: typeof made) => asLoaf(which).hottestC.likely;
  expect(hottest(made)).toBeGreaterThan(hottest(without) + 1);
  const recipe = made.run.recipes.get('milk-bar')!;
  const batch = batchForFats(recipe, made.run.fats, 1000);
  if (!batch.ok) throw new Error('no batch');
  expect(batch.value.additions).toEqual([{ key: 'honey', title: 'Honey', massG: 30 }]);
  const lists = ingredientLists(recipe, made.run.fats, batch.value);
  for (const list of [lists.asPutIn, lists.asSoap])
    expect(list.find(({ inci }) => inci === 'Mel')?.massG).toBe(30);
  expect(soapRisksOf(made)).toContain('sugar.heats');
});

/** Florals and spices that hurry the batter heat it, too: loaves that never gelled do with them, and some rise in the mould. */
it('lets a fragrance that hurries the batter hurry its heat', () => {
  const scent = (behaviour: 'none' | 'brisk' | 'strong' | 'slowing') => ({
    ...({ key: 'scent', title: 'Scent', kind: 'fragrance-oil', percent: 3, behaviour } as const),
    ...({ limitCategory: '9', vanillinPercent: 0 } as const),
    allergens: [],
  });
  const warmth = (behaviour: 'none' | 'brisk' | 'strong' | 'slowing') => {
    const made = madeOf({ liquids: [], fragrances: [scent(behaviour)] });
    return asLoaf(made);
  };
  const [slowing, none, brisk, strong] = (['slowing', 'none', 'brisk', 'strong'] as const).map(warmth);
  expect(brisk!.hottestC.likely).toBeGreaterThan(none!.hottestC.likely + 1);
  expect(brisk!.hottestMin).toBeLessThan(none!.hottestMin);
  expect(strong!.gelShare).toBeGreaterThanOrEqual(brisk!.gelShare);
  expect(slowing!.hottestC.likely).toBeLessThan(none!.hottestC.likely);
});

it('tells hard, quick fats in gel apart from what else gels', () => {
  const inMould = (fat: string, gel: 'full' | 'none') =>
    inputsOf(madeOf({ liquids: [], fats: [{ fat, percent: 100 }], gel })).hardGelPercent;
  expect(inMould('coconut', 'full')).toBeGreaterThan(85);
  expect(inMould('coconut', 'none')).toBe(0);
  expect(inMould('palm', 'full')).toBe(0);
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
