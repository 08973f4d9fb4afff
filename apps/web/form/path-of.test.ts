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
  const issue = { code: 'x', message: 'No.' };
  const problem = {
    type: 'urn:x',
    title: 'x',
    status: 422,
    issues: [
      { ...issue, path: 'recipes[0].fats[1].percent' },
      { ...issue, path: 'moulds[0].cavities' },
    ],
  };
  expect(issuesOf(problem, ['recipes', 0]).map(({ path }) => path)).toEqual([
    ['fats', 1, 'percent'],
    ['moulds', 0, 'cavities'],
  ]);
  expect(issuesOf(undefined, [])).toEqual([]);
});
