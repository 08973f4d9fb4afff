import type { Fragrance } from '../recipe/batter-recipe.js';
import type { Risk } from './risk.js';

/**
 * How brown vanillin will make the soap.
 * Common practice, no source: a fragrance with 1 % of vanillin at a usual load tans soap, one with 5 % turns it to
 * chocolate. What counts is vanillin per fats, so the thresholds are those at a load of 5 % of the fats:
 * 0.05 and 0.25 % of the fats.
 * @returns undefined without vanillin
 */
export function browningOf(fragrances: readonly Fragrance[]): Risk | undefined {
  const perFats = fragrances.reduce(
    (sum, { percent, vanillinPercent = 0 }) => sum + (percent * vanillinPercent) / 100,
    0,
  );
  if (perFats === 0) return undefined;
  const shade = perFats < 0.05 ? 'cream' : perFats < 0.25 ? 'tan' : 'brown';
  const level = ({ cream: 'low', tan: 'medium', brown: 'high' } as const)[shade];
  return { code: 'fragrance.browns', level, vanillinPercent: perFats, shade };
}
