import { describe, expect, it } from 'vitest';
import { planRuns, writeBatchSheet } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { sheetCards } from './sheet-cards.js';
import { cautionsOnce, sheetSittings } from './sheet-sittings.js';

const file = loadRunFile('demo', 'rockpool-tiles');
const planned = planRuns(file, { now: minuteOf(Date.parse('2026-11-25T17:00Z')), scenarios: 50 });
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const sheet = writeBatchSheet(file);
if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
const { stages } = planned.value.runs[0]!;
const { amounts, batches } = sheet.value.runs[0]!;
const cards = sheetCards(amounts, batches);
const sittings = sheetSittings(stages, planned.value.sittings, cards);

describe('the bench sheet of a run', () => {
  it('has every stage once, by sitting, in the order of doing', () => {
    expect(sittings.length).toBeGreaterThan(2);
    const told = sittings.flatMap((sitting) => sitting.stages.map(({ stage }) => stage));
    expect(new Set(told)).toEqual(new Set(stages));
    expect(told).toHaveLength(stages.length);
    const starts = told.map(({ startAt }) => Date.parse(startAt));
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
    for (const { from, to, stages: own } of sittings) {
      expect(
        own.every(({ stage }) => Date.parse(stage.startAt) >= from && Date.parse(stage.endAt) <= to),
      ).toBe(true);
    }
  });

  it('has each thing to weigh once: lye where it is made, fats where they are melted, the rest where they are mixed', () => {
    const weighed = sittings.flatMap((sitting) =>
      sitting.stages.flatMap(({ stage, weigh }) =>
        weigh.flatMap(({ card, kinds }) => [...kinds].map((kind) => ({ stage, card, kind }))),
      ),
    );
    for (const card of cards) {
      const own = weighed.filter((each) => each.card === card);
      expect(own.map(({ kind }) => kind).toSorted()).toEqual(['batter', 'fats', 'lye']);
    }
    const deep = weighed.filter(({ card }) => 'part' in card && card.part.part === 'deep');
    expect(deep.map(({ kind, stage }) => `${kind}: ${stage.kind}`)).toEqual([
      'lye: make-lye',
      'fats: melt-fats',
      'batter: mix',
    ]);
  });

  it('keeps what was done outside the sittings of the plan by the evening on which it was', () => {
    const past = stages.slice(0, 3).map((stage, i) => {
      const at = new Date(Date.parse('2026-11-20T18:00Z') + [0, 1, 26][i]! * 3_600_000).toISOString();
      return { ...stage, status: 'done' as const, startAt: at, endAt: at };
    });
    expect(sheetSittings(past, [], cards).map((sitting) => sitting.stages.length)).toEqual([2, 1]);
  });

  it('tells each caution once in a sitting, that of lye no later than where lye is made', () => {
    for (const sitting of sittings) {
      const told = cautionsOnce(sitting.stages).flatMap(({ own }) => own.map(({ code }) => code));
      expect(new Set(told).size).toBe(told.length);
    }
    const [evening] = sittings;
    const [made] = evening!.stages;
    expect(made!.stage.kind).toBe('make-lye');
    expect([...cautionsOnce(evening!.stages)[1]!.above]).toContain('caution.lye');
  });

  it('tells of lye where it is made, though the fats of that batch were weighed before', () => {
    const deep = cards.find((card) => 'part' in card && card.part.part === 'deep')!;
    const [lye, fats] = (['make-lye', 'melt-fats'] as const).map((kind) =>
      stages.find((stage) => stage.kind === kind && stage.part === 'deep')!,
    );
    const [melting, making] = cautionsOnce([
      { stage: fats!, weigh: [{ card: deep, kinds: new Set(['fats']) }] },
      { stage: lye!, weigh: [{ card: deep, kinds: new Set(['lye']) }] },
    ]);
    expect(melting!.own.map(({ code }) => code)).not.toContain('caution.lye');
    expect([...making!.above]).not.toContain('caution.lye');
  });
});
