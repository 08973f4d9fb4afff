import type { Caution } from '#contract';

/**
 * The usual cautions, shown where the act is. They defer to the supplier's safety data sheet and to local
 * rules, and replace neither.
 *
 * Sources: lye is classed Skin Corr. 1A, H314, in Regulation (EC) 1272/2008, Annex VI; rinsing for at least 30
 * minutes after the New Jersey Hazardous Substance Fact Sheet on sodium hydroxide (2015); flash point of
 * isopropyl alcohol 12 °C in NFPA 497 (2008); food imitation after Regulation (EU) 2023/988, Article 6(1)(f),
 * and SI 1989/1291 (United Kingdom). Gloves for uncured soap: common practice, no source.
 */
const texts = {
  lye:
    'Lye causes severe burns. Goggles, gloves, long sleeves, fresh air, nobody else in reach. Add lye to cold ' +
    'water, never water to lye; no aluminium. In an eye or on skin: rinse for at least 30 minutes and get ' +
    'medical help. The supplier’s safety data sheet comes first.',
  'lye-keeping':
    'Lye is corrosive: buy and carry it in its own sealed, labelled container, keep it dry, away from acids, food and ' +
    'aluminium, and locked where no child reaches. Read the supplier’s safety data sheet before you open it.',
  'fresh-soap': 'Uncured soap is still caustic: wear gloves, and keep hands away from your eyes.',
  'hot-base': 'Melted base clings and burns. Stir, test its heat on the side of the jug, mind splashes.',
  alcohol:
    'Isopropyl alcohol catches fire at room temperature. Spritz sparingly, with no flame, hot plate or spark ' +
    'nearby and with fresh air; let it flash off before the melter is switched on again.',
  'looks-edible':
    'This piece could be taken for food. Keep it from children, mark it “soap, not food”, and check your ' +
    'local rules before selling: the United Kingdom forbids supplying such goods where they are dangerous in ' +
    'the mouth, and the European Union wants the likeness weighed in the safety assessment.',
} as const;

export type CautionCode = keyof typeof texts;

/** The caution in full, for a plan or a bench sheet. */
export function cautionFor(code: CautionCode): Caution {
  return { code, text: texts[code] };
}
