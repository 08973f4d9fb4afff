import { expect, it } from 'vitest';
import { pathText } from '#units';
import { issuesIn } from './checks.js';
import { pieceTitles } from './design/patterns/use-piece-titles.js';
import { designAfter } from './design/patterns/patterns.js';
import { withoutStage } from './design/design-edits.js';
import { en } from '../words/en/index.js';

const around = {
  ...{ recipes: [{ key: 'plain', fats: [] }], fats: [], moulds: [], workshop: { equipment: [] } },
} as never;
const titles = pieceTitles(en);

const told = (design: object): string[] =>
  issuesIn('designs', { key: 'piece', ...design }, around).map(
    ({ code, path }) => `${code} ${pathText(path)}`,
  );

it('tells all that is wrong with a piece at once, what is missing and what does not fit', () => {
  const unfreed = withoutStage(designAfter('coated', { mould: 'gone' }, titles), 1);
  expect(told(unfreed as object)).toEqual([
    'input.missing title',
    'input.missing parts[0].recipe',
    'input.missing parts[1].recipe',
    'input.missing parts[1].perPieceMl',
    'mould.unknown parts[0].mould',
  ]);
  const circular = {
    ...(designAfter('coated', { recipe: 'plain' }, titles) as object),
    links: [
      { from: 'unmould', to: 'dip-into-the-coat' },
      { from: 'dip-into-the-coat', to: 'unmould' },
    ],
  };
  const found = told({ title: 'Piece', ...circular });
  expect(found).toContain('input.missing parts[1].perPieceMl');
  expect(found.some((each) => each.startsWith('design.circular-links'))).toBe(true);
});

it('says nothing of a schema twice, and names the field that is empty', () => {
  const shared = designAfter('layers', { recipe: 'plain' }, titles) as object;
  expect(told({ title: 'Piece', ...shared })).toEqual([
    'input.missing parts[0].mould',
    'input.missing parts[1].mould',
  ]);
});

it('says nothing of what stands in for what is missing', () => {
  expect(
    told(designAfter('coated', {}, titles) as object).filter((each) => !each.startsWith('input.')),
  ).toEqual([]);
});
