import { describe, expect, it } from 'vitest';
import { groupsToChoose, mostAffected } from './affected-groups.js';

const plan = {
  count: 24,
  groups: [
    { key: 'coated', title: 'Coated', count: 10, parts: ['base', 'coat'] },
    { key: 'piped', title: 'Piped', count: 14, parts: ['base', 'foam'] },
  ],
};

describe('pieces of a part that went wrong', () => {
  it('are of a group to choose only where several have it', () => {
    expect(groupsToChoose(plan, 'base').map(({ key }) => key)).toEqual(['coated', 'piped']);
    expect(groupsToChoose(plan, 'coat')).toEqual([]);
    expect(groupsToChoose({}, 'base')).toEqual([]);
  });

  it('are no more than have it', () => {
    expect(mostAffected(plan, 'base', undefined)).toBe(24);
    expect(mostAffected(plan, 'base', 'piped')).toBe(14);
    expect(mostAffected(plan, 'coat', undefined)).toBe(10);
    expect(mostAffected({ count: 7 }, 'coat', undefined)).toBe(7);
  });
});
