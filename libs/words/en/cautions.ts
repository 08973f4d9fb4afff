import type { Caution } from '#contract';
import type { MessageWords } from '../words.js';

const allergenNames = { milk: 'milk', nuts: 'nuts', gluten: 'gluten' } as const;

/**
 * The usual cautions. They defer to the supplier's safety data sheet and to local rules, and replace neither.
 *
 * Sources: lye is classed Skin Corr. 1A, H314, in Regulation (EC) 1272/2008, Annex VI; rinsing for at least 30
 * minutes after the New Jersey Hazardous Substance Fact Sheet on sodium hydroxide (2015); flash point of
 * isopropyl alcohol 12 °C in NFPA 497 (2008); food imitation after Regulation (EU) 2023/988, Article 6(1)(f),
 * and SI 1989/1291 (United Kingdom). Gloves for uncured soap, a mask for powders: common practice, no source.
 */
export const cautions: MessageWords<Caution> = {
  'caution.lye': () =>
    'Lye burns skin and eyes badly. Wear goggles, gloves and long sleeves, with fresh air and nobody else in reach. ' +
    'Add lye to cold water, never water to lye; no aluminium. In an eye or on skin: rinse for at least 30 minutes ' +
    'and get medical help. The supplier’s safety data sheet comes first.',
  'caution.lye-making': () =>
    'Fresh lye heats itself nearly to boiling, and its steam burns the throat: stir it in slowly, outdoors or under a ' +
    'hood, and do not breathe over it. Use a jug of polypropylene or stainless steel, no glass and no aluminium. Cover it, ' +
    'label it, and never leave it alone where children or pets are. On a burn no vinegar, only plenty of running water; ' +
    'if some is swallowed, call a poison centre at once. Where local rules ask for a trained or licensed maker, they come first.',
  'caution.lye-keeping': () =>
    'Lye is corrosive. Buy and carry it in its own sealed, labelled container. Keep it dry, away from acids, food and ' +
    'aluminium, and locked where no child reaches. Read the supplier’s safety data sheet before you open it.',
  'caution.fresh-soap': () =>
    'Uncured soap is still caustic. Wear gloves, and keep your hands away from your eyes.',
  'caution.dust': () =>
    'Pigments, mica, clay and crystals are fine dust: wear a dust mask (FFP2), spoon them gently, and wipe up wet.',
  'caution.hot-base': () =>
    'Melted base clings and burns. Stir it, test its heat on the side of the jug, and watch for splashes.',
  'caution.hot-fats': () =>
    'Hot fat burns, and on too much heat it catches fire. Melt it gently, and never leave it alone on the heat. Burning ' +
    'fat: lid on, heat off, no water.',
  'caution.cooking': () =>
    'Cooking soap rises, spits and is still caustic. Take a pot of twice its volume, no aluminium, wear goggles, gloves and ' +
    'long sleeves, and never leave it alone.',
  'caution.alcohol': () =>
    'Isopropyl alcohol catches fire at room temperature. Spritz sparingly, with fresh air and no flame, hot plate or ' +
    'spark nearby. Let it flash off before you switch the melter on again.',
  'caution.zap-test': () =>
    'Do not taste soap. Wet a cut face, and put a drop of phenolphthalein or a pH strip on it: pink, or above 10.5, means ' +
    'that lye may be left. Then let it lie, and test it again before anyone uses it.',
  'caution.looks-edible': () =>
    'This piece could be taken for food. Keep it from children, mark it “soap, not food”, and check your local rules ' +
    'before you sell it: the United Kingdom forbids supplying such goods where they are dangerous in the mouth, and ' +
    'the European Union wants the likeness weighed in the safety assessment.',
  'caution.allergens': ({ allergens }, texts) =>
    `Holds ${texts.and(allergens.map((each) => allergenNames[each]))}. Tell whoever gets it: some people are allergic.`,
  'caution.missed-day': ({ readyBy }, texts) =>
    `This soap will hardly be cured by ${texts.calendarDay(readyBy)}. It is planned without that day.`,
};
