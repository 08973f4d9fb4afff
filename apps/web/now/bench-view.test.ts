import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument, RunFile } from '#contract';
import { checkEntry, planRuns, type RunsInput } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import type { QueuedEntry } from '../offline/queue-order.js';
import { doneLately, isGoingOn, sittingsOf, sittingsToShow, type BenchRun } from './bench-view.js';

const RUN = '0197a0e0-0000-7000-8000-000000000001';
const demos = ['rockpool-tiles', 'orchard-loaves', 'honeycomb-tartlets'] as const;

function planned(input: RunsInput, at: number, previous?: PlanDocument): PlanDocument {
  const result = planRuns(input, { now: minuteOf(at), scenarios: 60, previous });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

function benchRun(file: RunFile, document: PlanDocument): BenchRun {
  const [order] = file.runs;
  const [design] = file.designs.filter(({ key }) => key === order!.design);
  const at = document.madeAt;
  const stored = { id: RUN, key: order!.key, version: 1, state: 'planned', order: order! } as const;
  return { run: { ...stored, createdAt: at, updatedAt: at }, document, design: design! };
}

function queued(entry: LogEntry, place = 1): QueuedEntry {
  return { id: `id-${String(place)}`, place, runId: RUN, entry };
}

/** Only the first run of a demo, planned before its start. */
function demo(name: (typeof demos)[number]): { file: RunFile; document: PlanDocument } {
  const whole = loadRunFile('demo', name);
  const file = { ...whole, runs: whole.runs.slice(0, 1), log: [] };
  return { file, document: planned(file, Date.parse(`${file.runs[0]!.startAfter}:00Z`) - 3_600_000) };
}

describe.each(demos)('the bench during %s', (name) => {
  it('offers for each stage what the log would accept, from first to last', () => {
    const { file, document } = demo(name);
    const [order] = file.runs;
    let log: RunsInput['log'] = [];
    for (const step of document.runs[0]!.stages) {
      const now = step.startAt;
      const plan = log.length === 0 ? document : planned({ ...file, log }, Date.parse(now), document);
      const stages = sittingsOf([benchRun(file, plan)], []).flatMap((sitting) => sitting.stages);
      expect(stages).toHaveLength(document.runs[0]!.stages.length);
      for (const { stage, state, canBeNotFirm, after } of stages.filter((each) => each.state === 'open')) {
        expect(state).toBe('open');
        const refused = (kind: 'done' | 'not-yet'): boolean =>
          // What is hard to believe is asked back, and taken once it is confirmed.
          checkEntry({ ...file, log }, order!.key, { kind, stage: stage.key, at: now }).some(
            ({ code }) => code !== 'log.time-doubtful',
          );
        expect(after.length > 0, `done ${stage.key} before ${step.key}`).toBe(refused('done'));
        expect(canBeNotFirm, `not firm: ${stage.key} before ${step.key}`).toBe(!refused('not-yet'));
      }
      log = [...log, { run: order!.key, entry: { kind: 'done', stage: step.key, at: step.endAt } }];
    }
    const end = Date.parse(order!.startAfter) + 9e8;
    const over = sittingsOf([benchRun(file, planned({ ...file, log }, end, document))], []);
    expect(sittingsToShow(over, end)).toEqual([]);
  });

  it('shows every stage once, in sittings that are apart', () => {
    const { file, document } = demo(name);
    const sittings = sittingsOf([benchRun(file, document)], []);
    const keys = sittings.flatMap(({ stages }) => stages.map(({ stage }) => stage.key));
    expect([...keys].sort()).toEqual(document.runs[0]!.stages.map(({ key }) => key).sort());
    sittings.slice(1).forEach((sitting, index) => {
      expect(sitting.startAt - sittings[index]!.endAt).toBeGreaterThan(45 * 60_000);
    });
  });
});

describe('what is logged and not sent', () => {
  const { file, document } = demo('rockpool-tiles');
  const run = benchRun(file, document);
  const [first] = sittingsOf([run], []);
  const key = first!.stages[0]!.stage.key;
  const done = { kind: 'done', stage: key, at: first!.stages[0]!.stage.endAt } as const;

  it('counts as done at once, and lets what comes after it begin', () => {
    const [sitting] = sittingsOf([run], [queued(done)]);
    expect(sitting!.stages[0]!.state).toBe('logged');
    expect(first!.stages.some(({ after }) => after.length > 0)).toBe(true);
    const opened = sitting!.stages.filter((each, i) => each.after.length < first!.stages[i]!.after.length);
    expect(opened.length).toBeGreaterThan(0);
  });

  it('is among what was done lately; what is open is not', () => {
    const at = first!.startAt;
    expect(doneLately(sittingsOf([run], []), at)).toEqual([]);
    expect(doneLately(sittingsOf([run], [queued(done)]), at).map(({ stage }) => stage.key)).toEqual([key]);
    const log = [{ run: file.runs[0]!.key, entry: done }];
    const after = sittingsOf([benchRun(file, planned({ ...file, log }, Date.parse(done.at), document))], []);
    const ended = Date.parse(done.at);
    expect(doneLately(after, ended).map(({ stage }) => stage.key)).toEqual([key]);
    expect(doneLately(after, ended + 13 * 3_600_000)).toEqual([]);
  });

  it('is open again when the API has refused it', () => {
    const refusal = { status: 422, text: 'no', issues: [] };
    const [sitting] = sittingsOf([run], [{ ...queued(done), refusal }]);
    expect(sitting!.stages[0]!.state).toBe('open');
  });

  it('marks the stages of a part that went wrong', () => {
    const part = first!.stages[0]!.stage.part;
    const mishap = { kind: 'mishap', part, mishap: 'seized', at: done.at } as const;
    const [sitting] = sittingsOf([run], [queued(mishap)]);
    expect(sitting!.stages[0]).toMatchObject({ state: 'open', isNoted: true });
  });
});

it('shows what is to be done now before what was left open in an earlier sitting', () => {
  const { file, document } = demo('rockpool-tiles');
  const sittings = sittingsOf([benchRun(file, document)], []);
  const [first, second] = sittings;
  expect(sittingsToShow(sittings, first!.startAt - 1)).toEqual([first]);
  expect(sittingsToShow(sittings, first!.startAt)).toEqual([first]);
  expect(sittingsToShow(sittings, second!.startAt - 1)).toEqual([first]);
  expect(sittingsToShow(sittings, second!.startAt)).toEqual([second, first]);
});

describe('runs beside each other', () => {
  it('share a sitting where their sittings meet', () => {
    const { file, document } = demo('rockpool-tiles');
    const one = benchRun(file, document);
    const other = { ...one, run: { ...one.run, id: 'another' } };
    const [alone] = sittingsOf([one], []);
    const [both] = sittingsOf([one, other], []);
    expect(both!.stages).toHaveLength(2 * alone!.stages.length);
    expect([both!.startAt, both!.endAt]).toEqual([alone!.startAt, alone!.endAt]);
    expect(isGoingOn(both!, both!.startAt)).toBe(true);
    expect(isGoingOn(both!, both!.startAt - 1)).toBe(false);
    expect(isGoingOn(both!, both!.endAt + 2 * 3_600_000)).toBe(false);
  });
});
