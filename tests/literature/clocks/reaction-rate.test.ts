import { describe, expect, it } from 'vitest';
import { forecast, referenceInputs } from '#clocks';

/**
 * Arrhenius: k(T₂)/k(T₁) = exp(E/R · (1/T₁ − 1/T₂)), R = 8.314462618 J/(mol K) (CODATA 2018).
 *
 * Activation energies of alkaline ester hydrolysis:
 * - 42 kJ/mol: palm oil and sodium ethoxide in ethanol, 25 to 55 °C (42.36; S. Shahla et al., Bioresource
 *   Technology 104 (2012) 1-5), the nearest published attack on a triglyceride in one phase; also the least
 *   given for ethyl acetate (42 to 50; laboratory texts, from memory);
 * - 60 kJ/mol: triglycerides in water, from memory, low confidence.
 */
const R = 8.314462618;
const least = 42_000;
const most = 60_000;

function rise(activationEnergy: number, fromC: number): number {
  return Math.exp((activationEnergy / R) * (1 / (fromC + 273.15) - 1 / (fromC + 283.15)));
}

function lightTrace(batterTemperatureC: number): number {
  return forecast('light-trace', { ...referenceInputs, batterTemperatureC }).medianMin;
}

describe('10 °C more in the batter', () => {
  it.each([28, 30, 33, 35, 38, 40])('from %d °C hurries it by 1.6 to 2.3 times', (from) => {
    const hurried = lightTrace(from) / lightTrace(from + 10);
    expect(hurried).toBeGreaterThanOrEqual(1.6);
    expect(hurried).toBeLessThanOrEqual(2.3);
  });

  it.each([28, 33, 38, 43, 48])('from %d °C hurries it as the activation energies say', (from) => {
    const hurried = lightTrace(from) / lightTrace(from + 10);
    expect(hurried).toBeGreaterThanOrEqual(rise(least, from));
    expect(hurried).toBeLessThanOrEqual(rise(most, from));
  });
});
