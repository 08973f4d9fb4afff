import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stockDocument, type RunFile, type StockEntry } from '#contract';
import { materialsUsed, stockOf, withStock, writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { checkStockEntry } from './check-stock-entry.js';
import type { StockEntryLine } from './effective-ledger.js';
import type { UsedMaterial } from './used-materials.js';

const at = '2026-11-27T17:00:00Z';
const bare = { materials: [] };

const onHand = (ledger: readonly StockEntryLine[], uses: readonly UsedMaterial[] = [], key = 'olive') =>
  stockOf({ workshop: bare, ledger, uses }).materials.find((line) => line.key === key)?.onHand;

const bought = (amount: number, price?: number): StockEntry => ({
  ...{ kind: 'purchase', material: 'olive', unit: 'g', amount, at },
  ...(price !== undefined && { price }),
});
const kept: StockEntry = {
  ...{ kind: 'leftover-kept', title: 'Sand layer', form: 'dough', massG: 120, madeAt: at, at },
};

describe('a ledger', () => {
  it('counts an entry that is taken back as never written', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 5000 }), { minLength: 1, maxLength: 12 }),
        fc.nat(),
        (amounts, which) => {
          const lines = amounts.map((amount, i) => ({ id: `e${String(i)}`, entry: bought(amount) }));
          const gone = which % lines.length;
          const back: StockEntry = { kind: 'take-back', entry: `e${String(gone)}`, at };
          const without = lines.filter((_, i) => i !== gone);
          expect(
            stockOf({ workshop: bare, ledger: [...lines, { entry: back }], uses: [] }).materials,
          ).toEqual(stockOf({ workshop: bare, ledger: without, uses: [] }).materials);
        },
      ),
    );
  });

  it('tells what was paid last, and what was never entered but used', () => {
    const use = {
      key: 'naoh',
      title: 'Sodium hydroxide (NaOH)',
      kind: 'lye',
      unit: 'g',
      amount: 80,
      at,
    } as const;
    const uses = [{ ...use, run: { key: 'r', title: 'R' }, part: 'P', isSpoilt: false }];
    const ledger = [{ entry: bought(1000, 9) }, { entry: bought(500, 6) }];
    const stock = stockOf({ workshop: { ...bare, currency: 'EUR' }, ledger, uses });
    expect(stockDocument.parse(stock)).toEqual(stock);
    expect(stock.materials[0]).toMatchObject({
      key: 'olive',
      onHand: 1500,
      bought: 1500,
      paid: { amount: 500, price: 6 },
    });
    expect(stock.materials[1]).toMatchObject({ key: 'naoh', onHand: 0, missing: 80, usedByRuns: 80 });
  });

  it('turns leftovers into what decor is pressed from, gram by gram', () => {
    const use: StockEntry = { kind: 'leftover-used', leftover: 'k', massG: 50, material: 'soap-dough', at };
    const off: StockEntry = { kind: 'leftover-written-off', leftover: 'k', massG: 20, at };
    const ledger = [{ id: 'k', entry: kept }, { id: 'u', entry: use }, { entry: off }];
    const stock = stockOf({ workshop: bare, ledger, uses: [] });
    expect(stock.leftovers).toMatchObject([{ id: 'k', title: 'Sand layer', massG: 50, keptG: 120 }]);
    expect(stock.materials).toMatchObject([{ key: 'soap-dough', onHand: 50, fromLeftovers: 50 }]);
    const back: StockEntry = { kind: 'take-back', entry: 'u', at };
    expect(stockOf({ workshop: bare, ledger: [...ledger, { entry: back }], uses: [] })).toMatchObject({
      leftovers: [{ massG: 100 }],
      materials: [],
    });
    const all: StockEntry = { kind: 'leftover-used', leftover: 'k', massG: 50, at };
    expect(stockOf({ workshop: bare, ledger: [...ledger, { entry: all }], uses: [] }).leftovers).toEqual([]);
  });

  it('refuses what cannot be: more than is left, what is not there, another unit, a needed entry taken back', () => {
    const ledger = [{ id: 'k', entry: kept }];
    const codes = (entry: StockEntry, lines: readonly StockEntryLine[] = ledger) =>
      checkStockEntry(lines, entry, {
        materials: [{ key: 'olive', unit: 'piece', onHand: 0, packs: [] }],
      }).map(({ code, path }) => [code, path.join('.')]);
    const use: StockEntry = { kind: 'leftover-used', leftover: 'k', massG: 100, at };
    expect(codes(use)).toEqual([]);
    expect(codes({ ...use, massG: 120.1 })).toEqual([['stock.leftover-short', 'massG']]);
    expect(codes({ ...use, leftover: 'x' })).toEqual([['stock.unknown-entry', 'leftover']]);
    expect(codes(use, [...ledger, { id: 'u', entry: use }])).toEqual([['stock.leftover-short', 'massG']]);
    expect(codes({ kind: 'take-back', entry: 'k', at }, [...ledger, { id: 'u', entry: use }])).toEqual([
      ['stock.needed-later', 'entry'],
    ]);
    expect(codes({ kind: 'take-back', entry: 'k', at })).toEqual([]);
    expect(codes(bought(5))).toEqual([['stock.other-unit', 'unit']]);
  });
});

const file = loadRunFile('ok', 'plain-tiles');
const done = (stage: string, when: string): RunFile['log'][number] => ({
  ...{ run: 'harbour-market', id: stage },
  entry: { kind: 'done', stage, at: when },
});

function usesOf(log: RunFile['log'], from = file): UsedMaterial[] {
  const used = materialsUsed({ ...from, log });
  if (!used.ok) throw new Error(JSON.stringify(used.issues));
  return used.value;
}

const total = (uses: readonly { readonly amount: number; readonly unit: string }[]): number =>
  uses.reduce((sum, { amount, unit }) => sum + (unit === 'g' ? amount : 0), 0);

/** What the sheet has for one part: its batch to the gram. */
function batchG(part: string, log: RunFile['log'] = []): number {
  const sheet = writeBatchSheet({ ...file, log });
  return (
    (sheet.ok ? sheet.value.runs[0]?.amounts.find((each) => each.part === part)?.batch?.batchG : undefined) ??
    NaN
  );
}

describe('what a run uses up', () => {
  const deep = done('pour-deep', '2026-11-27T19:00:20Z');

  it('is nothing before the log tells of a batch, and then that batch to the gram', () => {
    expect(usesOf([])).toEqual([]);
    const uses = usesOf([deep]);
    expect(total(uses)).toBeCloseTo(batchG('deep'), 6);
    expect(new Set(uses.map(({ at: when }) => when))).toEqual(new Set(['2026-11-27T19:00:20.000Z']));
    expect(new Set(uses.map(({ part, isSpoilt }) => `${part} ${String(isSpoilt)}`))).toEqual(
      new Set(['Deep-blue layer false']),
    );
  });

  it('is given back when its entry is taken back', () => {
    const back = {
      run: 'harbour-market',
      entry: { kind: 'take-back', entry: 'pour-deep', at: '2026-11-27T19:05:00Z' },
    } as const;
    expect(usesOf([deep, back])).toEqual([]);
  });

  it('counts a batch that is made again, beside the one that was spoilt', () => {
    const mishap = { kind: 'mishap', part: 'sand', mishap: 'seized', at: '2026-11-27T20:00:00Z' } as const;
    const seized = { run: 'harbour-market', id: 'm', entry: mishap };
    const once = total(usesOf([deep, seized]));
    expect(once).toBeCloseTo(batchG('deep') + batchG('sand'), 6);
    const again = usesOf([deep, seized, done('pour-sand', '2026-11-27T21:00:00Z')]);
    expect(total(again)).toBeCloseTo(batchG('deep') + 2 * batchG('sand'), 6);
    expect(total(again.filter(({ isSpoilt }) => isSpoilt))).toBeCloseTo(batchG('sand'), 6);
  });

  it('counts batter that went wrong and was then left out, but not what is left out on purpose', () => {
    const dropped = {
      kind: 'mishap',
      part: 'foam',
      mishap: 'seized',
      response: 'drop-part',
      at: '2026-11-29T11:00:00Z',
    } as const;
    const log = [deep, { run: 'harbour-market', entry: dropped }];
    expect(total(usesOf(log))).toBeCloseTo(batchG('deep') + batchG('foam'), 6);
    const onPurpose = [deep, { run: 'harbour-market', entry: { ...dropped, onPurpose: true as const } }];
    expect(total(usesOf(onPurpose))).toBeCloseTo(batchG('deep'), 6);
  });

  it('takes lye and fats as they are prepared, and each gram once', () => {
    const prepared = loadRunFile('ok', 'prepared-tiles');
    const stages = prepared.designs[0]?.stages ?? [];
    const [lye, fats, mix, pour] = ['make-lye', 'melt-fats', 'mix', 'pour'].map((kind) => {
      const found = stages.find((stage) => stage.kind === kind && stage.part === 'deep');
      if (found === undefined) throw new Error(`the fixture has no ${kind}`);
      return found.key;
    });
    const log = [
      done(lye ?? '', '2026-11-26T19:00:00Z'),
      done(fats ?? '', '2026-11-27T18:30:00Z'),
      done(mix ?? '', '2026-11-27T19:00:00Z'),
      done(pour ?? '', '2026-11-27T19:20:00Z'),
    ];
    const kinds = (count: number) => new Set(usesOf(log.slice(0, count), prepared).map(({ kind }) => kind));
    expect(kinds(1)).toEqual(new Set(['lye', 'water']));
    expect(kinds(2)).toEqual(new Set(['lye', 'water', 'fat']));
    const mixed = usesOf(log.slice(0, 3), prepared);
    expect(total(usesOf(log, prepared))).toBeCloseTo(total(mixed), 9);
    expect(mixed.find(({ key }) => key === 'naoh')?.at).toBe('2026-11-26T19:00:00.000Z');
    const sheet = writeBatchSheet({ ...prepared, log: log.slice(0, 1) });
    const needed = writeBatchSheet({ ...prepared, log: [] });
    if (!sheet.ok || !needed.ok) throw new Error('no sheet');
    const lines = (key: string) =>
      [sheet, needed].map(({ value }) => value.gather.lines.find((line) => line.key === key)?.needed ?? 0);
    const [still = 0, all = 0] = lines('naoh');
    expect(all - still).toBeCloseTo(mixed.find(({ key }) => key === 'naoh')?.amount ?? NaN, 6);
  });

  it('conserves: what is used and what is still needed is what the whole run takes', () => {
    const stages = ['pour-deep', 'pour-sand', 'unmould', 'patch', 'pipe-foam'];
    const whole = writeBatchSheet(file);
    if (!whole.ok) throw new Error('no sheet');
    const all = total(whole.value.gather.lines.map(({ needed: amount, unit }) => ({ amount, unit })));
    stages.forEach((_, count) => {
      const log = stages
        .slice(0, count + 1)
        .map((stage, i) => done(stage, `2026-11-2${String(7 + Math.floor(i / 2))}T1${String(i)}:00:00Z`));
      const sheet = writeBatchSheet({ ...file, log });
      if (!sheet.ok) throw new Error('no sheet');
      const open = total(sheet.value.gather.lines.map(({ needed: amount, unit }) => ({ amount, unit })));
      expect(open + total(usesOf(log)), stages[count]).toBeCloseTo(all, 6);
    });
  });

  it('lowers what the next sheet has on hand', () => {
    const ledger = [{ entry: bought(4000) }];
    const uses = usesOf([deep]);
    const olive = uses.find(({ key }) => key === 'olive')?.amount ?? NaN;
    expect(onHand(ledger, uses)).toBeCloseTo(4000 - olive, 6);
    const workshop = withStock(file.workshop, stockOf({ workshop: bare, ledger, uses }));
    const sheet = writeBatchSheet({ ...file, workshop, log: [deep] });
    const line = sheet.ok ? sheet.value.gather.lines.find(({ key }) => key === 'olive') : undefined;
    expect(line?.onHand).toBeCloseTo(4000 - olive, 6);
  });
});
