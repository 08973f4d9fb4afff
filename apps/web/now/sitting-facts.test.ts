import { expect, it } from 'vitest';
import type { PlanDocument } from '#contract';
import { planRuns, writeBatchSheet } from '#runs';
import { minuteOf } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { sheetCards } from '../run/sheet-cards.js';
import { weighByStage } from '../run/sheet-sittings.js';
import { weighSections } from '../run/weigh-sections.js';
import { run as words } from '../words/en/run.js';
import { isAhead, sittingsOf, type BenchRun } from './bench-view.js';
import { gearFor, materialsFor, runsOf, toolsFor } from './sitting-facts.js';

const whole = loadRunFile('demo', 'rockpool-tiles');
const file = { ...whole, runs: whole.runs.slice(0, 1), log: [] };
const [order] = file.runs;
const design = file.designs.find(({ key }) => key === order!.design)!;
const planned = planRuns(file, { now: minuteOf(Date.parse('2026-11-25T17:00Z')), scenarios: 30 });
if (!planned.ok) throw new Error(JSON.stringify(planned.issues));
const document: PlanDocument = planned.value;
const at = document.madeAt;
const stored = { id: 'one', key: order!.key, version: 1, state: 'planned', order: order! } as const;
const bench: BenchRun = { run: { ...stored, createdAt: at, updatedAt: at }, document, design };
const sittings = sittingsOf([bench], []);
const written = writeBatchSheet(file);
if (!written.ok) throw new Error(JSON.stringify(written.issues));
const { amounts, batches } = written.value.runs[0]!;
const weighed = weighByStage(document.runs[0]!.stages, sheetCards(amounts, batches));

const sittingWith = (kind: string) =>
  sittings.find(({ stages }) => stages.some(({ stage }) => stage.kind === kind))!;
const weighIn = (sitting: (typeof sittings)[number]) =>
  sitting.stages.flatMap(({ stage }) => weighed.get(stage) ?? []);

it('names the run of a sitting with its pieces and the mould of what is handled', () => {
  const pouring = sittingWith('pour');
  const [run, ...others] = runsOf(pouring, [bench]);
  expect(others).toEqual([]);
  expect(run).toMatchObject({ id: 'one', title: order!.title, count: order!.count });
  const cast = design.parts.flatMap((part) =>
    'mould' in part && part.mould !== undefined ? [part.mould] : [],
  );
  expect(cast.length).toBeGreaterThan(0);
  expect(run!.moulds.every((mould) => cast.includes(mould))).toBe(true);
  const done = { ...pouring, stages: pouring.stages.map((each) => ({ ...each, state: 'done' as const })) };
  expect(runsOf(done, [bench])).toEqual([]);
});

it('gets out the moulds where something is poured, and not where it comes out of them', () => {
  expect(gearFor(sittingWith('pour').stages, [bench]).moulds.length).toBeGreaterThan(0);
  const unmoulding = sittingWith('unmould').stages.filter(({ stage }) => stage.kind === 'unmould');
  expect(gearFor(unmoulding, [bench]).moulds).toEqual([]);
  const asked = design.stages.flatMap(({ needs }) => needs);
  const all = gearFor(
    sittings.flatMap(({ stages }) => stages),
    [bench],
  ).equipment;
  expect([...all.keys()].sort()).toEqual([...new Set(asked.map(({ equipment }) => equipment))].sort());
});

it('gets out each tool once, goggles wherever lye is at work, scales wherever something is weighed', () => {
  for (const sitting of sittings) {
    const found = toolsFor(sitting.stages, weighIn(sitting));
    expect(new Set(found).size).toBe(found.length);
    expect(found.includes('goggles') && found.includes('gloves')).toBe(false);
    const isCaustic = sitting.stages.some(({ stage }) =>
      stage.cautions.some(({ code }) => code === 'caution.lye'),
    );
    expect(found.includes('goggles')).toBe(isCaustic);
    expect(found.includes('scales')).toBe(weighIn(sitting).length > 0);
  }
});

it('adds up each material over the batches of a sitting', () => {
  const sections = sittings.flatMap((sitting) =>
    weighIn(sitting).flatMap((each) => weighSections(each, words.sheet, (_, title) => title)),
  );
  const materials = materialsFor(sections);
  expect(new Set(materials.map(({ key }) => key)).size).toBe(materials.length);
  const olive = batches.flatMap((batch) => batch.amounts.fats).filter(({ fat }) => fat === 'olive');
  expect(olive.length).toBeGreaterThan(1);
  expect(materials.find(({ key }) => key === 'olive')?.massG).toBeCloseTo(
    olive.reduce((sum, { massG }) => sum + massG, 0),
    6,
  );
});

it('calls a sitting ahead until an hour before it begins', () => {
  const [sitting] = sittings;
  expect(isAhead(sitting!, sitting!.startAt - 61 * 60_000)).toBe(true);
  expect(isAhead(sitting!, sitting!.startAt - 60 * 60_000)).toBe(false);
});
