import { waterDensity } from '../volumes/water-density.js';

/**
 * Density of a solution of KOH in water, by the closed form of Laliberté with his coefficients [S21]:
 * 1/ρ = (1 − w)/ρ_water + w/ρ_a, apparent density ρ_a = (c₀ w + c₁) · exp(1e-6 (t + c₄)²) / (w + c₂ + c₃ t), kg/m³.
 * A formula and not a table, because the only measured table at hand knows one temperature, 18 °C. With that one it
 * agrees within 0.15 % from 5 to 40 %, with the handbook's row at 15 °C within 0.1 % up to 50 %. Between 40 and
 * 80 °C nothing but the fit itself (standard deviation 0.15 %) and a rougher one within 2 % vouch for it; 1 % of the
 * density of the lye is a third of a per cent of the batter.
 * @param concentrationPercent KOH as a share of the solution, by mass, 0 to 51.86
 * @param temperatureC 4 to 95
 * @returns g/mL
 * @throws RangeError beyond the measurements behind the coefficients
 */
export function kohDensity(concentrationPercent: number, temperatureC: number): number {
  requireWithin(concentrationPercent, 0, 51.86, '% KOH');
  requireWithin(temperatureC, 4, 95, '°C');
  const w = concentrationPercent / 100;
  const apparent =
    ((c0 * w + c1) * Math.exp(1e-6 * (temperatureC + c4) ** 2)) / (w + c2 + c3 * temperatureC) / 1000;
  return 1 / ((1 - w) / waterDensity(temperatureC) + w / apparent);
}

/** For KOH, 4 to 95 °C, up to 51.86 % [S21]. */
const [c0, c1, c2, c3, c4] = [
  821.119043254761, 1043.20173374381, 0.112873330222752, 0.00124023636407386, 539.630388368877,
] as const;

function requireWithin(value: number, low: number, high: number, unit: string): void {
  if (value >= low && value <= high) return;
  throw new RangeError(`${String(value)} ${unit}; accepted: ${String(low)} to ${String(high)} ${unit}`);
}
