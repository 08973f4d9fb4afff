import { expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { planRuns, runFileInput, type RunsInput } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { withOpened } from './with-opened.js';

const read = runFileInput(loadRunFile('ok', 'two-layer'));
const input: RunsInput = read.ok ? read.value : (undefined as never);
const planned = planRuns(input, { now: minute(Date.parse('2026-11-27T08:00:00Z') / 60_000), scenarios: 10 });
const plan = planned.ok ? planned.value : (undefined as never);
const [run] = plan.runs;
const key = run?.run ?? '';
const at = '2026-11-29T09:00:00Z';
const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at };

it('puts beside a look and a stage that is done when the plan had the stage open', () => {
  const opensAt = run?.stages.find((stage) => stage.key === 'unmould')?.opensAt;
  expect(opensAt).toMatch(/^2026-/);
  expect(withOpened(notYet, key, plan)).toEqual({ ...notYet, opened: opensAt });
  const done: LogEntry = { kind: 'done', stage: 'unmould', at };
  expect(withOpened(done, key, plan)).toEqual({ ...done, opened: opensAt });
});

it('takes no word of whoever wrote it, and says nothing where no plan asked for it', () => {
  expect(withOpened({ ...notYet, opened: at }, key, plan)).not.toMatchObject({ opened: at });
  expect(withOpened({ ...notYet, opened: at }, 'another', plan)).toEqual(notYet);
  const isDone = run && {
    ...plan,
    runs: [{ ...run, stages: run.stages.map((stage) => ({ ...stage, status: 'done' as const })) }],
  };
  expect(isDone && withOpened(notYet, key, isDone)).toEqual(notYet);
});

it('leaves other entries as they are', () => {
  const seen: LogEntry = { kind: 'seen', part: 'under', state: 'firm', saw: 'already', at };
  expect(withOpened(seen, key, plan)).toBe(seen);
});
