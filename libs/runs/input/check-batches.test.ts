import { expect, it } from 'vitest';
import type { BatchPart, PieceDesign, RunFile } from '#contract';
import { checkInput } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');

/** The file with its two layers changed, and a second recipe beside its own. */
function withLayers(...over: readonly Partial<BatchPart>[]): RunFile {
  const [recipe] = file.recipes;
  const designs = file.designs.map((design) => ({
    ...design,
    parts: design.parts.map((part, i) => ({ ...part, ...over[i] }) as BatchPart),
  }));
  return { ...file, designs: designs.map(withMix), recipes: [...file.recipes, { ...recipe!, key: 'other' }] };
}

function withMix(design: PieceDesign): PieceDesign {
  const mix = { key: 'mix', title: 'Mix', kind: 'mix' as const, part: 'under', needs: [] };
  return { ...design, stages: [mix, ...design.stages] };
}

it('wants a stage that mixes what several parts are poured from', () => {
  const shared = withLayers({ batch: 'all' }, { batch: 'all' });
  const designs = shared.designs.map((design) => ({
    ...design,
    stages: design.stages.filter(({ kind }) => kind !== 'mix'),
  }));
  const [under, over] = file.designs[0]!.parts.map(({ title }) => title);
  expect(checkInput({ ...shared, designs })).toMatchObject([
    { code: 'design.batch-needs-mix', path: ['designs', 0, 'parts', 1, 'batch'], titles: [under, over] },
  ]);
});

it('wants one recipe for all that is mixed at once', () => {
  expect(checkInput(withLayers({ batch: 'all' }, { batch: 'all' }))).toEqual([]);
  expect(checkInput(withLayers({}, { recipe: 'other' }))).toEqual([]);
  const [under, over] = file.designs[0]!.parts.map(({ title }) => title);
  expect(checkInput(withLayers({ batch: 'all' }, { batch: 'all', recipe: 'other' }))).toMatchObject([
    { code: 'design.batch-recipes', path: ['designs', 0, 'parts', 1, 'batch'], titles: [under, over] },
  ]);
});

it('takes the key of a part for the batch that it is poured from', () => {
  const [first] = file.designs[0]!.parts;
  expect(checkInput(withLayers({}, { batch: first!.key, recipe: 'other' }))).toMatchObject([
    { code: 'design.batch-recipes', value: first!.key },
  ]);
});

it('wants as many cavities for a piece of all parts that share them', () => {
  expect(checkInput(withLayers({ cavitiesPerPiece: 2 }, { cavitiesPerPiece: 2 }))).toEqual([]);
  expect(checkInput(withLayers({ cavitiesPerPiece: 2 }, {}))).toMatchObject([
    { code: 'design.cavities-differ', path: ['designs', 0, 'parts', 1, 'cavitiesPerPiece'], value: 1 },
  ]);
});

it('wants keys of their own for portions', () => {
  const portion = { key: 'blue', title: 'Blue', colourants: [], additions: [], fragrances: [] };
  const portions = [
    { ...portion, sharePercent: 40 },
    { ...portion, sharePercent: 60 },
  ];
  expect(checkInput(withLayers({}, { portions }))).toMatchObject([
    {
      code: 'input.repeated-key',
      path: ['designs', 0, 'parts', 1, 'portions', 1, 'key'],
      list: 'portions',
    },
  ]);
});

/** Two cups of 60 mL hold what three of 40 mL would. */
it('fills the cavities of a piece with what all of them hold', () => {
  const overfull = checkInput(withLayers({ perPieceMl: 60 }, { perPieceMl: 60 }));
  expect(overfull.map(({ code }) => code)).toEqual(['design.cavity-overfull']);
  const two = { perPieceMl: 60, cavitiesPerPiece: 2 };
  expect(checkInput(withLayers(two, two))).toEqual([]);
});
