/**
 * Density of water free of air at one atmosphere, by Kell's equation [S20]:
 * ρ = (999.83952 + 16.945176 t − 7.9870401e-3 t² − 46.170461e-6 t³ + 105.56302e-9 t⁴ − 280.54253e-12 t⁵)
 * / (1 + 16.87985e-3 t), kg/m³. Within 0.00003 g/mL of the handbook from 4 to 80 °C.
 * @param temperatureC 0 to 100
 * @returns g/mL
 * @throws RangeError outside that range
 */
export function waterDensity(temperatureC: number): number {
  const t = temperatureC;
  if (!(t >= 0 && t <= 100)) throw new RangeError(`${String(t)} °C; accepted: 0 to 100 °C`);
  const numerator = numeratorTerms.reduceRight((sum, term) => sum * t + term, 0);
  return numerator / (1 + 16.87985e-3 * t) / 1000;
}

/** Of rising powers of the temperature, kg/m³ [S20]. */
const numeratorTerms = [
  999.83952, 16.945176, -7.9870401e-3, -46.170461e-6, 105.56302e-9, -280.54253e-12,
] as const;
