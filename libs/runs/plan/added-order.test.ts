import { describe, expect, it } from 'vitest';
import type { LogEntry, RunPlan } from '#contract';
import { checkEntry, planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');

/** The cups without a word of when they are to be unmoulded, and cut afterwards. */
const bare: RunsInput = {
  ...file,

  designs: file.designs.map((design) => ({
    ...design,
    stages: [
      { key: 'cut', title: 'Cut', kind: 'cut' as const, part: 'over', setupMin: 5, perPieceS: 0, needs: [] },
      ...design.stages,
    ],
    waits: design.waits.filter(({ stage }) => stage !== 'unmould'),
  })),
};

const withLog = (...entries: LogEntry[]): RunsInput => ({
  ...bare,
  log: entries.map((entry) => ({ run: 'cups', entry })),
});

function runOf(input: RunsInput, now = '2026-11-27T12:00:00Z'): RunPlan {
  const planned = planRuns(input, { now: minuteOfIso(now), scenarios: 100 });
  if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
  expect(planned.value.status).toBe('planned');
  const [run] = planned.value.runs;
  if (run === undefined) throw new Error('no run');
  return run;
}

const at = (run: RunPlan, key: string, end: 'startAt' | 'endAt' = 'startAt'): number =>
  minuteOfIso(run.stages.find((stage) => stage.key === key)?.[end] ?? '');

const firmOf = (run: RunPlan, part: string): number =>
  run.clocks.find((clock) => clock.part === part && clock.state === 'firm')?.now.likely ?? NaN;

const under: LogEntry = { kind: 'done', stage: 'pour-under', at: '2026-11-27T18:32:00Z' };
const over: LogEntry = { kind: 'done', stage: 'pour-over', at: '2026-11-27T19:52:00Z' };

describe('a design that does not say when it is unmoulded and cut', () => {
  it('is unmoulded once each part is likely to be firm, and cut after that', () => {
    const run = runOf(bare);
    for (const [part, pour] of [
      ['under', 'pour-under'],
      ['over', 'pour-over'],
    ] as const) {
      expect(at(run, 'unmould') - at(run, pour, 'endAt')).toBeGreaterThanOrEqual(
        Math.floor(firmOf(run, part)),
      );
    }
    expect(at(run, 'cut')).toBeGreaterThanOrEqual(at(run, 'unmould', 'endAt'));
  });

  it('is told what was added, in the plan and among the reasons', () => {
    const run = runOf(bare);
    expect(run.added).toEqual([
      { stage: 'cut', part: 'under', closes: 'cuttable-until' },
      { stage: 'cut', part: 'over', closes: 'cuttable-until' },
      { stage: 'unmould', part: 'under', opens: 'firm' },
      { stage: 'unmould', part: 'over', opens: 'firm' },
      { stage: 'cut', after: 'unmould' },
    ]);
    expect(run.stages.find(({ key }) => key === 'unmould')?.why).toContainEqual(
      expect.objectContaining({ code: 'why.opens', state: 'firm' }),
    );
    expect(runOf(file).added).toBeUndefined();
  });

  it('takes “not yet” for the unmoulding', () => {
    const notYet: LogEntry = { kind: 'not-yet', stage: 'unmould', at: '2026-11-29T18:00:00Z' };
    expect(checkEntry(withLog(under, over), 'cups', notYet)).toEqual([]);
    expect(at(runOf(withLog(under, over, notYet), notYet.at), 'unmould')).toBeGreaterThan(
      minuteOfIso(notYet.at),
    );
  });

  it('plans on from a log that was kept before the order was: unmoulded at once, cut before that', () => {
    const cut: LogEntry = { kind: 'done', stage: 'cut', at: '2026-11-27T20:00:00Z' };
    const unmould: LogEntry = { kind: 'done', stage: 'unmould', at: '2026-11-27T20:20:00Z' };
    const run = runOf(withLog(under, over, cut, unmould), '2026-11-27T20:30:00Z');
    expect(run.stages.filter(({ status }) => status === 'done').map(({ key }) => key)).toEqual([
      'pour-under',
      'pour-over',
      'cut',
      'unmould',
    ]);
  });

  it('plans on where a stage is logged before the one that was put before it', () => {
    const cut: LogEntry = { kind: 'done', stage: 'cut', at: '2026-11-27T20:00:00Z' };
    const run = runOf(withLog(under, over, cut), '2026-11-27T20:10:00Z');
    expect(at(run, 'unmould') - minuteOfIso(over.at)).toBeGreaterThanOrEqual(Math.floor(firmOf(run, 'over')));
    expect(run.added).not.toContainEqual({ stage: 'cut', after: 'unmould' });
  });

  it('waits for the part that is left where the other is dropped', () => {
    const seized: LogEntry = {
      kind: 'mishap',
      part: 'over',
      mishap: 'seized',
      response: 'drop-part',
      at: '2026-11-27T19:40:00Z',
    };
    const told = { ...file, log: [under, seized].map((entry) => ({ run: 'cups', entry })) };
    const run = runOf(told, '2026-11-27T19:45:00Z');
    expect(at(run, 'unmould') - minuteOfIso(under.at)).toBeGreaterThanOrEqual(
      Math.floor(firmOf(run, 'under')),
    );
  });
});
