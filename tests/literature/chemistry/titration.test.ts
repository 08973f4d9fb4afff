import { describe, expect, it } from 'vitest';
import { molarMass, saponificationValueByTitration, type Titration } from '#chemistry';

function valueOf(titration: Titration): number {
  const result = saponificationValueByTitration(titration);
  if (!result.ok) throw new Error(result.issues[0]?.code);
  return result.value;
}

describe('saponification value by titration', () => {
  /**
   * Textbook problem (D. Harvey, Analytical Chemistry, titrimetry; attribution from memory): 2.085 g of
   * butter, 25.00 mL of 0.5131 M KOH, excess 10.26 mL of 0.5000 M HCl; answer 207. The blank is what the
   * KOH alone would take: 25.00 · 0.5131 / 0.5000 mL.
   */
  it('of butter is 207', () => {
    const sv = valueOf({ sampleG: 2.085, blankMl: (25 * 0.5131) / 0.5, backMl: 10.26, acidMolPerL: 0.5 });
    expect(Math.abs(sv - 207)).toBeLessThan(0.5);
  });

  /** Textbook problem in a public homework archive: 1.05 g, blank 27.7 mL, sample 10.4 mL, 0.1875 M; 173. */
  it('of another butter is 173', () => {
    const sv = valueOf({ sampleG: 1.05, blankMl: 27.7, backMl: 10.4, acidMolPerL: 0.1875 });
    expect(Math.abs(sv - 173)).toBeLessThan(0.5);
  });

  /**
   * Secondary-school problem on chemical indices of fats: 1 kg takes 3.572 L of 1 M KOH in all and yields
   * 105.69 g of glycerol; saponification 200, ester 193, acid 7 (printed with M(KOH) = 56).
   */
  it('splits into ester and acid value', () => {
    const sv = valueOf({ sampleG: 1000, blankMl: 3572, backMl: 0, acidMolPerL: 1 });
    const ester = (105.69 / molarMass.glycerol) * 3 * molarMass.koh;
    expect(Math.abs(sv - 200)).toBeLessThan(0.6);
    expect(Math.abs(ester - 193)).toBeLessThan(0.6);
    expect(Math.abs(sv - ester - 7)).toBeLessThan(0.6);
  });
});
