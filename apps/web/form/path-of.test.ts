import { expect, it } from 'vitest';
import { pathText } from '#units';
import { issuesOf, pathOf } from './path-of.js';

it.each([
  [[]],
  [['title']],
  [['content', 'fats', 0, 'percent']],
  [['fattyAcidsPercent', 'C18:1']],
  [[3, 'a']],
])('reads %j back from its text', (path) => {
  expect(pathOf(pathText(path))).toEqual(path);
});

it('takes what was around the thing off the path', () => {
  const data = { accepted: { kind: 'range', high: 100, unit: '%' } };
  const issue = { code: 'input.too-big', message: 'No.', value: 120, data };
  const problem = {
    type: 'urn:x',
    title: 'x',
    status: 422,
    issues: [
      { ...issue, path: 'recipes[0].fats[1].percent' },
      { ...issue, path: 'moulds[0].cavities' },
    ],
  };
  const told = { code: 'input.too-big', value: 120, ...data };
  expect(issuesOf(problem, ['recipes', 0])).toEqual([
    { ...told, path: ['fats', 1, 'percent'] },
    { ...told, path: ['moulds', 0, 'cavities'] },
  ]);
  expect(issuesOf(undefined, [])).toEqual([]);
});
