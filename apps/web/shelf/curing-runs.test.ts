import { describe, expect, it } from 'vitest';
import type { PlannedStage } from '#contract';
import { firstPour, nextStage, nextWeighIn } from './curing-runs.js';
import { likelyMeant } from './likely-slip.js';

const stage = (
  kind: PlannedStage['kind'],
  part: string,
  status: PlannedStage['status'],
  at: string,
): PlannedStage => ({ key: `${kind}-${part}`, kind, part, status, startAt: at, endAt: at }) as PlannedStage;
const amounts = [
  { part: 'base', kind: 'batch' },
  { part: 'drops', kind: 'melt-and-pour' },
  { part: 'shells', kind: 'decor' },
] as const;
const [friday, saturday, sunday] = ['2026-11-27T18:00:00Z', '2026-11-28T18:00:00Z', '2026-11-29T18:00:00Z'];

describe('what cures', () => {
  it('does so from its first pour of soap; lye, decor and melted base cure nothing', () => {
    const stages = [
      stage('make-lye', 'base', 'done', friday),
      stage('press-decor', 'shells', 'done', friday),
      stage('glaze', 'drops', 'done', friday),
      stage('pour', 'base', 'planned', saturday),
    ];
    expect(firstPour({ stages, amounts })).toBeUndefined();
    const poured = [
      ...stages.slice(0, 3),
      stage('pour', 'base', 'done', saturday),
      stage('unmould', 'base', 'planned', sunday),
    ];
    expect(firstPour({ stages: poured, amounts })).toBe(Date.parse(saturday));
    expect(firstPour({ stages: [stage('pour', 'base', 'spoilt', friday)], amounts })).toBeUndefined();
    expect(nextStage(poured)?.kind).toBe('unmould');
  });
});

describe('the next weigh-in', () => {
  const day = 86_400_000;
  const made = Date.parse(friday);
  const weighed = (id: string, at: string) => ({
    id,
    entry: { kind: 'weigh-in', pieces: 6, massG: 500, at } as const,
  });

  it('is due as soon as there is a lot, and a week after the last', () => {
    expect(nextWeighIn([], made, made + 1)).toMatchObject({ isDue: true, last: undefined });
    const log = [weighed('a', friday), weighed('b', sunday)];
    const sundays = Date.parse(sunday);
    expect(nextWeighIn(log, made, sundays + 7 * day - 1)).toEqual({
      isDue: false,
      last: sundays,
      at: sundays + 7 * day,
    });
    expect(nextWeighIn(log, made, sundays + 7 * day).isDue).toBe(true);
  });

  it('does not go by one that was taken back, but by one whose taking-back was', () => {
    const back = (id: string, entry: string) => ({
      id,
      entry: { kind: 'take-back', entry, at: sunday } as const,
    });
    const log = [weighed('a', friday), weighed('b', sunday), back('c', 'b')];
    expect(nextWeighIn(log, made, made).last).toBe(made);
    expect(nextWeighIn([...log, back('d', 'c')], made, made).last).toBe(Date.parse(sunday));
  });
});

describe('a mass that is far off', () => {
  it.each([
    [5280, 530, 528],
    [52.8, 530, 528],
    [528_000, 530, 528],
    [528 * 28.3495, 530, 528],
  ])('%d g where %d g was expected was %d g', (mass, expected, meant) => {
    expect(likelyMeant(mass, expected)).toBeCloseTo(meant, 6);
  });

  it('is left as it is where no slip explains it', () => {
    expect(likelyMeant(2500, 530)).toBeUndefined();
    expect(likelyMeant(0.1, 530)).toBeUndefined();
  });
});
