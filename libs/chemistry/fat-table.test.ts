import { describe, expect, it } from 'vitest';
import { checkFat, fatTable, shippedFats, type FatFacts } from '#chemistry';

const ownOlive: FatFacts = {
  key: 'olive',
  title: 'Olive oil of our own (invented)',
  saponificationMgKohPerG: { low: 188, used: 189, high: 190 },
  fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 75, 'C18:2': 10 },
  densityGPerMl: 0.913,
  source: 'invented supplier’s sheet',
  evidence: { kind: 'from memory' },
};

describe('the table of fats', () => {
  it('ships fats that pass its own check, under keys of their own', () => {
    expect(shippedFats.flatMap(checkFat)).toEqual([]);
    expect(fatTable([]).size).toBe(shippedFats.length);
    expect(shippedFats.map(({ key }) => key).filter((key) => !/^[a-z][a-z0-9-]{0,39}$/.test(key))).toEqual(
      [],
    );
  });

  it('scales every profile to 100 %, but for waxes, which have none', () => {
    for (const { key, tags, fattyAcidsPercent } of shippedFats) {
      const sum = Object.values(fattyAcidsPercent).reduce((total, share) => total + share, 0);
      expect(sum, key).toBeCloseTo(tags?.includes('wax') === true ? 0 : 100, 9);
    }
  });

  it('lets the maker’s own fat replace a shipped one and nothing else', () => {
    const table = fatTable([ownOlive]);
    expect(table.get('olive')).toBe(ownOlive);
    expect(table.size).toBe(shippedFats.length);
    expect(table.get('coconut')).toBe(fatTable([]).get('coconut'));
  });
});

describe('checkFat', () => {
  it('has nothing against a fat from a sheet', () => {
    expect(checkFat(ownOlive)).toEqual([]);
  });

  it.each<[string, Partial<FatFacts>, (string | number)[]]>([
    [
      'fat.saponification-disordered',
      { saponificationMgKohPerG: { low: 190, used: 189, high: 195 } },
      ['saponificationMgKohPerG'],
    ],
    [
      'fat.saponification-disordered',
      { saponificationMgKohPerG: { low: 0.135, used: 0.136, high: 0.14 } },
      ['saponificationMgKohPerG'],
    ],
    ['fat.unknown-fatty-acid', { fattyAcidsPercent: { oleic: 70 } }, ['fattyAcidsPercent', 'oleic']],
    ['fat.unknown-fatty-acid', { fattyAcidsPercent: { 'C18:1': -1 } }, ['fattyAcidsPercent', 'C18:1']],
    ['fat.fatty-acids-over-100', { fattyAcidsPercent: { 'C18:1': 70, 'C18:2': 40 } }, ['fattyAcidsPercent']],
    ['fat.density-out-of-range', { densityGPerMl: 913 }, ['densityGPerMl']],
  ])('finds %s in %j', (code, change, path) => {
    expect(checkFat({ ...ownOlive, ...change })).toMatchObject([{ code, path }]);
  });
});
