import { describe, expect, it } from 'vitest';
import { fatTable } from '#chemistry';

const fats = fatTable([]);

/**
 * Figures of single lots or surveys, from abstracts that were read. What is shipped for these fats is from memory, so
 * its ranges have to hold what others measured.
 */
describe('the ranges that were remembered', () => {
  /** Anwar and Rashid, Pak. J. Bot. 39 (2007) 1443: wild moringa of Pakistan. */
  const moringa = ['moringa', 181.4, 68.63, { 'C18:1': 73.22, 'C16:0': 6.45, 'C18:0': 5.5, 'C22:0': 6.16 }];
  /** A report on Chinese oil, quoted in a handbook of medicinal plants. */
  const primrose = ['evening-primrose', 188, 140, {}];
  it.each([moringa, primrose] as [string, number, number, Record<string, number>][])(
    'of %s hold a measured lot',
    (key, saponification, iodine, acids) => {
      const facts = fats.get(key);
      expect(facts?.saponificationMgKohPerG.low).toBeLessThanOrEqual(saponification);
      expect(facts?.saponificationMgKohPerG.high).toBeGreaterThanOrEqual(saponification);
      expect(facts?.iodine?.low).toBeLessThanOrEqual(iodine);
      expect(facts?.iodine?.high).toBeGreaterThanOrEqual(iodine);
      for (const [acid, share] of Object.entries(acids)) {
        expect(Math.abs((facts?.fattyAcidsPercent[acid] ?? 0) - share), acid).toBeLessThan(3);
      }
    },
  );

  /** List, Steidley, Neff, Snowder, Grasas y Aceites 54 (2003): mutton tallows, iodine values 34 to 44. */
  it('of sheep tallow hold the iodine values of its depots', () => {
    expect(fats.get('sheep-tallow')?.iodine?.low).toBeLessThanOrEqual(34);
    expect(fats.get('sheep-tallow')?.iodine?.high).toBeGreaterThanOrEqual(44);
  });

  /**
   * Main acids, per cent: Friend, Kramer, Fortin, J. Food Sci. 48 (1983), goose depot fat; National Research Council,
   * Nutrient Requirements of Swine (1998), Table 12-6, poultry fat; Castilho et al., JAOCS 82 (2005) 863, laurel of Madeira;
   * Bianchini et al., Phytochemistry 21 (1982), baobab; a poster of AOCS 2020, cupuaçu.
   */
  it.each([
    ['goose-fat', { 'C18:1': 54, 'C16:0': 22, 'C18:2': 11, 'C18:0': 8 }],
    ['chicken-fat', { 'C18:1': 37.3, 'C16:0': 21.6, 'C18:2': 19.5, 'C18:0': 6, 'C16:1': 5.7 }],
    ['laurel-berry', { 'C18:1': 30, 'C18:2': 20, 'C12:0': 18, 'C16:0': 22.5 }],
    ['baobab', { 'C16:0': 26.7, 'C18:1': 41.9, 'C18:2': 20.6 }],
    ['cupuacu-butter', { 'C18:1': 38.9, 'C18:0': 34.15 }],
  ] as [string, Record<string, number>][])('of %s have its main acids', (key, acids) => {
    const profile = fats.get(key)?.fattyAcidsPercent ?? {};
    for (const [acid, share] of Object.entries(acids)) {
      expect(Math.abs((profile[acid] ?? 0) - share), acid).toBeLessThan(9);
    }
  });
});
