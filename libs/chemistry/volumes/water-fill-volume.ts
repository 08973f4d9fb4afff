import { waterDensity } from './water-density.js';

/**
 * Volume of a cavity from the water that fills it: V = m / ρ_water(t), [S20].
 * The buoyancy of air is left out: scales read 0.1 % less for water than its mass, so the volume is 0.1 % small,
 * far less than the meniscus of a brimful cavity.
 * @param massG water weighed, more than 0, g
 * @param temperatureC of the water, 0 to 40
 * @returns mL
 * @throws RangeError outside those ranges
 */
export function waterFillVolume(massG: number, temperatureC: number): number {
  if (!(massG > 0 && massG < Infinity)) {
    throw new RangeError(`${String(massG)} g of water; accepted: more than 0 g`);
  }
  if (!(temperatureC >= 0 && temperatureC <= 40)) {
    throw new RangeError(`Water of ${String(temperatureC)} °C; accepted: 0 to 40 °C`);
  }
  return massG / waterDensity(temperatureC);
}
