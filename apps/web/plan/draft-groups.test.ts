import { describe, expect, it } from 'vitest';
import { runGroup } from '#contract';
import { groupsOf, piecesOf, sumOf, titled, twoGroups } from './draft-groups.js';

const named = (number: number): string => `Gruppe ${number}`;
const two = titled(twoGroups(24, ['base', 'coat']), named);

describe('groups as they are entered', () => {
  it('begin as two halves that come to all pieces, with all parts', () => {
    expect(two.map(({ title, count }) => `${title}: ${count}`)).toEqual(['Gruppe 1: 12', 'Gruppe 2: 12']);
    expect(twoGroups(25, ['base']).map(({ count }) => count)).toEqual(['13', '12']);
    expect(two.every(({ parts }) => parts.length === 2)).toBe(true);
  });

  it('become groups that the contract takes, with keys of their own', () => {
    const made = groupsOf(titled([two[0]!, { ...two[1]!, title: ' Gruppe 1 ' }], named), 24)!;
    expect(made.map((group) => runGroup.parse(group))).toEqual(made);
    expect(made.map(({ key }) => key)).toEqual(['gruppe-1', 'gruppe-1-2']);
  });

  it.each(['', '0', '-3', '1.5', '12 ', '5001', 'a dozen'])('“%s” pieces', (count) => {
    expect(piecesOf({ ...two[0]!, count })).toBe(count === '12 ' ? 12 : undefined);
  });

  it.each([
    ['a sum that is not the count', [{ ...two[0]!, count: '11' }, two[1]!]],
    [
      'no number',
      [
        { ...two[0]!, count: '' },
        { ...two[1]!, count: '24' },
      ],
    ],
    ['no part', [{ ...two[0]!, parts: [] }, two[1]!]],
  ])('are not ready with %s', (_, groups) => {
    expect(groupsOf(groups, 24)).toBeUndefined();
  });

  it('are summed while one of them is being typed', () => {
    expect(sumOf([{ ...two[0]!, count: '' }, two[1]!])).toBe(12);
  });
});
