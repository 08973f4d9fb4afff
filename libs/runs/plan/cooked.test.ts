import { describe, expect, it } from 'vitest';
import type { PieceDesign, PlanDocument, Stage } from '#contract';
import { planRuns, type RunsInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';

const file = loadRunFile('ok', 'hot-process-loaf');
const [design] = file.designs as [PieceDesign];
const DAY = 1440;

function planned(more: Partial<RunsInput> = {}): PlanDocument {
  const found = planRuns({ ...file, ...more }, { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 200 });
  if (!found.ok) throw new Error(JSON.stringify(found.issues));
  return found.value;
}

function issuesOf(stages: readonly Stage[], parts = design.parts): readonly unknown[] {
  const found = planRuns(
    { ...file, designs: [{ ...design, parts, stages: [...stages] }] },
    { now: minuteOfIso('2026-11-27T12:00:00Z'), scenarios: 10 },
  );
  return found.ok ? [] : found.issues;
}

const without = (...keys: string[]): Stage[] => design.stages.filter(({ key }) => !keys.includes(key));
const timeOf = (document: PlanDocument, key: string, field: 'startAt' | 'endAt'): number =>
  minuteOfIso(document.runs[0]?.stages.find((each) => each.key === key)?.[field] ?? '');
const risksOf = (document: PlanDocument): string[] =>
  document.runs[0]?.amounts.flatMap(({ risks }) => risks.map(({ code }) => code)) ?? [];

describe('soap that is cooked', () => {
  const cooked = planned();
  const start = (key: string): number => timeOf(cooked, key, 'startAt');
  const end = (key: string): number => timeOf(cooked, key, 'endAt');

  it('is tested in the pot, moulded while hot, unmoulded the next day, and wrapped after weeks', () => {
    expect(cooked.status).toBe('planned');
    expect(start('test')).toBeGreaterThanOrEqual(end('cook'));
    expect(start('mould')).toBeGreaterThanOrEqual(end('test'));
    // It stays on the heat until it is tested, so what it is soft for counts from there.
    expect(end('mould') - end('test')).toBeLessThan(40);
    expect(start('unmould') - end('mould')).toBeGreaterThan(4 * 60);
    expect(start('unmould') - end('mould')).toBeLessThan(1.5 * DAY);
    expect(start('wrap') - end('unmould')).toBeGreaterThan(14 * DAY);
  });

  it('has neither ash nor heat in the mould to fear, nor batter that is too stiff to pour', () => {
    const stages = without('cook', 'test');
    const recipes = file.recipes.map((each) => ({
      ...each,
      batterTemperatureC: 50,
      lyeConcentrationPercent: 28,
    }));
    expect(risksOf(planned({ recipes, designs: [{ ...design, stages }] }))).toContain('soap.overheats');
    expect(risksOf(cooked).filter((code) => code.startsWith('soap.') || code === 'batter.pace')).toEqual([]);
    expect(cooked.runs[0]?.filling ?? []).toEqual([]);
  });

  it('is mixed as hot as it is cooked, which batter that is poured is not', () => {
    expect(issuesOf(without('cook', 'test'))).toMatchObject([
      { code: 'clocks.out-of-range', path: ['recipes', 0, 'batterTemperatureC'], value: 80 },
    ]);
  });

  it('is not called ready before its test, and so needs one', () => {
    expect(issuesOf(without('test'))).toMatchObject([
      { code: 'design.cook-needs-test', path: ['designs', 0, 'parts', 0, 'key'], title: 'Base' },
    ]);
    // A second pot is another batch: the test of the first says nothing of it.
    const [base] = design.parts;
    const [some] = design.stages;
    const ofTop = (kind: Stage['kind']): Stage => ({
      ...some!,
      key: `${kind}-top`,
      title: kind,
      kind,
      part: 'top',
    });
    const second = [...design.stages, ...(['mix', 'cook', 'layer'] as const).map(ofTop)];
    const parts = [
      { ...base, amount: { by: 'cavity', fillPercent: 50 } },
      { ...base, key: 'top', title: 'Top', amount: { by: 'cavity', fillPercent: 40 } },
    ] as typeof design.parts;
    expect(issuesOf(second, parts)).toMatchObject([
      { code: 'design.cook-needs-test', path: ['designs', 0, 'parts', 1, 'key'], title: 'Top' },
    ]);
    expect(issuesOf([...second.slice(0, -1), ofTop('zap-test'), ...second.slice(-1)], parts)).toEqual([]);
    const links = [{ from: 'cut', to: 'test', atLeastMin: 60 * DAY }];
    const stages = [...without('test'), design.stages.find(({ key }) => key === 'test')!];
    const late = planned({ designs: [{ ...design, stages, links }] });
    expect(minuteOfIso(late.runs[0]?.ready?.low ?? '')).toBeGreaterThanOrEqual(timeOf(late, 'test', 'endAt'));
    expect(timeOf(late, 'test', 'startAt') - timeOf(late, 'cut', 'endAt')).toBeGreaterThanOrEqual(60 * DAY);
  });
});

describe('soap that is melted again', () => {
  const stages = without('lye', 'fats', 'mix').map((stage): Stage =>
    stage.key === 'cook' ? { ...stage, kind: 'rebatch' } : stage,
  );
  const again = planned({ designs: [{ ...design, stages }] });

  it('is tested and moulded as cooked soap is, and stays in its mould for longer', () => {
    expect(timeOf(again, 'mould', 'startAt')).toBeGreaterThanOrEqual(timeOf(again, 'test', 'endAt'));
    const firm = (document: PlanDocument): number =>
      document.runs[0]?.clocks.find(({ state }) => state === 'firm')?.now.likely ?? NaN;
    expect(firm(again)).toBeGreaterThan(2 * firm(planned()));
  });
});
