import { describe, expect, it } from 'vitest';
import type { RunFile } from '#contract';
import { writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('demo', 'orchard-loaves');

/** Codes of the risks of the demo's first part, with its recipes, room and moulds changed. */
function codesOf(over: {
  recipe?: Partial<RunFile['recipes'][number]>;
  humidityPercent?: number;
  mould?: RunFile['moulds'][number]['kind'];
}): string[] {
  const { room } = file.workshop;
  const sheet = writeBatchSheet({
    ...file,
    workshop: {
      ...file.workshop,
      room: { ...room, humidityPercent: over.humidityPercent ?? room.humidityPercent },
    },
    moulds: file.moulds.map((mould) => ({ ...mould, kind: over.mould ?? mould.kind })),
    recipes: file.recipes.map((recipe) => ({ ...recipe, ...over.recipe })),
  });
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
  return sheet.value.runs[0]?.amounts[0]?.risks.map(({ code }) => code) ?? [];
}

/** All of these are common practice, no source. */
describe('risks of the soap', () => {
  it('are ash for wet, ungelled batter in damp air, and less of it with stronger lye, gelled', () => {
    const wet = { lyeConcentrationPercent: 28, gel: 'none' as const };
    expect(codesOf({ recipe: wet, humidityPercent: 70 })).toContain('soap.ash');
    const dry = { lyeConcentrationPercent: 38, gel: 'full' as const };
    expect(codesOf({ recipe: dry, humidityPercent: 40 })).not.toContain('soap.ash');
  });

  it('are overheating for a warm block with sugar in gel', () => {
    const hot = { gel: 'full' as const, sugarPercent: 2, batterTemperatureC: 50 };
    expect(codesOf({ recipe: hot, mould: 'lined-wood' })).toContain('soap.overheats');
    expect(codesOf({ recipe: { ...hot, sugarPercent: 0, batterTemperatureC: 38 } })).not.toContain(
      'soap.overheats',
    );
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
