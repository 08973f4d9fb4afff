import { describe, expect, it } from 'vitest';
import { checkFat, fatTable, fromSheet, questionsAbout, shippedFats } from '#chemistry';

const ownOlive = fromSheet({
  key: 'olive',
  title: 'Olive oil of our own (invented)',
  saponificationMgKohPerG: { low: 188, used: 189, high: 190 },
  fattyAcidsPercent: { 'C16:0': 12, 'C18:1': 75, 'C18:2': 10 },
  densityGPerMl: 0.913,
  source: 'invented supplier’s sheet',
});

describe('the table of fats', () => {
  it('ships fats that pass its own check without a question, under keys of their own', () => {
    expect(shippedFats.flatMap(checkFat)).toEqual([]);
    expect(shippedFats.flatMap(questionsAbout)).toEqual([]);
    expect(fatTable([]).size).toBe(shippedFats.length);
    expect(shippedFats.map(({ key }) => key).filter((key) => !/^[a-z][a-z0-9-]{0,39}$/.test(key))).toEqual(
      [],
    );
  });

  it('keeps the keys that stored recipes name', () => {
    const named = [
      ['coconut', 'palm-kernel', 'babassu', 'palm', 'olive', 'olive-pomace', 'sweet-almond', 'avocado'],
      ['high-oleic-sunflower', 'rapeseed', 'sunflower', 'soybean', 'rice-bran', 'sesame', 'maize'],
      ['cottonseed', 'grape-seed', 'shea-butter', 'cocoa-butter', 'lard', 'tallow', 'castor', 'beeswax'],
      ['jojoba'],
    ].flat();
    const table = fatTable([]);
    expect(named.filter((key) => !table.has(key))).toEqual([]);
    expect(table.size).toBeGreaterThanOrEqual(90);
  });

  /** A name as put in is one of a plant, an animal or an acid; those that stand for two fats are all here. */
  it('names every fat for the label, but for those whose name was not remembered', () => {
    const without = shippedFats.filter(({ inci }) => inci === undefined).map(({ key }) => key);
    expect(without).toEqual([
      ...['high-oleic-palm', 'goose-fat', 'duck-fat', 'chicken-fat', 'sheep-tallow', 'milk-fat', 'horse-fat'],
    ]);
    const names = shippedFats.flatMap(({ inci }) => inci ?? []);
    expect(
      names.filter((name) => !/^[A-Z][a-z]+([ /][A-Z][a-z]+)+$|^Lanolin$|^Colophonium$/.test(name)),
    ).toEqual([]);
    expect([...new Set(names.filter((name, at) => names.indexOf(name) !== at))].sort()).toEqual(
      [
        'Butyrospermum Parkii Butter',
        'Elaeis Guineensis Kernel Oil',
        'Elaeis Guineensis Oil',
        'Glycine Soja Oil',
        'Helianthus Annuus Seed Oil',
        'Carthamus Tinctorius Seed Oil',
        'Hydrogenated Soybean Oil',
        'Stearic Acid',
      ].sort(),
    );
  });

  it('names the sodium soap of every fat but waxes, alike only where the fats are of one kind', () => {
    const without = shippedFats.filter(({ soapInci }) => soapInci === undefined);
    expect(without.map(({ kind }) => kind)).toEqual(without.map(() => 'wax'));
    expect(shippedFats.filter(({ kind, soapInci }) => kind === 'wax' && soapInci !== undefined)).toEqual([]);
    const names = shippedFats.flatMap(({ soapInci }) => soapInci ?? []);
    for (const name of names) expect(name).toMatch(/^Sodium [A-Z][a-z]+(?:[ /][A-Z][a-z]+)*ate$/);
    const keysOf = (name: string) => shippedFats.filter((fat) => fat.soapInci === name).map(({ key }) => key);
    const shared = [...new Set(names)].map(keysOf).filter((keys) => keys.length > 1);
    expect(shared.map((keys) => keys.join(' ')).sort()).toEqual(
      [
        'hydrogenated-soybean soy-wax',
        'olive olive-pomace',
        'palm high-oleic-palm palm-olein palm-stearin palm-superolein palm-shortening',
        'palm-kernel palm-kernel-olein palm-kernel-stearin',
        'rapeseed high-oleic-rapeseed',
        'high-oleic-safflower safflower',
        'shea-butter shea-butter-refined',
        'high-oleic-soybean soybean',
        'stearic-acid stearic-acid-95',
        'high-oleic-sunflower sunflower mid-oleic-sunflower',
        'tallow sheep-tallow',
      ].sort(),
    );
  });

  it('finds every fat by another name, and none by the name of two', () => {
    const owners = new Map<string, string>();
    for (const { key, title, aliases } of shippedFats) {
      expect(aliases.length, key).toBeGreaterThan(0);
      for (const name of new Set(
        [key, title, ...aliases].map((each) => each.toLowerCase().replaceAll('-', ' ')),
      )) {
        expect(owners.get(name) ?? key, name).toBe(key);
        owners.set(name, key);
      }
    }
  });

  it('scales every profile to 100 %, but for waxes, which have none', () => {
    for (const { key, kind, fattyAcidsPercent } of shippedFats) {
      const sum = Object.values(fattyAcidsPercent).reduce((total, share) => total + share, 0);
      expect(sum, key).toBeCloseTo(kind === 'wax' ? 0 : 100, 9);
    }
  });

  it('says of each figure where it comes from, and of no figure that is not there', () => {
    for (const fat of shippedFats) {
      const { evidence } = fat;
      const given = {
        fattyAcids: Object.keys(fat.fattyAcidsPercent).length > 0,
        iodine: fat.iodine !== undefined,
        unsaponifiable: fat.unsaponifiablePercent !== undefined,
        inci: fat.inci !== undefined,
        soapInci: fat.soapInci !== undefined,
      };
      for (const [figure, isGiven] of Object.entries(given)) {
        expect(evidence[figure as keyof typeof given] !== undefined, `${fat.key} ${figure}`).toBe(isGiven);
      }
      expect(evidence.behaviour, fat.key).toEqual({ kind: 'common practice' });
      expect(fat.behaviour, fat.key).toMatch(/^[A-Z].{20,300}\.$/);
    }
  });

  it('calls nothing published that no standard was read for', () => {
    for (const key of ['hemp-seed', 'mango-butter', 'kokum-butter', 'shea-butter-refined', 'neem']) {
      const facts = fatTable([]).get(key);
      expect(facts?.evidence.saponification.kind, key).toBe('from memory');
      expect(facts?.evidence.density.kind, key).toBe('from memory');
    }
  });

  it('lets the maker’s own fat replace a shipped one and nothing else', () => {
    const table = fatTable([ownOlive]);
    expect(table.get('olive')).toMatchObject({ ...ownOlive, tags: ['olive'] });
    expect(table.get('olive')).toMatchObject({ inci: 'Olea Europaea Fruit Oil', soapInci: 'Sodium Olivate' });
    expect(fatTable([{ ...ownOlive, inci: 'As on our sheet' }]).get('olive')?.inci).toBe('As on our sheet');
    expect(table.size).toBe(shippedFats.length);
    expect(table.get('coconut')).toBe(fatTable([]).get('coconut'));
  });

  it('lets the maker tag a fat otherwise, and the later of two fats stand', () => {
    const tagged = { ...ownOlive, tags: ['olive-pomace' as const] };
    expect(fatTable([tagged]).get('olive')?.tags).toEqual(['olive-pomace']);
    expect(fatTable([tagged, ownOlive]).get('olive')).toMatchObject({ ...ownOlive, tags: ['olive-pomace'] });
  });

  it('lets a fat of the maker’s own with a new key stand as it is', () => {
    const own = { ...ownOlive, key: 'village-olive' };
    expect(fatTable([own]).get('village-olive')).toBe(own);
  });
});
