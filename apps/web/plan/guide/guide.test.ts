import { describe, expect, it } from 'vitest';
import { writePlanInput } from '#runs';
import { minute } from '#units';
import { loadRunFile } from '../../../../tests/support/run-files.js';
import { answerWish } from '../../whatif/answer-wish.js';
import { checkGuide } from './check-guide.js';
import {
  contentsOf,
  countOf,
  emptyGuide,
  presets,
  revivedGuide,
  weekOf,
  withPart,
  type GuideDraft,
} from './guide-draft.js';

const NOW = '2026-11-27T12:00';
const file = loadRunFile('demo', 'orchard-loaves');
const nowMin = Date.parse('2026-11-27T12:00:00Z') / 60_000;
/** A workshop with hours and nothing else. */
const input = writePlanInput(
  { workshop: file.workshop, moulds: [], fats: [], recipes: [], designs: [], runs: [], log: [] },
  minute(nowMin),
);
const words = { part: 'Soap', pour: 'Pour', unmould: 'Unmould', cut: 'Cut' };
const names = { mould: 'Mould', soap: 'Soap' };
let made = 0;
const uuid = (): string => `id-${String(++made)}`;
const empty = emptyGuide(NOW, names, uuid);
const bars: GuideDraft = {
  ...empty,
  mould: { title: 'Bars', kind: 'silicone-cavity', waterFillG: 100, cavities: 6 },
  recipe: { ...empty.recipe, title: 'Kitchen soap' },
};
const checked = (draft: GuideDraft) => checkGuide(draft, contentsOf(draft, input, [], words), input);

describe('the first run', () => {
  it.each(Object.entries(presets))('is planned from nothing, with the mix %s', (_name, fats) => {
    expect(fats.reduce((sum, { percent }) => sum + percent, 0)).toBe(100);
    const { issues, request } = checked({ ...bars, recipe: { ...bars.recipe, fats } });
    expect(Object.values(issues).flat()).toEqual([]);
    const outcome = answerWish(request!.base, request!.wish, nowMin, 100);
    expect(outcome).toMatchObject({ ok: true, plan: { status: 'planned' } });
    if (!outcome.ok) return;
    // 100 g of water at 20 °C are 100.18 mL: density 0.9982 g/mL, CRC Handbook; from memory.
    const [amounts] = outcome.plan.runs[0]?.amounts ?? [];
    expect(amounts?.perPiece?.meanMl).toBeCloseTo(100.18, 1);
    expect(outcome.plan.runs[0]).toMatchObject({ count: 6, title: 'Kitchen soap' });
  });

  it('cuts what comes as a loaf', () => {
    const loaf = {
      ...bars,
      mould: { title: 'Loaf', kind: 'lined-wood', waterFillG: 1200, cavities: 1 },
      perCavity: 10,
    };
    const { request } = checked(loaf);
    const outcome = answerWish(request!.base, request!.wish, nowMin, 100);
    const stages = outcome.ok ? outcome.plan.runs[0]?.stages.map(({ key }) => key) : [];
    expect(stages).toEqual(['pour', 'unmould', 'cut']);
    expect(countOf(loaf)).toBe(10);
    expect(countOf({ ...loaf, count: 4 })).toBe(4);
    expect(countOf({ ...loaf, count: 40 })).toBe(10);
  });

  it('says what is missing where it is', () => {
    const nameless = { ...empty, recipe: { ...empty.recipe, title: undefined } };
    const { issues, request } = checked(nameless);
    expect(request).toBeNull();
    const paths = (step: 'mould' | 'recipe'): string[] => issues[step].map(({ path }) => path.join('.'));
    expect(paths('mould')).toEqual(['cavities', 'waterFillG']);
    expect(paths('recipe')).toContain('title');
    const shut = {
      monday: null,
      tuesday: null,
      wednesday: null,
      thursday: null,
      friday: null,
      saturday: null,
      sunday: null,
    };
    expect(checked({ ...bars, days: shut }).issues.hours).toMatchObject([{ code: 'hours.never-open' }]);
    const backwards = { monday: { from: '20:00', to: '18:00' } };
    expect(checked({ ...bars, days: backwards }).issues.hours).toMatchObject([
      { path: ['hours', 'weekly', 'monday', 0, 'to'] },
    ]);
  });

  it('keeps the days that nobody touched', () => {
    const { weekly } = file.workshop.hours;
    const week = weekOf({ ...bars, days: { monday: null, sunday: { from: '09:00', to: '12:00' } } }, weekly);
    expect(week).toEqual({ ...weekly, monday: [], sunday: [{ from: '09:00', to: '12:00' }] });
  });

  it('survives a reload, and does not begin in the past', () => {
    expect(revivedGuide(JSON.stringify(bars), '2026-11-28T09:00', names, uuid)).toEqual({
      ...bars,
      startAfter: '2026-11-28T09:00',
    });
    expect(revivedGuide('{', NOW, names, uuid)).toMatchObject({ perCavity: 1, startAfter: NOW });
  });

  it('saves anew what was changed after it was saved, and what is built on it', () => {
    const saved = { ...bars, made: { mould: 'bars', recipe: 'kitchen-soap', design: 'kitchen-soap' } };
    const changed = withPart(saved, 'mould', { ...bars.mould, cavities: 8 }, uuid);
    expect(changed.made).toEqual({ recipe: 'kitchen-soap' });
    expect(changed.once.mould).not.toBe(saved.once.mould);
    expect(changed.once.design).not.toBe(saved.once.design);
    expect(changed.once.recipe).toBe(saved.once.recipe);
    expect(contentsOf(saved, input, [], words).design['key']).toBe('kitchen-soap');
  });
});
