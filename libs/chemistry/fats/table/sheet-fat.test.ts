import { describe, expect, it } from 'vitest';
import { fromSheet } from '#chemistry';
import { oliveSheet as sheet, ownOlive } from '../../../../tests/support/own-olive.js';

describe('fromSheet', () => {
  it('takes a fat for a triglyceride that expands like one', () => {
    expect(ownOlive).toMatchObject({ kind: 'triglyceride', expansionGPerMlPerC: 0.00064 });
    expect(ownOlive.evidence.density).toEqual({ kind: 'published', source: sheet.source });
    expect(ownOlive.evidence.expansion).not.toEqual(ownOlive.evidence.density);
    expect(ownOlive.evidence.inci).toBeUndefined();
  });

  /** A figure that stands for all lots is given 2 % to either side, and no more than a fat can have. */
  it.each([
    [190, undefined, { low: 186.2, used: 190, high: 193.8 }],
    [190, true, { low: 190, used: 190, high: 190 }],
    [20, undefined, { low: 20, used: 20, high: 20.4 }],
    [600, undefined, { low: 588, used: 600, high: 600 }],
    [0.135, undefined, { low: 0.135, used: 0.135, high: 0.135 }],
  ])(
    'gives a single figure of %d the width of lots, unless it is of this lot (%s)',
    (used, ofThisLot, width) => {
      const saponificationMgKohPerG = { low: used, used, high: used };
      const { saponificationMgKohPerG: value } = fromSheet({ ...sheet, saponificationMgKohPerG, ofThisLot });
      for (const end of ['low', 'used', 'high'] as const) expect(value[end]).toBeCloseTo(width[end], 9);
    },
  );

  it('keeps the ends that a sheet gives', () => {
    const saponificationMgKohPerG = { low: 189, used: 190, high: 190 };
    expect(fromSheet({ ...sheet, saponificationMgKohPerG })).toMatchObject({ saponificationMgKohPerG });
  });

  it('keeps what the sheet says', () => {
    const wax = fromSheet({ ...sheet, kind: 'wax', expansionGPerMlPerC: 0.0008, behaviour: 'Sets at once.' });
    expect(wax).toMatchObject({ kind: 'wax', expansionGPerMlPerC: 0.0008, behaviour: 'Sets at once.' });
    expect(wax.evidence.expansion).toEqual({ kind: 'published', source: sheet.source });
  });

  it('says of every figure that it is the sheet’s, and of none that it leaves out', () => {
    const full = fromSheet({
      ...sheet,
      ...{ inci: 'Olea Europaea Fruit Oil', unsaponifiablePercent: { low: 0, high: 1.5 }, confirmed: true },
    });
    expect(full).toMatchObject({
      ...{ key: sheet.key, title: sheet.title, inci: 'Olea Europaea Fruit Oil', confirmed: true },
      ...{ iodine: sheet.iodine, unsaponifiablePercent: { low: 0, high: 1.5 } },
      ...{ fattyAcidsPercent: sheet.fattyAcidsPercent, densityGPerMl: 0.913 },
    });
    const said = { kind: 'published', source: sheet.source };
    for (const figure of ['saponification', 'fattyAcids', 'inci', 'iodine', 'unsaponifiable'] as const) {
      expect(full.evidence[figure], figure).toEqual(said);
    }
    expect(fromSheet({ ...sheet, behaviour: 'Soft.' }).evidence.behaviour).toEqual(said);
    const { iodine: _, ...short } = sheet;
    const bare = fromSheet({ ...short, fattyAcidsPercent: {} });
    expect(Object.keys(bare).sort()).toEqual(
      [
        ...['densityGPerMl', 'evidence', 'expansionGPerMlPerC', 'fattyAcidsPercent', 'key', 'kind'],
        ...['saponificationMgKohPerG', 'title'],
      ].sort(),
    );
    expect(Object.keys(bare.evidence).sort()).toEqual(['density', 'expansion', 'saponification']);
  });

  it('says that the expansion of a wax is borrowed', () => {
    expect(fromSheet(sheet).evidence.expansion.kind).toBe('published');
    expect(fromSheet({ ...sheet, kind: 'wax' }).evidence.expansion.kind).toBe('from memory');
  });
});
