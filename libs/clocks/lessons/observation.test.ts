import { describe, expect, it } from 'vitest';
import { oneOf, type Sighting } from './observation.js';

const seen = (kind: Sighting['kind'], logRatio: number, entry: string, sigma = 0.25): Sighting => ({
  kind,
  logRatio,
  sigma,
  entry,
});

describe('the sightings of one batch', () => {
  it('are one exact observation at the mean of the exact times', () => {
    expect(oneOf('tiles', [seen('exact', 0.2, 'a'), seen('exact', 0.5, 'b')])).toEqual({
      recipe: 'tiles',
      exact: 0.35,
      sigma: 0.25,
      entries: ['a', 'b'],
    });
  });

  it('rest on the exact time alone where there is one, wherever the bounds lie', () => {
    const sightings = [seen('not-yet', 0.5, 'a'), seen('exact', 0.2, 'b'), seen('already', 0.1, 'c')];
    expect(oneOf('tiles', sightings)).toEqual({ recipe: 'tiles', exact: 0.2, sigma: 0.25, entries: ['b'] });
  });

  it('give an exact time up when a later look puts it clearly on the other side', () => {
    const sightings = [seen('exact', 0.2, 'a'), seen('not-yet', 0.6, 'b')];
    expect(oneOf('tiles', sightings)).toEqual({ recipe: 'tiles', above: 0.6, sigma: 0.25, entries: ['b'] });
    const sooner = [seen('exact', 0.2, 'a'), seen('already', -0.3, 'b')];
    expect(oneOf('tiles', sooner)).toEqual({ recipe: 'tiles', below: -0.3, sigma: 0.25, entries: ['b'] });
  });

  it('lie between the last “not yet” and the first “already”, and name those two', () => {
    const sightings = [
      seen('not-yet', -0.4, 'a'),
      seen('not-yet', -0.1, 'b'),
      seen('already', 0.3, 'c'),
      seen('already', 0.6, 'd'),
    ];
    expect(oneOf('tiles', sightings)).toEqual({
      recipe: 'tiles',
      above: -0.1,
      below: 0.3,
      sigma: 0.25,
      entries: ['b', 'c'],
    });
  });

  it('keep what was said later where they contradict each other', () => {
    expect(oneOf('tiles', [seen('already', 0.1, 'a'), seen('not-yet', 0.2, 'b')])).toEqual({
      recipe: 'tiles',
      above: 0.2,
      sigma: 0.25,
      entries: ['b'],
    });
    const changed = [seen('not-yet', 0.2, 'a'), seen('already', 0.1, 'b'), seen('not-yet', 0, 'c')];
    expect(oneOf('tiles', changed)).toMatchObject({ above: 0, below: 0.1, entries: ['b', 'c'] });
  });

  it('are as unsure as the least sure of those that count', () => {
    const sightings = [
      seen('not-yet', -0.4, 'a', 0.9),
      seen('not-yet', 0, 'b', 0.3),
      seen('already', 1, 'c'),
    ];
    expect(oneOf('tiles', sightings)?.sigma).toBe(0.3);
  });

  it('are nothing when nothing was seen, or only that it had not come at the very start', () => {
    expect(oneOf('tiles', [])).toBeUndefined();
    expect(oneOf('tiles', [seen('not-yet', -Infinity, 'a')])).toBeUndefined();
  });

  it('are refused at no time at all', () => {
    expect(() => oneOf('tiles', [seen('exact', -Infinity, 'a')])).toThrow(RangeError);
    expect(() => oneOf('tiles', [seen('already', NaN, 'a')])).toThrow(RangeError);
  });
});
