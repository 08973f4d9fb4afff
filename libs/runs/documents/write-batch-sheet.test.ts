import { describe, expect, it } from 'vitest';
import type { AmountsDocument, RunFile } from '#contract';
import { amountsDocument } from '#contract';
import { gatherForRuns, writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'plain-tiles');

function sheetOf(input: RunFile): AmountsDocument {
  const sheet = writeBatchSheet(input);
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
  return sheet.value;
}

const line = (sheet: Pick<AmountsDocument, 'gather'>, key: string) =>
  sheet.gather.lines.find((l) => l.key === key);

/** Everything up to the piping, done. */
const foamDone: RunFile['log'] = [
  ['pour-deep', '2026-11-27T19:00:00Z'],
  ['pour-sand', '2026-11-27T20:10:00Z'],
  ['unmould', '2026-11-29T10:00:00Z'],
  ['patch', '2026-11-29T10:20:00Z'],
  ['pipe-foam', '2026-11-29T11:20:00Z'],
].map(([stage = '', at = '']) => ({ run: 'harbour-market', entry: { kind: 'done' as const, stage, at } }));

describe('a batch sheet', () => {
  const sheet = sheetOf(file);
  const [run] = sheet.runs;
  const batches = run?.amounts.flatMap(({ batch }) => batch ?? []) ?? [];

  it('is what its schema says', () => {
    expect(amountsDocument.parse(sheet)).toEqual(sheet);
  });

  it('gathers every gram of every batch, each material once', () => {
    const gathered = sheet.gather.lines
      .filter(({ key, unit }) => unit === 'g' && !['melt-and-pour', 'soap-dough'].includes(key))
      .reduce((sum, { needed }) => sum + needed, 0);
    expect(gathered).toBeCloseTo(
      batches.reduce((sum, { batchG }) => sum + batchG, 0),
      6,
    );
    const keys = sheet.gather.lines.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('puts lye on a line of its own, with its caution', () => {
    const lye = sheet.gather.lines.filter(({ kind }) => kind === 'lye');
    expect(lye.map(({ key }) => key)).toEqual(['naoh']);
    expect(lye[0]?.needed).toBeCloseTo(
      batches.reduce((sum, { naohG }) => sum + naohG, 0),
      9,
    );
    expect(lye[0]?.cautions.map(({ code }) => code)).toEqual(['caution.lye-keeping']);
    expect(line(sheet, 'olive')?.cautions).toEqual([]);
  });

  it('buys what is missing, in whole packs, and prices it', () => {
    for (const { needed, onHand, toBuy, packs, price } of sheet.gather.lines) {
      expect(toBuy).toBeCloseTo(Math.max(0, needed - onHand), 9);
      const bought = packs.reduce((sum, { size, count }) => sum + size * count, 0);
      expect(bought === 0 || bought >= toBuy).toBe(true);
      if (price !== undefined) {
        expect(price).toBeCloseTo(
          packs.reduce((sum, pack) => sum + (pack.price ?? 0) * pack.count, 0),
          9,
        );
      }
    }
    const prices = sheet.gather.lines.flatMap(({ price }) => price ?? []);
    expect(sheet.gather.price).toBeCloseTo(
      prices.reduce((sum, price) => sum + price, 0),
      9,
    );
  });

  it('counts what is kept by the piece apart from what is weighed', () => {
    const designs = file.designs.map((design) => ({
      ...design,
      parts: design.parts.map((part) => (part.kind === 'decor' ? { ...part, material: undefined } : part)),
    }));
    const materials = [
      ...file.workshop.materials,
      {
        key: 'shells',
        unit: 'piece' as const,
        onHand: 50,
        packs: [{ size: 20, price: 3 }],
      },
    ];
    const bought = sheetOf({ ...file, designs, workshop: { ...file.workshop, materials } });
    expect(line(bought, 'shells')).toMatchObject({
      unit: 'piece',
      needed: 78,
      toBuy: 28,
      packs: [{ size: 20, count: 2, price: 3 }],
      price: 6,
    });
  });

  it('costs a piece: materials at their best price and hands-on minutes, dearest first', () => {
    const cost = run?.cost;
    expect(cost?.currency).toBe('EUR');
    expect(cost?.perPiece).toBeCloseTo((cost?.materials ?? NaN) + (cost?.work ?? NaN), 9);
    // Minutes by hand from the stages: set-up 130 min in all, 332 s a piece, at 16 an hour.
    const setup = file.designs[0]?.stages.reduce((sum, stage) => sum + (stage.setupMin ?? 0), 0) ?? NaN;
    const seconds = file.designs[0]?.stages.reduce((sum, stage) => sum + (stage.perPieceS ?? 0), 0) ?? NaN;
    expect(cost?.handsOnMinPerPiece).toBeGreaterThanOrEqual(setup / 24 + seconds / 60);
    expect(cost?.work).toBeCloseTo(((cost?.handsOnMinPerPiece ?? NaN) * 16) / 60, 9);
    const shares = cost?.drivers.map(({ share }) => share) ?? [];
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(cost?.drivers[0]?.what).toEqual({ code: 'cost.work' });
  });

  it('doubles the cost of a material with its price, and names what has none', () => {
    const materials = file.workshop.materials
      .filter(({ key }) => key !== 'castor')
      .map((m) => ({
        ...m,
        packs: m.packs.map((p) => ({ ...p, ...(p.price === undefined ? {} : { price: p.price * 2 }) })),
      }));
    const dearer = sheetOf({ ...file, workshop: { ...file.workshop, materials, hourlyRate: undefined } });
    const cost = dearer.runs[0]?.cost;
    expect(cost?.unpriced).toEqual(
      expect.arrayContaining([
        { code: 'cost.material', key: 'castor', title: 'Castor oil' },
        { code: 'cost.work' },
      ]),
    );
    const castor = (batches.flatMap((b) => b.fats).filter((f) => f.fat === 'castor') ?? []).reduce(
      (sum, { massG }) => sum + massG,
      0,
    );
    expect(cost?.materials).toBeCloseTo(2 * ((run?.cost.materials ?? NaN) - (castor * 4.2) / 250 / 24), 9);
    expect(cost?.work).toBe(0);
  });

  it('weighs and buys every fragrance of a recipe by its name', () => {
    const [deep] = file.recipes;
    const scents = ['Lavender', 'Mint'].map((title) => ({
      ...deep!.fragrances[0]!,
      key: title.toLowerCase(),
      title,
    }));
    const two = sheetOf({ ...file, recipes: file.recipes.map((each) => ({ ...each, fragrances: scents })) });
    const lines = two.gather.lines.filter(({ kind }) => kind === 'fragrance');
    expect(lines.map(({ title }) => title)).toEqual(['Lavender', 'Mint']);
    const batches = two.runs[0]?.amounts.flatMap(({ batch }) => batch ?? []) ?? [];
    for (const { key, needed } of lines) {
      const weighed = batches.flatMap((each) => each.fragrances).filter((each) => each.key === key);
      expect(needed).toBeCloseTo(
        weighed.reduce((sum, { massG }) => sum + massG, 0),
        9,
      );
    }
  });

  it('weighs and buys stock solution in place of flakes, and only the water it does not bring', () => {
    const recipes = file.recipes.map((each) => ({ ...each, lyeStockPercent: 50 }));
    const stocked = sheetOf({ ...file, recipes });
    const batches = stocked.runs[0]?.batches.map(({ amounts }) => amounts) ?? [];
    const sum = (of: (batch: (typeof batches)[number]) => number): number =>
      batches.reduce((total, batch) => total + of(batch), 0);
    const needed = (key: string) => stocked.gather.lines.find((each) => each.key === key)?.needed;
    expect(needed('naoh')).toBeUndefined();
    expect(needed('naoh-solution')).toBeCloseTo(2 * sum(({ pureNaohG }) => pureNaohG), 9);
    const flakes = sheetOf(file);
    const water = flakes.gather.lines.find(({ key }) => key === 'water')?.needed ?? NaN;
    expect(water - (needed('water') ?? NaN)).toBeCloseTo(
      sum(({ waterG, stock }) => waterG - (stock?.waterG ?? NaN)),
      6,
    );
  });

  it('costs a batch that was spoilt, and no work that was left out', () => {
    const mishap = (over: object): RunFile['log'] => [
      { run: 'harbour-market', entry: { kind: 'done', stage: 'pour-deep', at: '2026-11-27T19:00:00Z' } },
      {
        run: 'harbour-market',
        entry: { kind: 'mishap', part: 'deep', mishap: 'seized', at: '2026-11-27T19:10:00Z', ...over },
      },
    ];
    const plain = run?.cost;
    const seized = sheetOf({ ...file, log: mishap({}) }).runs[0]?.cost;
    expect(seized?.materials).toBeGreaterThan((plain?.materials ?? NaN) * 1.2);
    expect(seized?.work).toBeGreaterThan(plain?.work ?? NaN);
    const part = sheetOf({ ...file, log: mishap({ pieces: 6 }) }).runs[0]?.cost;
    expect(part?.perPiece).toBeGreaterThan(plain?.perPiece ?? NaN);
    expect(part?.perPiece).toBeLessThan(seized?.perPiece ?? NaN);
    const dropped = sheetOf({
      ...file,
      log: [
        {
          run: 'harbour-market',
          entry: {
            kind: 'mishap',
            part: 'foam',
            mishap: 'seized',
            response: 'drop-part',
            at: '2026-11-27T18:00:00Z',
          },
        },
      ],
    });
    expect(dropped.runs[0]?.cost.handsOnMinPerPiece).toBeLessThan(plain?.handsOnMinPerPiece ?? NaN);
  });

  it('names materials that nothing is called', () => {
    const materials = [...file.workshop.materials, { ...file.workshop.materials[0]!, key: 'olive-oil' }];
    expect(sheetOf({ ...file, workshop: { ...file.workshop, materials } }).gather.unused).toEqual([
      'olive-oil',
    ]);
    expect(sheet.gather.unused).toEqual([]);
  });

  it('needs no hours at all', () => {
    const never = {
      monday: [],
      tuesday: [],
      wednesday: [],
      thursday: [],
      friday: [],
      saturday: [],
      sunday: [],
    };
    const hours = { ...file.workshop.hours, weekly: never };
    expect(sheetOf({ ...file, workshop: { ...file.workshop, hours } }).runs).toHaveLength(1);
  });

  it('says that there are too few cavities', () => {
    const many = sheetOf({ ...file, runs: file.runs.map((r) => ({ ...r, count: 26 })) });
    const codes = many.runs[0]?.amounts.find(({ part }) => part === 'deep')?.risks.map(({ code }) => code);
    expect(codes).toContain('mould.too-few');
  });

  it('gathers for several runs together', () => {
    const other = loadRunFile('demo', 'orchard-loaves');
    const [a, b] = [sheetOf(file), sheetOf({ ...other, workshop: file.workshop })];
    const both = gatherForRuns([file, { ...other, workshop: file.workshop }]);
    if (!both.ok) throw new Error(JSON.stringify(both.issues));
    const together = both.value.lines.find(({ key }) => key === 'naoh');
    expect(together?.needed).toBeCloseTo(
      (line(a, 'naoh')?.needed ?? NaN) + (line(b, 'naoh')?.needed ?? NaN),
      9,
    );
    expect(both.value.runs).toHaveLength(2);
  });

  it('needs nothing more for a part that is made', () => {
    const log: RunFile['log'] = [
      {
        run: 'harbour-market',
        entry: { kind: 'done', stage: 'pour-deep', at: '2026-11-27T19:00:00Z' },
      },
    ];
    const after = sheetOf({ ...file, log });
    expect(line(after, 'blue-mica')).toBeUndefined();
    expect(line(after, 'castor')?.needed).toBeLessThan(line(sheet, 'castor')?.needed ?? NaN);
    expect(after.runs[0]?.cost.perPiece).toBeCloseTo(run?.cost.perPiece ?? NaN, 9);
  });

  it.each([
    ['foam', 6000, 'usedG'],
    ['foam', 6, 'usedG'],
    ['shells', 90, 'part'],
    ['sponge', 90, 'part'],
  ])('refuses a weighing of %s that cannot be: %d g', (part, usedG, field) => {
    const entry = { kind: 'weighed' as const, part, pieces: 6, usedG, at: '2026-11-29T19:00:00Z' };
    const refused = writeBatchSheet({ ...file, log: [...foamDone, { run: 'harbour-market', entry }] });
    const place = foamDone.length;
    expect(refused.ok ? [] : refused.issues.map(({ path }) => path)).toEqual([
      ['log', place, 'entry', field],
    ]);
  });
});
