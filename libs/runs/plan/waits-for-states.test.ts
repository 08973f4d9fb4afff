import { expect, it } from 'vitest';
import { closingStatesOf, openingStatesOf, soapStates, type PieceDesign } from '#contract';
import { planRuns } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const [design] = file.designs as [PieceDesign];

/** Days from the first hour of the run to the turning of the cups, where that waits for a state of the upper layer. */
function turnedAfterDays(opens: (typeof openingStatesOf.batch)[number]): number {
  const waits = [...design.waits, { stage: 'turn', part: 'over', opens }] as PieceDesign['waits'];
  const designs = [{ ...design, links: [], waits }];
  const now = minuteOfIso('2026-11-27T12:00:00Z');
  const found = planRuns({ ...file, designs }, { now, scenarios: 10 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  const turn = found.value.runs[0]?.stages.find(({ key }) => key === 'turn');
  return (minuteOfIso(turn?.startAt ?? '') - now) / 1440;
}

it('lets a stage wait for every state that soap passes through in its mould and its cure', () => {
  const days = (['patchable', 'ash-safe', 'handled', 'usable', 'cured', 'best'] as const).map(
    turnedAfterDays,
  );
  expect(days).toEqual([...days].sort((a, b) => a - b));
  const [patchable = NaN, , handled = NaN, usable = NaN, cured = NaN, best = NaN] = days;
  expect(patchable).toBeLessThan(handled);
  expect(handled).toBeGreaterThan(2);
  expect(usable).toBeGreaterThan(handled);
  expect(cured).toBeGreaterThan(28);
  expect(best).toBeGreaterThan(cured + 7);
});

it('knows no state that nothing can wait for', () => {
  const waited = [...Object.values(openingStatesOf), ...Object.values(closingStatesOf)].flat() as string[];
  expect(soapStates.filter((state) => !waited.includes(state))).toEqual([]);
});
