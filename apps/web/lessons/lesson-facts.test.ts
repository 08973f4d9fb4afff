import { describe, expect, it } from 'vitest';
import { byPace, factorRange, forgottenIn, placeOf, tempoOf, type Lesson } from './lesson-facts.js';

const lesson = (pace: Lesson['pace'], recipe: string | null): Lesson => ({
  pace,
  recipe,
  recipeTitle: null,
  factor: { low: 0.9, likely: 1.1, high: 1.4 },
  before: { low: 0.6, likely: 1, high: 1.6 },
  widthShare: 0.8,
  observations: [],
});

describe('lessons by pace', () => {
  it('keep the recipes of a pace with it', () => {
    const grouped = byPace([
      lesson('batter', null),
      lesson('batter', 'base'),
      lesson('set', null),
      lesson('set', 'base'),
      lesson('set', 'foam'),
    ]);
    expect(grouped.map(({ pace, recipes }) => [pace, recipes.map(({ recipe }) => recipe)])).toEqual([
      ['batter', ['base']],
      ['set', ['base', 'foam']],
    ]);
  });
});

describe('what a factor means', () => {
  it('is a share of the usual time', () => {
    expect(tempoOf(1.13)).toMatchObject({ kind: 'slower' });
    expect(tempoOf(1.13).by).toBeCloseTo(0.13, 12);
    expect(tempoOf(0.8)).toMatchObject({ kind: 'quicker' });
    expect(tempoOf(0.8).by).toBeCloseTo(0.2, 12);
    expect(tempoOf(1.019)).toEqual({ kind: 'same', by: 0 });
  });
});

describe('the range of a picture', () => {
  it('holds all bands and has the usual in its middle', () => {
    const wide = { ...lesson('set', null), factor: { low: 0.3, likely: 0.5, high: 0.9 } };
    const [low, high] = factorRange([wide]);
    expect(low).toBeLessThan(0.3);
    expect(low * high).toBeCloseTo(1, 12);
    expect(factorRange([])[1]).toBeGreaterThan(1.8);
  });
});

describe('an entry that a lesson rests on', () => {
  it('is found by its run and its id', () => {
    expect(placeOf('harbour-market/0190-ab')).toEqual({ run: 'harbour-market', entry: '0190-ab' });
  });
});

describe('what was forgotten', () => {
  type Logged = Parameters<typeof forgottenIn>[0][number];
  const at = '2026-11-30T09:00:00Z';
  const logged = (id: string, entry: Logged['entry']): Logged => ({
    id,
    sequence: 1,
    at,
    loggedAt: at,
    entry,
  });
  const seen = logged('a', { kind: 'seen', part: 'sand', state: 'firm', saw: 'already', at });
  const done = logged('b', { kind: 'done', stage: 'pour', at });
  const forget = logged('c', { kind: 'forget', entry: 'a', at });

  it('is what a standing entry says', () => {
    expect(forgottenIn([seen, done, forget])).toEqual([{ saidBy: 'c', entry: seen }]);
    expect(forgottenIn([seen, done])).toEqual([]);
  });

  it('teaches again once that entry is taken back, and is gone once it is itself', () => {
    expect(forgottenIn([seen, forget, logged('d', { kind: 'take-back', entry: 'c', at })])).toEqual([]);
    expect(forgottenIn([seen, forget, logged('d', { kind: 'take-back', entry: 'a', at })])).toEqual([]);
  });
});
