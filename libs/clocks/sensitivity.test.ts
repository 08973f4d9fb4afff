import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { anyInputs } from '../../tests/support/clock-inputs.js';
import { checkInputs, wholes } from './check-inputs.js';
import { forecast } from './forecast.js';
import { choices, measures, referenceInputs, type ClockInputs } from './inputs.js';
import { usualSteps } from './sensitivity-steps.js';
import { sensitivity, type Move } from './sensitivity.js';
import { rulesOf } from './rules.js';
import { stateIds, type StateId } from './states.js';

fc.configureGlobal({ seed: 1843 });

function movesOf(state: StateId, inputs: Partial<ClockInputs> = {}): readonly Move[] {
  const found = sensitivity({ ...referenceInputs, ...inputs }).find((each) => each.state === state);
  return found?.moves ?? [];
}

const targets = (moves: readonly Move[], input: string) =>
  moves.filter((move) => move.input === input).map((move) => move.to);

describe('what moves a state', () => {
  it('is told for every state that has rules', () => {
    const ruled = stateIds.filter((state) => rulesOf[state].length > 0);
    expect(sensitivity(referenceInputs).map(({ state }) => state)).toEqual(ruled);
    for (const { state, moves } of sensitivity(referenceInputs)) expect(moves, state).not.toEqual([]);
  });

  /**
   * By hand from the tables, at the reference point: weaker lye of 30 % lies 2/5 of the way from 28 % (×1.3) to 33 %
   * (×1), so ×1.18; stronger lye of 36 % lies 3/5 of the way from 33 % to 38 % (×0.8), so ×0.88.
   */
  it('follows a worked example', () => {
    const lye = movesOf('firm').filter((move) => move.input === 'lyeConcentrationPercent');
    expect(lye).toMatchObject([
      { from: 33, to: 30 },
      { from: 33, to: 36 },
    ]);
    expect(lye[0]?.factor).toBeCloseTo(1.18, 12);
    expect(lye[1]?.factor).toBeCloseTo(0.88, 12);
    expect(movesOf('medium-trace')[0]).toMatchObject({
      input: 'fragrance',
      from: 'none',
      to: 'seizing',
    });
    expect(movesOf('medium-trace')[2]).toEqual({ input: 'mixing', from: 'blender', to: 'hand', factor: 4 });
    // From 55 % (×1.24) to 65 % (×1.7).
    const olive = { hardFattyAcidsPercent: 25, oleicPercent: 55 };
    expect(movesOf('cured', olive)[0]).toMatchObject({
      ...{ input: 'oleicPercent', from: 55, to: 65 },
      factor: expect.closeTo(1.7 / 1.24, 12) as number,
    });
  });

  it('stops at the end of the accepted range, and is not proposed beyond it', () => {
    expect(targets(movesOf('firm', { sodiumLactatePercent: 0.5 }), 'sodiumLactatePercent')).toEqual([1.5, 0]);
    expect(targets(movesOf('firm'), 'sodiumLactatePercent')).toEqual([1]);
    const warm = { roomTemperatureC: 29, batterTemperatureC: 45 };
    // 34 °C is beyond the table, where the factor is held at that of 30 °C.
    expect(targets(movesOf('firm', warm), 'roomTemperatureC')).toEqual([24, 34]);
    expect(
      targets(movesOf('firm', { roomTemperatureC: 35, batterTemperatureC: 45 }), 'roomTemperatureC'),
    ).toEqual([]);
  });

  it('leaves no batter that is far colder than the room', () => {
    const cold = { roomTemperatureC: 29, batterTemperatureC: 22 };
    expect(targets(movesOf('firm', cold), 'roomTemperatureC')).toEqual([24]);
  });

  it('steps in numbers as people write them', () => {
    expect(targets(movesOf('firm', { lyeConcentrationPercent: 33.3 }), 'lyeConcentrationPercent')).toEqual([
      30.3, 36.3,
    ]);
  });

  it('never takes more than a whole', () => {
    const full = { hardFattyAcidsPercent: 47, oleicPercent: 49, polyunsaturatedPercent: 0 };
    expect(targets(movesOf('cured', full), 'oleicPercent')).toEqual([53, 39]);
    expect(targets(movesOf('firm', full), 'hardFattyAcidsPercent')).toEqual([37, 51]);
  });

  /** Oracle: the forecasts with and without the move, and the check of inputs. */
  it('is what forecasts say, sorted, never idle and never refused', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        for (const { state, moves } of sensitivity(inputs)) {
          const sizes = moves.map(({ factor }) => Math.abs(Math.log(factor)));
          expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
          for (const { input, from, to, factor } of moves) {
            const moved = { ...inputs, [input]: to };
            expect(from).toBe(inputs[input]);
            expect(factor).not.toBe(1);
            expect(checkInputs(moved)).toEqual([]);
            expect(factor).toBe(forecast(state, moved).medianMin / forecast(state, inputs).medianMin);
          }
        }
      }),
      { numRuns: 15 },
    );
  });

  it('leaves out only what would be refused or changes nothing', () => {
    fc.assert(
      fc.property(anyInputs, fc.constantFrom(...stateIds), (inputs, state) => {
        const told = movesOf(state, inputs).map(({ input, to }) => `${input} ${String(to)}`);
        const now = forecast(state, inputs).medianMin;
        expect(told.filter((each) => each.startsWith('process'))).toEqual([]);
        for (const input of Object.keys(choices) as (keyof typeof choices)[]) {
          // What is cooked is another piece of work, no other choice for this one.
          if (input === 'process') continue;
          for (const to of choices[input]) {
            const changes = forecast(state, { ...inputs, [input]: to }).medianMin !== now;
            expect(told.includes(`${input} ${to}`)).toBe(changes);
          }
        }
      }),
    );
  });

  it('keeps every whole a whole', () => {
    fc.assert(
      fc.property(anyInputs, (inputs) => {
        const rises = sensitivity(inputs)
          .flatMap(({ moves }) => moves)
          .filter(({ from, to }) => typeof to === 'number' && to > Number(from));
        for (const { input, to } of rises) {
          const moved: ClockInputs = { ...inputs, [input]: to };
          for (const parts of wholes.filter((whole) => (whole as readonly string[]).includes(input))) {
            expect(parts.reduce((sum, part) => sum + moved[part], 0)).toBeLessThan(100 + 1e-9);
          }
        }
      }),
      { numRuns: 30 },
    );
  });

  it('refuses inputs that were not checked', () => {
    expect(() => sensitivity({ ...referenceInputs, saltPercent: -1 })).toThrow(
      'clocks.out-of-range at saltPercent',
    );
  });

  it('has steps within the ranges they move in, each with its reason', () => {
    for (const [input, { by, why }] of Object.entries(usualSteps)) {
      const { low, high } = measures[input as keyof typeof measures];
      expect(by, input).toBeGreaterThan(0);
      expect(by, input).toBeLessThanOrEqual((high - low) / 4);
      expect(why, input).toMatch(/\.$/);
    }
  });
});
