import { expect, it } from 'vitest';
import { ruleList, stateList } from './rule-list.js';
import { rulesVersion } from './rules-version.js';

it('is another name when a state or a table is another, and else the same', () => {
  const slower = stateList().map((line, i) => (i === 5 ? { ...line, baseMin: line.baseMin + 1 } : line));
  const other = ruleList().map((line, i) =>
    i === 7
      ? { ...line, table: line.table.map(({ value, factor }) => ({ value, factor: factor + 1 })) }
      : line,
  );
  const names = [rulesVersion(), rulesVersion(slower), rulesVersion(stateList(), other)];
  expect(new Set(names).size).toBe(3);
  expect(rulesVersion(stateList(), ruleList())).toBe(names[0]);
});
