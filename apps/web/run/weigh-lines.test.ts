import { expect, it } from 'vitest';
import { planRuns } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { run as words } from '../words/en/run.js';
import { weighGroups } from './weigh-lines.js';

const amounts = amountsOf('plain-tiles');

function amountsOf(name: string) {
  const now = minuteOf(Date.parse('2026-11-27T17:00Z'));
  const planned = planRuns({ ...loadRunFile('ok', name) }, { now, scenarios: 10 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  return planned.value.runs[0]!.amounts;
}

it.each([
  ['plain-tiles', 3],
  ['goat-milk-bars', 1],
])('leaves nothing of a batch of %s out: what is weighed adds up to the batch', (name, count) => {
  const batches = amountsOf(name).filter(({ batch }) => batch !== undefined);
  expect(batches).toHaveLength(count);
  for (const part of batches) {
    const lines = weighGroups(part, words.sheet, (_, title) => title).flatMap((group) => group.lines);
    const carried = lines.reduce((sum, { carrier }) => sum + (carrier?.massG ?? 0), 0);
    const weighed = lines.reduce((sum, { massG }) => sum + massG, 0);
    expect(weighed + carried).toBeCloseTo(part.batch!.batchG, 6);
  }
});

it('weighs each liquid where it goes in, beside the plain water, by the name that the reader’s language has', () => {
  const [part] = amountsOf('goat-milk-bars');
  const groups = weighGroups(part!, words.sheet, (key) => `(${key})`);
  const titlesOf = (kind: string) =>
    groups.find((each) => each.kind === kind)?.lines.map(({ title }) => title) ?? [];
  expect(titlesOf('lye')).toEqual([words.sheet.water, '(goat-milk)', words.sheet.naoh]);
  expect(titlesOf('batter')).toEqual(['(coconut-milk)']);
  const [before] = amounts.filter(({ batch }) => batch !== undefined);
  // Plans from before say nothing of liquids.
  const { liquids: _, ...older } = before!.batch!;
  expect(weighGroups({ batch: older }, words.sheet, (_, title) => title).length).toBeGreaterThan(1);
});

it('has nothing to weigh for what is no batch', () => {
  const decor = amounts.find(({ kind }) => kind === 'decor')!;
  expect(weighGroups(decor, words.sheet, (_, title) => title)).toEqual([]);
});
