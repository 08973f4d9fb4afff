import { describe, expect, it } from 'vitest';
import { parseWith, runFile, workshopFacts, type Mould } from '#contract';
import { runFileInput, writeBatchSheet, writeClocks } from '#runs';
import { previewFile } from './preview-file.js';

const week = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
const workshop = parseWith(workshopFacts, {
  title: 'Test',
  timeZone: 'Europe/Dublin',
  hours: { weekly: Object.fromEntries(week.map((day) => [day, []])) },
});
if (!workshop.ok) throw new Error(JSON.stringify(workshop.issues));
const moulds: Mould[] = [
  { key: 'hexagon', title: 'Hexagons', kind: 'silicone-cavity', cavityMl: 84, cavities: 24 },
  { key: 'loaf', title: 'Loaf', kind: 'lined-wood', cavityMl: 1200, cavities: 1 },
];
const around = { workshop: workshop.value, moulds, fats: [] };
const recipe = {
  title: 'Half and half',
  fats: [
    { fat: 'olive', percent: 50 },
    { fat: 'coconut', percent: 50 },
  ],
  superfatPercent: 0,
};

function input(purpose: Parameters<typeof previewFile>[1]) {
  const file = parseWith(runFile, previewFile(recipe, purpose, around));
  if (!file.ok) throw new Error(JSON.stringify(file.issues));
  const run = runFileInput(file.value);
  if (!run.ok) throw new Error(JSON.stringify(run.issues));
  return run.value;
}

describe('the preview of a recipe', () => {
  it('is a batch that fills the cavities and is surely enough', () => {
    const sheet = writeBatchSheet(input({ by: 'mould', mould: 'hexagon', cavities: 24, perCavityS: 8 }));
    const part = sheet.ok ? sheet.value.runs[0]?.amounts[0] : undefined;
    // 24 x 84 mL = 2016 mL
    expect(part?.neededMl).toBeCloseTo(2016, 6);
    expect(part?.batch?.batchMl).toBeGreaterThan(2016);
    expect(part?.cover.shortageChance).toBeLessThanOrEqual(0.05);
  });

  it('takes a volume as it is given', () => {
    const sheet = writeBatchSheet(input({ by: 'volume', ml: 500 }));
    expect(sheet.ok && sheet.value.runs[0]?.amounts[0]?.neededMl).toBeCloseTo(500, 6);
  });

  it('has a time to cut for a block, and none for cavities', () => {
    const states = (mould: string, cavities: number) => {
      const clocks = writeClocks(input({ by: 'mould', mould, cavities, perCavityS: 8 }));
      return clocks.ok ? clocks.value.runs[0]?.parts[0]?.clocks.map(({ state }) => state) : [];
    };
    expect(states('loaf', 1)).toContain('cuttable');
    expect(states('hexagon', 24)).not.toContain('cuttable');
    expect(states('hexagon', 24)).toEqual(expect.arrayContaining(['light-trace', 'firm', 'cured']));
  });

  it('tells whether all cavities can be filled in time', () => {
    const clocks = writeClocks(input({ by: 'mould', mould: 'hexagon', cavities: 24, perCavityS: 8 }));
    // 24 x 8 s = 192 s
    expect(clocks.ok && clocks.value.runs[0]?.parts[0]?.filling?.neededMin).toBeCloseTo(3.2, 9);
  });
});
