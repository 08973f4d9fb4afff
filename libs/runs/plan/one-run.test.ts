import { describe, expect, it } from 'vitest';
import type { LogEntry } from '#contract';
import { occupancyOf, planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { inputOfOne } from './one-run.js';

const now = minuteOfIso('2026-11-27T18:40:00Z');
const options = { now, scenarios: 10 };
const file = loadRunFile('ok', 'two-layer');
const [first] = file.runs;
if (first === undefined) throw new Error('no run');
const mine = { ...first, key: 'mine', startAfter: '2026-12-04T18:00' };
const done: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const both: RunsInput = {
  ...file,
  runs: [first, mine],
  log: ['cups', 'mine'].map((run) => ({ run, entry: done })),
};

function alone(input: RunsInput, order = mine): RunsInput {
  const found = inputOfOne(input, order, options);
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

describe('the input as one of its runs sees it', () => {
  it('is that run with its log, and as it is asked for', () => {
    const wanted = { ...mine, readyBy: '2027-03-01' };
    const input = alone(both, wanted);
    expect(input.runs).toEqual([wanted]);
    expect(input.log).toEqual([{ run: 'mine', entry: done }]);
    expect(input.designs).toBe(both.designs);
  });

  it('has the hands and moulds that the others take, and what was taken before', () => {
    const others = { ...both, runs: [first], log: [{ run: 'cups', entry: done }] };
    const planned = planRuns(others, options);
    if (!planned.ok) throw new Error('refused');
    const taken = occupancyOf(planned.value, others);
    expect(taken.length).toBeGreaterThan(3);
    expect(alone(both).busy).toEqual(taken);
    const busy = [{ resource: 'hands', amount: 1, from: now, to: now }];
    const known = { ...others, busy };
    const replanned = planRuns(known, options);
    if (!replanned.ok) throw new Error('refused');
    expect(alone({ ...both, busy }).busy).toEqual([...busy, ...occupancyOf(replanned.value, known)]);
  });

  it('is all there is where it is alone', () => {
    const input = { ...both, runs: [mine] };
    expect(alone(input)).toEqual({ ...input, log: [{ run: 'mine', entry: done }] });
  });

  it('is taught by what the others logged, and keeps the lessons at hand', () => {
    expect(alone(both)).not.toHaveProperty('teachings');
    const seen: LogEntry = {
      ...{ kind: 'seen', part: 'under', state: 'light-trace', saw: 'just-now' },
      ...{ since: '2026-11-27T18:10:00Z', at: '2026-11-27T18:14:00Z' },
    };
    const log = [...both.log, { run: 'cups', entry: seen }];
    const taught = alone({ ...both, log, teachings: [] });
    expect(taught.teachings).toHaveLength(1);
    const [lesson] = taught.teachings ?? [];
    expect(JSON.stringify(lesson)).not.toBe(JSON.stringify(alone({ ...both, teachings: [] }).teachings?.[0]));
    expect(taught.learned).not.toEqual(alone(both).learned);
    // What the run itself logged teaches it in its own way.
    const own = [...both.log, { run: 'mine', entry: seen }];
    expect(alone({ ...both, log: own }).learned).toEqual(alone(both).learned);
  });

  it('is refused where the others make no sense', () => {
    const log = [...both.log, { run: 'cups', entry: done }];
    expect(inputOfOne({ ...both, log }, mine, options)).toMatchObject({
      ok: false,
      issues: [{ code: 'log.already-done' }],
    });
  });
});
