import type { Names } from '../names.js';

/** Why the soap does what a rule of the clocks says. */
export const rules: Names['rules'] = {
  'lye-on-batter': 'Stronger lye meets the fats less diluted, so the batter thickens sooner.',
  'batter-temperature': 'The warmer the batter, the faster it turns to soap.',
  'fragrance-slowing': 'Some fragrances hold the batter back. How much differs: only a test batch tells.',
  'fragrance-ricing':
    'Some fragrances make the batter lumpy. Stirring the lumps out takes time in which it goes on.',
  'fragrance-unknown':
    'What this fragrance does is not known. It may do nothing, or hurry the batter much: only a test batch tells.',
  fragrance:
    'Some fragrances speed the batter up. How much differs by supplier and lot: only a test batch tells.',
  'olive-pomace': 'Pomace oil carries free fatty acids and waxes that turn to soap at once.',
  castor: 'Much castor oil draws the lye into the fats, so trace comes sooner.',
  butters: 'Much butter thickens the batter as it cools.',
  sugar: 'Sugar warms the batter and speeds it up.',
  emulsifying: 'Stirring by hand leaves large drops of lye, so the emulsion takes several times as long.',
  mixing:
    'Blended only until the emulsion holds, the batter stays thin about twice as long; stirred by hand from the start, several times as long.',
  'lye-on-set': 'Less water leaves less to dry before the soap is firm.',
  'sodium-lactate': 'Sodium lactate hardens fresh soap, so that it leaves the mould sooner and cleaner.',
  'salt-in-mould':
    'Salt draws water from the soap and hardens it. A bar with a quarter of its fats in salt is cut within hours.',
  'salt-in-the-open': 'Salt draws water from the soap and hardens it.',
  'hard-fatty-acids':
    'Soap of saturated fatty acids is hard from the start; soap of oleic acid stays soft for days.',
  'room-temperature': 'A warm room keeps the reaction going and dries the surface.',
  'gel-on-set': 'In full gel the reaction is over within hours.',
  'hard-fats-in-gel':
    'In gel, soap of coconut and other hard fats is firm while it is still warm, and soon after it shatters under the knife.',
  mould: 'A lined block keeps its warmth and is lifted by its lining; tight plastic holds on to the soap.',
  'room-on-glaze': 'Melt-and-pour sets by cooling alone, so a warm room delays it.',
  'lye-on-ash': 'Weak lye leaves more water, which carries lye up to the air.',
  'room-on-ash': 'In a cool room the lye is used up slowly.',
  'humidity-on-ash': 'Damp air keeps the surface wet, and ash forms where it is wet.',
  'air-on-ash':
    'Moving air dries the surface while lye is still free in it. Under a cover next to no ash forms.',
  'gel-on-ash': 'In full gel the lye is used up within hours.',
  'lye-on-cure': 'Less water in the batch is less to dry out.',
  oleic: 'Soap that is mostly oleic acid stays soft and slimy for two to four months.',
  'room-humidity': 'Damp air takes up water more slowly.',
  'air-on-drying': 'A fan carries the damp air away. In a shut box or cupboard soap stays damp.',
  'gel-on-cure': 'Soap that went through full gel begins its cure with the reaction finished.',
  'hot-process-on-set': 'Cooked soap is soap already: it only has to cool.',
  'hot-process-on-ash': 'The lye was used up in the pot, so none reaches the air.',
  'hot-process-on-cure': 'Cooked soap is finished but wet: it still dries for weeks.',
  'rebatch-on-set': 'Soap that was melted again is wet and firms slowly.',
  'rebatch-on-cure': 'The liquid it was melted with has to dry out again.',
  'fats-on-batter': 'Liquid oils trace slowly, palm and tallow in half the time, coconut sooner still.',
  lard: 'Lard traces slowly for so hard a fat.',
  'free-acids': 'Free fatty acids turn to soap at once and thicken the batter.',
  wax: 'Wax sets as the batter cools and thickens it.',
  clay: 'Clay takes up water. Wet it first.',
  alcohol: 'Alcohol that is left in a liquid makes the batter thicken at once. Boil it off first.',
  'salt-early': 'A salt bar stiffens while it is poured.',
  'cutting-end': 'Soap of hard fats splinters early: a coconut loaf is cut within half a day.',
  'batter-on-set': 'Poured cold, soap takes about a day more than poured hot.',
  'koh-on-set': 'Potash makes softer soap.',
  'cast-size': 'A small piece loses its warmth and stays soft longer; a loaf keeps it.',
  'coat-thickness': 'A thick coat sets as slowly as a loaf.',
  'bead-width': 'Fine lines are firm sooner than thick ones.',
  'melt-size': 'The more there is, the slower it cools.',
  'oleic-on-best': 'Olive soap goes on getting better for half a year and more.',
  polyunsaturated: 'Soap of sunflower, soybean or grape-seed oil stays soft for long.',
  'castor-on-cure': 'Much castor oil keeps soap soft and sticky.',
  'superfat-on-cure': 'Fat that is left over keeps the bar soft.',
  'salt-on-cure': 'Salt bars are hard from the first day.',
  'size-on-cure': 'Thin bars dry sooner than thick ones.',
  'room-on-cure': 'Water leaves sooner in a warm room.',
  'hot-soap': 'Soap is not taken out or cut before it has cooled, nor in the first hour.',
  'gel-cools': 'In gel soap is a hot jelly. It is not cut for some hours.',
  lesson: 'Your room, moulds and fats have a pace of their own.',
};

/** What to know beyond the ends of a rule, besides that it does not reach there. */
export const beyondRules: Names['beyondRules'] = {
  'batter-temperature': {
    below: 'Hard fats set as they cool, and may thicken the batter with no soap in it.',
  },
  'sodium-lactate': { above: 'More than that makes edges brittle.' },
};
