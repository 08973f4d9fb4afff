import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  reconcileNudges,
  stageOf,
  toldToQueue,
  type DesiredNudge,
  type KnownNudge,
} from './reconcile-nudges.js';

fc.configureGlobal({ seed: 1843 });

const MINUTE_MS = 60_000;
const NOW = new Date('2026-11-27T18:00:00Z');
const at = (minutes: number): Date => new Date(NOW.getTime() + minutes * MINUTE_MS);

const wanted = (over: Partial<DesiredNudge> = {}): DesiredNudge => ({
  ...{ stage: 'unmould', attempt: 1, kind: 'time-for-it', title: 'Unmould' },
  ...{ startAt: at(30), lastCallAt: at(90), dueAt: at(30) },
  ...over,
});
const known = (over: Partial<KnownNudge> = {}): KnownNudge => ({
  ...{ id: 'known', stageKey: 'unmould', attempt: 1, kind: 'time-for-it', title: 'Unmould' },
  ...{ startAt: at(30), lastCallAt: at(90), dueAt: at(30) },
  ...{ status: 'waiting', version: 3, deliveredAt: null },
  ...over,
});
const delivered = (over: Partial<KnownNudge> = {}): KnownNudge =>
  known({ id: 'told', status: 'delivered', deliveredAt: NOW, dueAt: NOW, ...over });

const OPEN = new Set(['unmould 1']);
function reconcile(rows: KnownNudge[], desired: DesiredNudge[], openStages: ReadonlySet<string> = OPEN) {
  let ids = 0;
  return reconcileNudges(rows, desired, openStages, { now: NOW, newId: () => `new-${String((ids += 1))}` });
}

describe('the nudges of a new plan', () => {
  it('are made where none waits, each under an id of its own, and told to the queue', () => {
    const [one, other] = [wanted(), wanted({ kind: 'last-call', dueAt: at(60) })];
    const changes = reconcile([], [one, other]);
    expect(changes).toEqual({
      made: [
        { ...one, id: 'new-1' },
        { ...other, id: 'new-2' },
      ],
      ...{ changed: [], kept: [], cancelled: [] },
    });
    expect(toldToQueue(changes)).toEqual({
      moved: [
        { id: 'new-1', version: 1, dueAt: at(30) },
        { id: 'new-2', version: 1, dueAt: at(60) },
      ],
      cancelled: [],
    });
  });

  it('stay as they are where they are wanted just so, without a word to the queue', () => {
    const changes = reconcile([known()], [wanted()]);
    expect(changes).toEqual({ made: [], changed: [], kept: ['known'], cancelled: [] });
    expect(toldToQueue(changes)).toEqual({ moved: [], cancelled: [] });
  });

  it.each([
    ['it is due', { dueAt: at(31) }],
    ['its stage begins', { startAt: at(31) }],
    ['its window closes', { lastCallAt: at(91) }],
    ['its window no longer closes', { lastCallAt: null }],
    ['it is called', { title: 'Turn out' }],
  ])('go by another version when what changes is how or when %s', (_, change) => {
    const [row, want] = [known(), wanted(change)];
    const changes = reconcile([row], [want]);
    expect(changes).toEqual({ made: [], changed: [{ row, want }], kept: [], cancelled: [] });
    expect(toldToQueue(changes)).toEqual({
      moved: [{ id: 'known', version: 4, dueAt: want.dueAt }],
      cancelled: [],
    });
  });

  it('stay as they are where no window closes, then as now', () => {
    expect(reconcile([known({ lastCallAt: null })], [wanted({ lastCallAt: null })]).kept).toEqual(['known']);
  });

  it.each([
    ['stage', { stage: 'turn' }],
    ['attempt', { attempt: 2 }],
    ['kind', { kind: 'last-call' as const }],
  ])('are not those of another %s', (_, other) => {
    const { made, cancelled } = reconcile([known()], [wanted(other)]);
    expect([made.length, cancelled]).toEqual([1, [{ id: 'known', version: 3 }]]);
  });

  it('are cancelled where they are not wanted, and their alarms taken away', () => {
    const changes = reconcile([known()], []);
    expect(toldToQueue(changes)).toEqual({ moved: [], cancelled: [{ id: 'known', version: 3 }] });
  });

  it('stay to be told late where they are overdue and their stage is open', () => {
    const [overdue, dueNow] = [known({ dueAt: at(-5) }), known({ dueAt: NOW })];
    expect(reconcile([overdue], []).cancelled).toEqual([]);
    expect(reconcile([dueNow], []).cancelled).toEqual([]);
    expect(reconcile([known({ dueAt: at(0.001) })], []).cancelled).toHaveLength(1);
    expect(reconcile([overdue], [], new Set(['unmould 2', 'turn 1'])).cancelled).toHaveLength(1);
  });

  it('leave what was told as it is: it is neither changed nor cancelled', () => {
    expect(reconcile([delivered()], [])).toEqual({ made: [], changed: [], kept: [], cancelled: [] });
  });
});

describe('what was told within the hour', () => {
  it('is not told again by a plan made anew', () => {
    expect(reconcile([delivered()], [wanted({ dueAt: at(59.999) })]).made).toEqual([]);
    expect(reconcile([delivered()], [wanted({ dueAt: at(60) })]).made).toHaveLength(1);
  });

  it('is what was due last, in whatever order it is known', () => {
    const [early, late] = [delivered({ dueAt: at(-120) }), delivered({ dueAt: at(-10) })];
    for (const rows of [
      [early, late],
      [late, early],
    ])
      expect(reconcile(rows, [wanted({ dueAt: at(40) })]).made).toEqual([]);
  });

  it('keeps nothing else back', () => {
    const others = [
      delivered({ stageKey: 'turn' }),
      delivered({ attempt: 2 }),
      delivered({ kind: 'window-opens' }),
    ];
    expect(reconcile(others, [wanted()]).made).toHaveLength(1);
  });

  it('was not told where a clock that was ahead said it: more than ten minutes after now', () => {
    const toldAt = (minutes: number) => [delivered({ deliveredAt: at(minutes) })];
    expect(reconcile(toldAt(10), [wanted()]).made).toEqual([]);
    expect(reconcile(toldAt(10.001), [wanted()]).made).toHaveLength(1);
  });
});

describe('any two plans', () => {
  const minutes = fc.integer({ min: -200, max: 200 });
  const subject = fc.record({
    stage: fc.constantFrom('pour', 'unmould', 'turn'),
    attempt: fc.integer({ min: 1, max: 2 }),
    kind: fc.constantFrom('window-opens', 'time-for-it', 'last-call'),
  });
  const anyWanted = fc
    .record({ subject, due: minutes, title: fc.constantFrom('a', 'b') })
    .map(({ subject: of, due, title }) => wanted({ ...of, title, dueAt: at(due) }));
  const ofSubject = ({ stage, attempt, kind }: DesiredNudge): string => `${stage} ${String(attempt)} ${kind}`;
  const plan = fc.uniqueArray(anyWanted, { selector: ofSubject, maxLength: 8 });
  const asRows = (nudges: readonly DesiredNudge[]): KnownNudge[] =>
    nudges.map(({ stage, ...rest }, i) => known({ ...rest, stageKey: stage, id: `row-${String(i)}` }));

  it('leave nothing waiting but what the second wants, and what is overdue for an open stage', () => {
    fc.assert(
      fc.property(plan, plan, fc.subarray(['pour 1', 'unmould 1', 'turn 2']), (first, second, open) => {
        const rows = asRows(first);
        const { made, changed, kept, cancelled } = reconcile(rows, second, new Set(open));
        const touched = [...changed.map(({ row }) => row.id), ...kept, ...cancelled.map(({ id }) => id)];
        expect(new Set(touched).size).toBe(touched.length);
        // All that the second wants is there: made, changed to it, or as it was.
        expect(made.length + changed.length + kept.length).toBe(second.length);
        for (const { row, want } of changed)
          expect(want).toMatchObject({ stage: row.stageKey, kind: row.kind });
        for (const row of rows.filter(({ id }) => !touched.includes(id))) {
          expect(row.dueAt.getTime()).toBeLessThanOrEqual(NOW.getTime());
          expect(open).toContain(stageOf(row));
        }
      }),
    );
  });

  it('that are the same change nothing', () => {
    fc.assert(
      fc.property(plan, (same) => {
        const changes = reconcile(asRows(same), same);
        expect(toldToQueue(changes)).toEqual({ moved: [], cancelled: [] });
        expect(changes.kept).toHaveLength(same.length);
      }),
    );
  });
});
