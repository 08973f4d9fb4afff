import { expect, it } from 'vitest';
import type { Issue } from '#units';
import { en } from '../../words/en/index.js';
import { issuesOfItem, titleAround } from './issue-places.js';

const design = {
  parts: [
    { key: 'a', title: 'Base' },
    { key: 'b', title: ' ' },
  ],
  stages: [{ key: 'pour', title: 'Pour' }, { key: 'dip' }],
  links: [{ from: 'pour', to: 'dip' }],
  without: [{ stage: 'pour', part: 'a', state: 'firm' }],
};

it.each([
  [['parts', 0, 'recipe'], 'Base'],
  [['parts', 1, 'recipe'], 'Part 2'],
  [['parts', 0, 'colourants', 0, 'percent'], 'Base'],
  [['links', 0, 'atMostMin'], 'Stage 2'],
  [['without', 0, 'reason'], 'Pour'],
  [['waits', 0, 'opens'], undefined],
  [['stages'], undefined],
  [['title'], undefined],
])('names the part or stage around %j', (path, title) => {
  expect(titleAround(design, path, en.library)).toBe(title);
});

it('gathers what is wrong with a stage and with what it waits for', () => {
  const issue = (...path: (string | number)[]): Issue => ({ code: 'input.missing', path });
  const [link, title, other] = [
    issue('links', 0, 'atLeastMin'),
    issue('stages', 1, 'title'),
    issue('parts', 1, 'title'),
  ];
  expect(issuesOfItem(design, [link, title, other], 'stages', 1)).toEqual([link, title]);
});
