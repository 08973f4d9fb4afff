import { describe, expect, it } from 'vitest';
import type { Risk, RunFile } from '#contract';
import { writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('demo', 'orchard-loaves');

interface Changed {
  recipe?: Partial<RunFile['recipes'][number]>;
  humidityPercent?: number;
  air?: RunFile['workshop']['room']['air'];
  mould?: RunFile['moulds'][number]['kind'];
  cavityMl?: number;
  /** Its place; the top layer if absent. */
  part?: number;
}

/** The risks of the demo's top layer, with its recipes, room and moulds changed. */
function risksOf(over: Changed): readonly Risk[] {
  const { room } = file.workshop;
  const sheet = writeBatchSheet({
    ...file,
    workshop: {
      ...file.workshop,
      room: {
        ...room,
        humidityPercent: over.humidityPercent ?? room.humidityPercent,
        air: over.air ?? room.air,
      },
    },
    moulds: file.moulds.map((mould) => ({
      ...mould,
      kind: over.mould ?? mould.kind,
      ...(over.cavityMl !== undefined && {
        cavityMl: over.cavityMl,
        shape: undefined,
        waterFillG: undefined,
      }),
    })),
    designs: file.designs.map((design) => ({
      ...design,
      parts: design.parts.map((part) =>
        over.cavityMl === undefined || part.kind !== 'batch'
          ? part
          : { ...part, perPieceMl: undefined, amount: { by: 'cavity' as const, fillPercent: 33 } },
      ),
    })),
    recipes: file.recipes.map((recipe) => ({ ...recipe, ...over.recipe })),
  });
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
  const amounts = sheet.value.runs[0]?.amounts;
  return amounts?.[over.part ?? amounts.length - 1]?.risks ?? [];
}

const codesOf = (over: Changed): string[] => risksOf(over).map(({ code }) => code);

/** All of these are common practice, no source. */
describe('risks of the soap', () => {
  it('are ash for wet, ungelled batter in damp air, and less of it with stronger lye, gelled', () => {
    const wet = { lyeConcentrationPercent: 28, gel: 'none' as const };
    expect(codesOf({ recipe: wet, humidityPercent: 70 })).toContain('soap.ash');
    const dry = { lyeConcentrationPercent: 38, gel: 'full' as const };
    expect(codesOf({ recipe: dry, humidityPercent: 40 })).not.toContain('soap.ash');
  });

  it('are ash where a draught goes over wet batter, and are told so', () => {
    const wet = { recipe: { lyeConcentrationPercent: 28, gel: 'full' as const }, humidityPercent: 45 };
    expect(codesOf({ ...wet, air: 'usual' })).not.toContain('soap.ash');
    expect(codesOf({ ...wet, air: 'still' })).not.toContain('soap.ash');
    const told = risksOf({ ...wet, air: 'moving' }).find(({ code }) => code === 'soap.ash');
    expect(told).toMatchObject({ signs: [{ sign: 'wet-batter', value: 28 }, { sign: 'draught' }] });
  });

  it('are no ash on a layer that another comes to lie on', () => {
    const wet = { lyeConcentrationPercent: 28, gel: 'none' as const };
    expect(codesOf({ recipe: wet, humidityPercent: 70, part: 0 })).not.toContain('soap.ash');
  });

  it('are overheating for a warm loaf with sugar, and for a block of 35 kg as it is', () => {
    const hot = { sugarPercent: 4, batterTemperatureC: 55 };
    expect(codesOf({ recipe: hot })).toContain('soap.overheats');
    expect(codesOf({ recipe: { batterTemperatureC: 34 } })).not.toContain('soap.overheats');
    expect(codesOf({ recipe: { batterTemperatureC: 34 }, cavityMl: 34_000 })).toContain('soap.overheats');
  });

  it('tell of heat what speaks for it, and how sure it is', () => {
    const told = (over: Changed) => {
      const risk = risksOf(over).find(({ code }) => code === 'soap.overheats');
      if (risk?.code !== 'soap.overheats') return undefined;
      return [risk.level, ...risk.signs.map(({ sign }) => sign)];
    };
    expect(told({ recipe: { batterTemperatureC: 46 }, cavityMl: 12_000 })).toEqual([
      'high',
      ...['full-gel', 'large-block', 'warm-batter'],
    ]);
    const sweet = { batterTemperatureC: 45, sugarPercent: 1 };
    expect(told({ recipe: sweet, cavityMl: 12_000 })).toEqual([
      'high',
      ...['full-gel', 'large-block', 'sugar-or-milk'],
    ]);
    // In single cavities of 400 mL nothing is large, and only a hot start brings it near.
    const small = told({ recipe: { batterTemperatureC: 65 }, cavityMl: 400 });
    expect(small).toContain('warm-batter');
    expect(small).not.toContain('large-block');
  });

  it('are gel that may stay in the middle, and gel against what the recipe asks for', () => {
    const cool = { batterTemperatureC: 34 };
    expect(codesOf({ recipe: cool })).toContain('soap.gel-unsure');
    expect(codesOf({ recipe: { batterTemperatureC: 55 } })).not.toContain('soap.gel-unsure');
    expect(codesOf({ recipe: { gel: 'none', batterTemperatureC: 45 } })).toContain('soap.gel-likely');
    expect(codesOf({ recipe: { gel: 'full', batterTemperatureC: 24 }, mould: 'silicone-cavity' })).toContain(
      'soap.gel-unlikely',
    );
    expect(codesOf({ recipe: { gel: 'full', batterTemperatureC: 45 } })).not.toContain('soap.gel-unlikely');
  });

  it('are sweating for a salt bar in damp air only', () => {
    expect(codesOf({ recipe: { saltPercent: 50 }, humidityPercent: 80 })).toContain('soap.sweats');
    expect(codesOf({ recipe: { saltPercent: 50 }, humidityPercent: 45 })).not.toContain('soap.sweats');
  });

  it('are sticking for soft soap without hardener in silicone', () => {
    const soft = { fats: [{ fat: 'olive', percent: 100 }], sodiumLactatePercent: 0, saltPercent: 0 };
    expect(codesOf({ recipe: soft, mould: 'silicone-cavity' })).toContain('soap.sticks');
    expect(codesOf({ recipe: { ...soft, sodiumLactatePercent: 2 }, mould: 'silicone-cavity' })).not.toContain(
      'soap.sticks',
    );
  });
});
