import { describe, expect, it } from 'vitest';
import { keptWays, type Risk, type RunFile } from '#contract';
import { writeBatchSheet, writeClocks } from '#runs';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
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

const texts = textsFor({ language: 'en', units: 'metric', timeZone: 'Europe/Dublin' }, wordsOf.en);
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

  /** What stands beside them on the page: both come of one balance, so wrapped soap is not told to be wrapped. */
  it('advise of heat what the card of its heat does, however the mould is kept', () => {
    const codes = new Set<string>();
    for (const kept of keptWays)
      for (const gel of ['auto', 'none', 'full'] as const)
        for (const batterTemperatureC of [30, 38, 46, 58]) {
          const changed = {
            ...file,
            recipes: file.recipes.map((recipe) => ({ ...recipe, gel, batterTemperatureC })),
            designs: file.designs.map((design) => ({
              ...design,
              parts: design.parts.map((part) => (part.kind === 'batch' ? { ...part, kept } : part)),
            })),
          };
          const [sheet, clocks] = [writeBatchSheet(changed), writeClocks(changed)];
          if (!sheet.ok || !clocks.ok) throw new Error('refused');
          for (const { part, risks } of sheet.value.runs[0]?.amounts ?? []) {
            const notes = clocks.value.runs[0]?.parts.find((each) => each.part === part)?.heat?.notes ?? [];
            for (const risk of risks.filter(({ code }) => /^soap\.(gel|overheats)/.test(code))) {
              codes.add(risk.code);
              const told = notes.filter(({ code }) => code === 'heat.kept-else' || code === 'heat.pour');
              expect((risk as { advice?: unknown }).advice ?? told).toEqual(told);
              const said = texts.remedyOf(risk);
              for (const note of told) expect(said).toContain(texts.of(note));
            }
          }
        }
    expect([...codes].sort()).toEqual([
      ...['soap.gel-likely', 'soap.gel-unlikely', 'soap.gel-unsure', 'soap.overheats'],
    ]);
  });
});
