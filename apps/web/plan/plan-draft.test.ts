import { describe, expect, it } from 'vitest';
import { newRun } from '#contract';
import { writePlanInput } from '#runs';
import { minuteOfIso } from '#units';
import { loadRunFile } from '../../../tests/support/run-files.js';
import {
  changesOf,
  emptyDraft,
  lyeOf,
  newRunOf,
  rangeWith,
  revivedDraft,
  SAFE,
  wishOf,
} from './plan-draft.js';

const NOW = '2026-11-27T12:00';
const file = loadRunFile('demo', 'orchard-loaves');
const input = writePlanInput({ ...file, runs: [] }, minuteOfIso('2026-11-27T12:00:00Z'));
const recipe = file.recipes[0]!;
const draft = { ...emptyDraft(NOW), design: 'orchard-bar', count: 20 };

describe('a draft of a run', () => {
  it('becomes an order that the contract takes, with a key of its own', () => {
    const made = newRunOf(draft, input, ['orchard-bar'], null);
    expect(newRun.parse(made)).toEqual(made);
    expect(made).toMatchObject({ key: 'orchard-bar-2', title: 'Orchard bar', count: 20, startAfter: NOW });
    expect(made).not.toHaveProperty('recipes');
    expect(made).not.toHaveProperty('readyBy');
  });

  it('takes along only shares that differ, of recipes that its design uses', () => {
    const moved = {
      ...draft,
      recipes: {
        [recipe.key]: { lyeConcentrationPercent: lyeOf(recipe), sodiumLactatePercent: 2.5 },
        other: { sodiumLactatePercent: 1 },
      },
    };
    expect(newRunOf(moved, input, [], null)?.recipes).toEqual([
      { recipe: recipe.key, sodiumLactatePercent: 2.5 },
    ]);
    expect(changesOf({ ...draft, recipes: { [recipe.key]: {} } }, [recipe])).toEqual([]);
  });

  it('counted back starts from now, and is made to begin when that came out', () => {
    const by = { ...draft, aim: 'by', readyBy: '2027-02-01', startAfter: '2027-01-15T10:00' } as const;
    expect(wishOf(by, input, NOW)).toMatchObject({
      order: { startAfter: NOW, readyBy: '2027-02-01' },
      latestWithOdds: 0.8,
    });
    expect(newRunOf(by, input, [], null)).toBeNull();
    expect(newRunOf(by, input, [], '2026-12-13T10:00')).toMatchObject({
      startAfter: '2026-12-13T10:00',
      readyBy: '2027-02-01',
    });
  });

  it('is nothing without a design', () => {
    expect(wishOf(emptyDraft(NOW), input, NOW)).toBeNull();
    expect(newRunOf({ ...draft, design: 'gone' }, input, [], null)).toBeNull();
  });
});

describe('a draft that was kept', () => {
  it('comes back, but not with a start that has passed', () => {
    const kept = JSON.stringify({ ...draft, startAfter: '2026-11-20T18:00', readyBy: '2026-11-21' });
    expect(revivedDraft(kept, NOW)).toEqual({ ...draft, startAfter: NOW });
    const ahead = { ...draft, startAfter: '2026-12-01T18:00' };
    expect(revivedDraft(JSON.stringify(ahead), NOW)).toEqual(ahead);
  });

  it.each([null, '', '{', '"?"'])('is empty where %j was kept', (text) => {
    expect(revivedDraft(text, NOW)).toMatchObject({ design: null, startAfter: NOW });
  });
});

it('slides over safe shares, and to the recipe’s own where it is beyond them', () => {
  expect(rangeWith(SAFE.lye, 33)).toEqual({ low: 25, high: 40, step: 0.5 });
  expect(rangeWith(SAFE.lye, 22.5)).toMatchObject({ low: 22, high: 40 });
  expect(rangeWith(SAFE.lactate, 4)).toMatchObject({ low: 0, high: 4 });
  const { lyeConcentrationPercent: _lye, ...bare } = recipe;
  expect(lyeOf({ ...bare, waterPerLye: 2 })).toBeCloseTo(33.3, 1);
  expect(lyeOf(bare)).toBe(33);
});
