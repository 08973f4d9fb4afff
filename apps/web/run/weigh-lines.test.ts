import { expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { run as words } from '../words/en/run.js';
import { weighGroups } from './weigh-lines.js';

const planned = planRuns(loadRunFileInput(), {
  now: minuteOf(Date.parse('2026-11-27T17:00Z')),
  scenarios: 10,
});
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const amounts = planned.value.runs[0]!.amounts;

function loadRunFileInput() {
  return { ...loadRunFile('ok', 'plain-tiles') };
}

it('leaves nothing of a batch out: what is weighed adds up to the batch', () => {
  const batches = amounts.filter(({ batch }) => batch !== undefined);
  expect(batches).toHaveLength(3);
  for (const part of batches) {
    const lines = weighGroups(part, words.sheet, (_, title) => title).flatMap((group) => group.lines);
    const carried = lines.reduce((sum, { carrier }) => sum + (carrier?.massG ?? 0), 0);
    const weighed = lines.reduce((sum, { massG }) => sum + massG, 0);
    expect(weighed + carried).toBeCloseTo(part.batch!.batchG, 6);
  }
});

it('has nothing to weigh for what is no batch', () => {
  const decor = amounts.find(({ kind }) => kind === 'decor')!;
  expect(weighGroups(decor, words.sheet, (_, title) => title)).toEqual([]);
});
