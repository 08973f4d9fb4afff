import { describe, expect, it } from 'vitest';
import {
  fatSharePercent,
  fatTable,
  fromSheet,
  hardFattyAcidsPercent,
  oleicPercent,
  type FatFacts,
} from '#chemistry';

/** Two invented fats small enough to add up on paper. */
const hard: FatFacts = {
  ...fromSheet({
    key: 'hard',
    title: 'Hard (invented)',
    saponificationMgKohPerG: { low: 200, used: 205, high: 210 },
    fattyAcidsPercent: { 'C10:0': 10, 'C12:0': 30, 'C16:0': 20, 'C18:0': 10, 'C20:0': 5, 'C18:1': 25 },
    densityGPerMl: 0.92,
    source: 'invented',
  }),
  tags: ['butter'],
};
const soft: FatFacts = {
  ...hard,
  key: 'soft',
  fattyAcidsPercent: { 'C16:0': 10, 'C18:1': 80, 'C18:2': 10 },
  tags: ['olive'],
};
const fats = fatTable([hard, soft]);

const recipe = {
  fats: [
    { fat: 'hard', percent: 25 },
    { fat: 'soft', percent: 75 },
  ],
};

describe('the profile of a recipe', () => {
  /** Hard: 30 + 20 + 10 = 60, without C10:0 and C20:0; soft: 10. 0.25 · 60 + 0.75 · 10 = 22.5. */
  it('adds up hard fatty acids', () => {
    expect(hardFattyAcidsPercent(recipe, fats)).toBeCloseTo(22.5, 12);
  });

  /** 0.25 · 25 + 0.75 · 80 = 66.25. */
  it('adds up oleic acid', () => {
    expect(oleicPercent(recipe, fats)).toBeCloseTo(66.25, 12);
  });

  it('adds up the shares under a tag', () => {
    expect(fatSharePercent(recipe, fats, 'butter')).toBeCloseTo(25, 12);
    expect(fatSharePercent(recipe, fats, 'castor')).toBe(0);
  });

  it('lets a wax count for nothing', () => {
    const waxed = {
      fats: [
        { fat: 'soft', percent: 98 },
        { fat: 'beeswax', percent: 2 },
      ],
    };
    expect(hardFattyAcidsPercent(waxed, fats)).toBeCloseTo(9.8, 12);
    expect(fatSharePercent(waxed, fats, 'olive')).toBeCloseTo(98, 12);
  });

  it('counts a fat without tags, and one with several, once', () => {
    const { tags: _, ...plain } = hard;
    const both: FatFacts = { ...soft, key: 'both', tags: ['butter', 'olive'] };
    const table = fatTable([{ ...plain, key: 'plain' }, both]);
    const mixed = {
      fats: [
        { fat: 'plain', percent: 40 },
        { fat: 'both', percent: 60 },
      ],
    };
    expect(fatSharePercent(mixed, table, 'butter')).toBeCloseTo(60, 12);
    expect(fatSharePercent(mixed, table, 'olive')).toBeCloseTo(60, 12);
  });

  it('throws on a fat that nobody checked for', () => {
    expect(() => oleicPercent({ fats: [{ fat: 'moon', percent: 100 }] }, fats)).toThrow('moon');
  });
});
