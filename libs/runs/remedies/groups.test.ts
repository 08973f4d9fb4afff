import { describe, expect, it } from 'vitest';
import type { RemedyChange, RunOrder } from '#contract';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { changedInput } from './changed-input.js';

const file = loadRunFile('ok', 'parting-ways');
const order = file.runs[0]!;

const groupsAfter = (change: RemedyChange): string[] => {
  const after = changedInput(file, change);
  if (!after.ok) return after.issues.map(({ code, path }) => `${path.join('.')} ${code}`);
  return after.value.runs.map(
    ({ count, groups = [] }) => `${count}: ${groups.map((each) => `${each.key} ${each.count}`).join(', ')}`,
  );
};

describe('a change of a run whose pieces part ways', () => {
  it('makes fewer of each group', () => {
    expect(groupsAfter({ kind: 'count', run: 'cups', count: 18 })).toEqual(['18: coated 9, piped 9']);
  });

  it('is refused where a group would be left without a piece', () => {
    expect(groupsAfter({ kind: 'count', run: 'cups', count: 1 })).toEqual(['change.groups run.groups-sum']);
  });

  it('splits each group in two, and loses no piece', () => {
    const rest: RunOrder = {
      ...order,
      ...{ key: 'cups-rest', count: 14 },
      groups: [
        { ...order.groups![0]!, count: 12 },
        { ...order.groups![1]!, count: 2 },
      ],
    };
    expect(groupsAfter({ kind: 'split', run: 'cups', count: 10, rest })).toEqual([
      '10: piped 10',
      '14: coated 12, piped 2',
    ]);
  });
});
