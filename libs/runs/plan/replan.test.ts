import { describe, expect, it } from 'vitest';
import type { LogEntry, PlanDocument } from '#contract';
import { comparePlans, replan, undecidedReplan, type Replan, type ReplanWish, type RunsInput } from '#runs';
import { isoInstant, minute, minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'two-layer');
const now = minuteOfIso('2026-11-27T12:00:00Z');

function planned(wish: Partial<ReplanWish> = {}): Replan {
  const found = replan({ input: file, now, ...wish });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

const first = planned();
const startOf = ({ runs }: PlanDocument, key: string): string =>
  runs[0]?.stages.find((stage) => stage.key === key)?.startAt ?? '';

/** The cure takes weeks: no plan is cured by then. */
const impossible: RunsInput = { ...file, runs: file.runs.map((run) => ({ ...run, readyBy: '2026-12-06' })) };
/** What was logged makes no sense any more. */
const senseless: RunsInput = { ...file, designs: [] };

describe('the next plan of a run', () => {
  it('changes nothing where it is the first, and reminds of every stage', () => {
    expect(first.document.status).toBe('planned');
    expect(first.changes).toEqual([]);
    expect(new Set(first.nudges.map(({ stage }) => stage)).size).toBe(4);
  });

  it('moves nothing where all goes as planned, and says what is done', () => {
    const { startAt: startedAt, endAt } = first.document.runs[0]!.stages[0]!;
    const done: LogEntry = { kind: 'done', stage: 'pour-under', startedAt, at: endAt };
    const input = { ...file, log: [{ run: 'cups', entry: done }] };
    const then = minuteOfIso(endAt);
    const { document, changes, nudges } = planned({ input, now: then, before: first.document });
    for (const key of ['pour-over', 'unmould', 'turn']) {
      expect(startOf(document, key)).toBe(startOf(first.document, key));
    }
    expect(changes).toMatchObject([{ stage: 'pour-under', change: 'done' }]);
    expect(changes).toEqual(comparePlans(first.document, document));
    expect(new Set(nudges.map(({ stage }) => stage))).toEqual(new Set(['pour-over', 'unmould', 'turn']));
  });

  it('holds on to the plan that is told, to the latest, or to none', () => {
    const later = minuteOfIso(startOf(first.document, 'turn')) + 15;
    const put = (document: PlanDocument): PlanDocument => ({
      ...document,
      runs: document.runs.map((run) => ({
        ...run,
        stages: run.stages.map((stage) =>
          stage.key === 'turn' ? { ...stage, startAt: isoInstant(minute(later)) } : stage,
        ),
      })),
    });
    const moved = put(first.document);
    const turned = (wish: Partial<ReplanWish>): number =>
      minuteOfIso(startOf(planned(wish).document, 'turn'));
    expect(turned({ before: moved })).toBe(later);
    expect(turned({ before: first.document, holdTo: moved })).toBe(later);
    expect(turned({ before: moved, afresh: true })).toBe(later - 15);
  });

  it('keeps what is open where it was when there is no plan from here', () => {
    const { document, changes, nudges } = planned({ input: impossible, before: first.document });
    expect(document.status).toBe('conflict');
    expect(document.runs[0]?.stages).toEqual(first.document.runs[0]?.stages);
    expect(changes).toEqual([]);
    expect(nudges).toEqual(first.nudges);
    // A first plan has nothing to keep.
    expect(planned({ input: impossible }).document.runs[0]?.stages).toEqual([]);
  });

  it('is refused where the input makes no sense, unless something logged must not be lost', () => {
    const issues = [{ code: 'design.unknown', path: ['runs', 0, 'design'], value: 'cup-soap' }];
    expect(replan({ input: senseless, now, before: first.document })).toMatchObject({ ok: false, issues });
    expect(replan({ input: senseless, now, mustKeep: true })).toMatchObject({ ok: false, issues });
    const { document } = planned({ input: senseless, before: first.document, mustKeep: true });
    expect(document).toMatchObject({
      ...{ status: 'conflict', sittings: [], odds: null, weakLinks: [], guarantee: null },
      madeAt: isoInstant(now),
      conflict: [
        {
          ...{ code: 'conflict.input', issue: 'design.unknown', path: 'runs[0].design' },
          value: 'cup-soap',
        },
      ],
    });
    expect(document.runs).toEqual(first.document.runs);
  });

  it('is refused where a stage cannot be where it is put', () => {
    const pin = (startAt: string) => ({ run: 'cups', stage: 'turn', startAt: minuteOfIso(startAt) });
    const found = replan({ input: file, now, pins: [pin('2026-11-29T03:00:00Z')] });
    expect(found).toEqual({
      ok: false,
      issues: [{ code: 'plan.pins-impossible', path: ['pins'], value: ['turn'] }],
    });
    const at = startOf(first.document, 'turn');
    expect(startOf(planned({ pins: [pin(at)] }).document, 'turn')).toBe(at);
  });

  it('stays as it was where there was no time to make one', () => {
    const later = minute(now + 60);
    const { document, changes, nudges } = undecidedReplan({
      input: file,
      now: later,
      before: first.document,
    });
    expect(document).toEqual({
      ...first.document,
      ...{ status: 'undecided', madeAt: isoInstant(later), sittings: [], odds: null, weakLinks: [] },
      ...{ guarantee: null, conflict: [], resolution: undefined },
    });
    expect(changes).toEqual([]);
    expect(nudges).toEqual(first.nudges);
  });
});
