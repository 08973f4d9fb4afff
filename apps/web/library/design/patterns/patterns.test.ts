import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseWith, pieceDesign, type PieceDesign, type Stage } from '#contract';
import { checkDesign, impliedOrder } from '#runs';
import { listAt, textAt, valueAt, withValue, type Value } from '../../../form/values.js';
import { de } from '../../../words/de/index.js';
import { en } from '../../../words/en/index.js';
import { additions, withAddition } from './additions.js';
import { designAfter, patternNames } from './patterns.js';
import { pieceTitles } from './use-piece-titles.js';

const titles = pieceTitles(en);
const answers = { recipe: 'plain', mould: 'tray' };
const kindsOf = (design: Value): string[] =>
  listAt(design, ['stages']).map((stage) => textAt(stage, ['kind']));
const titlesOf = (design: Value, list: string): string[] =>
  listAt(design, [list]).map((each) => textAt(each, ['title']));

const around = {
  recipes: [
    {
      ...{ key: 'plain', title: 'Plain', fats: [{ fat: 'olive', percent: 100 }], superfatPercent: 5 },
      ...{ lyeConcentrationPercent: 33, naohPurityPercent: 100, kohSharePercent: 0, acids: [] },
      ...{ sodiumLactatePercent: 0, saltPercent: 0, sugarPercent: 0, additions: [], fragrances: [] },
      ...{ batterTemperatureC: 38, mixing: 'blender', gel: 'none', lyeExcessIntended: false },
    },
  ],
  ...{ fats: [], workshop: { equipment: [] } },
  moulds: ['tray', ...Array.from({ length: 20 }, (_, i) => `mould-${String(i)}`)].map((key) => ({
    ...{ key, title: key, kind: 'silicone-cavity', cavityMl: 80, cavities: 12 },
  })),
} as never;

/** With an amount and a mould for each part that has none yet, as the maker has to fill them in. */
function filledIn(design: Value): PieceDesign {
  const told = listAt(design, ['parts']).reduce<Value>((before, part, i) => {
    if (valueAt(part, ['kind']) === 'decor') return before;
    if (valueAt(part, ['amount']) === undefined) return withValue(before, ['parts', i, 'perPieceMl'], 3);
    const hasMould = valueAt(part, ['mould']) !== undefined;
    return hasMould ? before : withValue(before, ['parts', i, 'mould'], `mould-${String(i)}`);
  }, design);
  const read = parseWith(pieceDesign, { ...(told as object), key: 'd', title: 'D' });
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
}

const anyPiece = fc
  .record({
    pattern: fc.constantFrom(...patternNames),
    layers: fc.integer({ min: 1, max: 12 }),
    more: fc.array(fc.constantFrom(...additions), { maxLength: 5 }),
  })
  .map(({ pattern, layers, more }) =>
    more.reduce<Value>(
      (before, each) => withAddition(before, each, titles),
      designAfter(pattern, { ...answers, layers }, titles),
    ),
  );

describe('a piece built after a pattern', () => {
  it.each([
    ['cast', ['Pour the base', 'Unmould']],
    ['layers', ['Pour layer 1', 'Pour layer 2', 'Unmould']],
    ['loaf', ['Pour layer 1', 'Pour layer 2', 'Unmould', 'Cut']],
    ['swirl', ['Pour the base', 'Unmould', 'Cut']],
    ['halves', ['Pour the base', 'Unmould', 'Pipe the filling', 'Put the halves together']],
    ['coated', ['Pour the base', 'Unmould', 'Dip into the coat', 'Turn']],
    ['piped', ['Pour the base', 'Unmould', 'Pipe the topping']],
    ['decor', ['Press the decor', 'Pour the base', 'Set in the decor', 'Unmould']],
    [
      'embeds',
      [
        ...['Melt the base for the embeds', 'Pour the embeds', 'Unmould: Embeds'],
        ...['Pour the base', 'Set in the embeds', 'Unmould'],
      ],
    ],
  ] as const)('%s is done so: %j', (name, stages) => {
    expect(titlesOf(designAfter(name, answers, titles), 'stages')).toEqual(stages);
  });

  it('lets pressed decor dry overnight: common practice, no source', () => {
    expect(designAfter('decor', answers, titles)).toMatchObject({
      links: [{ from: 'press-the-decor', to: 'set-in-the-decor', atLeastMin: 720 }],
    });
  });

  it('has German titles in German', () => {
    expect(titlesOf(designAfter('coated', answers, pieceTitles(de)), 'stages')).toEqual([
      'Grundkörper gießen',
      'Ausformen',
      'Eintauchen: Überzug',
      'Wenden',
    ]);
  });

  it('asks for what it was not told: recipe and mould stay open', () => {
    const { parts } = designAfter('cast', {}, titles) as { readonly parts: readonly object[] };
    expect(parts[0]).not.toHaveProperty('recipe');
    expect(parts[0]).not.toHaveProperty('mould');
  });

  it('cuts as many pieces from a loaf as it is told, of all its layers', () => {
    const { parts } = designAfter('loaf', { ...answers, layers: 3, pieces: 10 }, titles) as never;
    expect(parts).toMatchObject(Array(3).fill({ piecesPerCavity: 10, amount: { fillPercent: 33.3 } }));
  });

  it('splits one pour into as many colours as it is told, which the contract reads', () => {
    for (let colours = 2; colours <= 12; colours += 1) {
      const design = filledIn(designAfter('swirl', { ...answers, colours, pieces: 10 }, titles));
      expect(design.parts).toMatchObject([{ piecesPerCavity: 10, portions: { length: colours } }]);
    }
  });

  it('makes a piece of halves from two cavities', () => {
    expect(designAfter('halves', answers, titles)).toMatchObject({ parts: [{ cavitiesPerPiece: 2 }, {}] });
  });

  /** Whatever is added, in whatever order. */
  it('is one that can be saved as soon as its amounts are filled in', () => {
    fc.assert(
      fc.property(anyPiece, (design) => {
        expect(checkDesign(filledIn(design), around)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it('is done in an order in which each stage has what it needs', () => {
    fc.assert(
      fc.property(anyPiece, (made) => {
        const design = filledIn(made);
        const place = (stage: Stage | undefined): number => design.stages.indexOf(stage as Stage);
        const byKey = (key: string): Stage | undefined => design.stages.find((each) => each.key === key);
        const makes = (part: string): Stage | undefined =>
          design.stages.find((each) => each.part === part && each.kind !== 'set-in');
        const { links, waits } = impliedOrder(design);
        for (const { from, to } of links) expect(place(byKey(from))).toBeLessThan(place(byKey(to)));
        for (const { stage, part } of waits) expect(place(makes(part))).toBeLessThan(place(byKey(stage)));
        expect(waits.some(({ opens }) => opens === 'firm')).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe('something more on a piece', () => {
  it('goes where it is usually done: fillings inside, decor into the coat, the glaze on top', () => {
    const full = (['glaze', 'coat', 'filling', 'decor'] as const).reduce<Value>(
      (before, each) => withAddition(before, each, titles),
      designAfter('cast', answers, titles),
    );
    expect(titlesOf(full, 'stages')).toEqual([
      'Press the decor',
      'Pour the base',
      'Unmould',
      'Pipe the filling',
      'Melt and apply the glaze',
      'Dip into the coat',
      'Set in the decor',
      'Turn',
    ]);
  });

  it('is made in a stage that fits it, and takes the recipe that is there', () => {
    const design = withAddition(designAfter('cast', answers, titles), 'coat', titles);
    expect(design).toMatchObject({
      parts: [{ key: 'base' }, { key: 'coat', kind: 'batch', recipe: 'plain' }],
      stages: [{}, {}, { kind: 'dip', part: 'coat' }, { kind: 'turn', part: 'base' }],
    });
  });

  it('turns the piece only once', () => {
    const coated = designAfter('coated', answers, titles);
    expect(kindsOf(withAddition(coated, 'glaze', titles))).toEqual([
      ...['pour', 'unmould', 'dip', 'glaze', 'turn'],
    ]);
  });

  it('has a name and a key of its own beside another of its sort', () => {
    const twice = withAddition(designAfter('coated', answers, titles), 'coat', titles);
    expect(titlesOf(twice, 'parts')).toEqual(['Base', 'Coat', 'Coat 2']);
    expect(new Set(listAt(twice, ['stages']).map((each) => textAt(each, ['key']))).size).toBe(5);
  });

  it('shares the cavity where it is one more layer, unless the maker has shared it out', () => {
    const two = withAddition(designAfter('cast', answers, titles), 'layer', titles);
    const amounts = (design: Value): unknown[] =>
      listAt(design, ['parts']).map((part) => valueAt(part, ['amount', 'fillPercent']));
    expect(amounts(two)).toEqual([50, 50]);
    expect(amounts(withAddition(two, 'layer', titles))).toEqual([33.3, 33.3, 33.3]);
    const own = withValue(two, ['parts', 0, 'amount', 'fillPercent'], 70);
    expect(amounts(withAddition(own, 'layer', titles))).toEqual([70, 50, undefined]);
    expect(kindsOf(two)).toEqual(['pour', 'layer', 'unmould']);
  });

  it('begins a piece where there is none yet', () => {
    expect(withAddition({}, 'coat', titles)).toMatchObject({
      parts: [{ key: 'coat', title: 'Coat' }],
      stages: [{ kind: 'dip' }, { kind: 'turn', part: 'coat' }],
    });
  });
});
