import { describe, expect, it } from 'vitest';
import { oneOf, type Sighting } from './observation.js';

const MIDNIGHT = 20_000 * 1440;

const sighting = (kind: Sighting['kind'], logRatio: number, over: Partial<Sighting> = {}): Sighting => ({
  ...{ kind, by: 'look', logRatio, sigma: 0.25, doubt: 0.1 },
  ...{ minutes: 2000 * Math.exp(logRatio), at: MIDNIGHT + 2000 * Math.exp(logRatio), entry: '#1' },
  ...over,
});

describe('one observation of all looks at a batch', () => {
  it('keeps the tightest bounds, and when it was found ready', () => {
    const one = oneOf('tiles', [
      sighting('not-yet', -0.5, { entry: '#1' }),
      sighting('not-yet', 0.1, { entry: '#2', sigma: 0.3 }),
      sighting('already', 0.4, { entry: '#3', by: 'done' }),
    ]);
    expect(one).toMatchObject({ recipe: 'tiles', above: 0.1, below: 0.4, sigma: 0.3, doubt: 0.1 });
    expect(one).toMatchObject({ entries: ['#2', '#3'], looks: 2, day: 20_002 });
    expect(one?.readyAfterDays).toBeCloseTo((2000 * Math.exp(0.4)) / 1440, 9);
  });

  it('counts the days between looks on which nothing was written', () => {
    const at = (days: number, logRatio: number) =>
      sighting('not-yet', logRatio, { at: MIDNIGHT + days * 1440 });
    expect(oneOf('tiles', [at(1, 0), at(2, 0.3), at(5, 0.6)])).toMatchObject({ looks: 3, missed: 2 });
    expect(oneOf('tiles', [at(1, 0), at(1.4, 0.3)])).toMatchObject({ looks: 2, missed: 0 });
  });

  it('tells when a plan first asked for it, and counts the days from then to the first look that was written', () => {
    const at = (days: number, opened: number | undefined, over: Partial<Sighting> = {}) =>
      sighting('not-yet', Math.log((days * 1440) / 2000), {
        ...{ minutes: days * 1440, at: MIDNIGHT + days * 1440 },
        ...(opened !== undefined && { opened: Math.log((opened * 1440) / 2000) }),
        ...over,
      });
    const first = Math.log((1.5 * 1440) / 2000);
    const told = oneOf('tiles', [at(4.6, 1.5), at(5.6, 5), at(6, undefined)]);
    expect(told).toMatchObject({ looks: 3, missed: 3, opened: first });
    expect(oneOf('tiles', [at(2.4, 1.5)])).toMatchObject({ missed: 0, opened: first });
    expect(oneOf('tiles', [at(1, 1.5)])).toMatchObject({ missed: 0, opened: first });
    expect(oneOf('tiles', [at(4.6, undefined)])).not.toHaveProperty('opened');
    // A stage that closes a window was asked for by another rule.
    expect(oneOf('tiles', [at(4.6, 1.5, { by: 'done' }), at(5, undefined)])).not.toHaveProperty('opened');
  });

  it('does not count as a look what follows from a stage that was done', () => {
    const one = oneOf('tiles', [sighting('not-yet', 0, { by: 'done' }), sighting('already', 0.4)]);
    expect(one).toMatchObject({ above: 0, looks: 0 });
  });

  it('averages exact times, which outweigh bounds', () => {
    const one = oneOf('tiles', [sighting('not-yet', 0), sighting('exact', 0.1), sighting('exact', 0.3)]);
    expect(one?.exact).toBeCloseTo(0.2, 12);
    expect(one).not.toHaveProperty('above');
  });

  it('drops an exact time that a later look contradicts by more than one σ', () => {
    const looks = [sighting('exact', 0), sighting('not-yet', 0.26)];
    expect(oneOf('tiles', looks)).toMatchObject({ above: 0.26 });
    expect(oneOf('tiles', [sighting('exact', 0), sighting('not-yet', 0.24)])).toMatchObject({ exact: 0 });
  });

  it('believes the later of two that contradict each other', () => {
    const looks = [sighting('already', 0, { entry: '#1' }), sighting('not-yet', 0.2, { entry: '#2' })];
    expect(oneOf('tiles', looks)).toMatchObject({ above: 0.2, entries: ['#2'] });
    expect(oneOf('tiles', looks)).not.toHaveProperty('readyAfterDays');
  });

  it('is none where nothing was learned', () => {
    expect(oneOf('tiles', [])).toBeUndefined();
    expect(oneOf('tiles', [sighting('not-yet', -Infinity)])).toBeUndefined();
  });

  it('refuses a time that is none', () => {
    expect(() => oneOf('tiles', [sighting('exact', NaN)])).toThrow(RangeError);
    expect(() => oneOf('tiles', [sighting('already', NaN)])).toThrow(RangeError);
  });
});
