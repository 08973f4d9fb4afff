import type { Risk } from '#contract';
import type { MessageWords, Texts } from '../words.js';
import { adviceOr } from '../format/advice.js';

function commonLye(texts: Texts): string {
  return `${texts.range(texts.percent(25), texts.percent(40))} is common`;
}

/** What would help against each risk. */
export const riskRemedies: MessageWords<Risk> = {
  'lye.strong': (_, texts) =>
    `${commonLye(texts)}. Stir the lye in slowly, in the cold, and use it before it sets.`,
  'lye.wet': (_, texts) =>
    `${commonLye(texts)}. Take the water of vinegar or colours off the water of the lye.`,
  'lye.cold-bath': () =>
    'Stand the covered jug in a bowl of cold water with some ice, outside and low enough that none gets into the lye. The times are for that.',
  'lye.taken-ready': () => 'Make it beforehand, or add the stage “Make the lye”: it takes hours to cool.',
  'lye.excess': () => 'Salt it out or neutralise it, and test it, before anyone touches it without gloves.',
  'lye.little-superfat': (_, texts) => `${texts.percent(5)} is common.`,
  'lye.much-superfat': (_, texts) =>
    `${texts.range(texts.percent(2), texts.percent(8))} is usual, ${texts.range(texts.percent(15), texts.percent(20))} for soap that is nearly all coconut oil.`,
  'lye.lean-lot': ({ enoughPercent }, texts) =>
    `Enter the saponification values from your lots’ certificates, or take a superfat of ${texts.percent(enoughPercent)}.`,
  'acid.takes-much': (_, texts) => `Check its strength on the label. Vinegar has about ${texts.percent(5)}.`,
  'batch.small': ({ scalesG }, texts) =>
    scalesG < 0.1
      ? `Weigh to ${texts.mass(scalesG)}, or make at least ${texts.mass(300)} of fats and cast what is left.`
      : `Weigh to ${texts.mass(scalesG)}.`,
  'batch.reaches-not': () => 'Make a larger batch, a second one, or fewer pieces.',
  'batter.too-cool': ({ enoughC }, texts) =>
    `Work at ${texts.temperature(enoughC)} or more, and stir until no lump is left.`,
  'batter.pace': ({ batches, count }) =>
    `${batches < count ? `Split it into ${String(batches)} batches, or slow it` : 'Slow it'} with cooler batter, more water or a milder fragrance.`,
  'sodium-lactate.much': (_, texts) => `Use ${texts.range(texts.percent(1), texts.percent(3))}.`,
  'salt.much': (_, texts) =>
    `To harden, ${texts.range(texts.percent(0.5), texts.percent(1))} is enough. A salt bar takes ${texts.percent(25)} or more, and much coconut oil.`,
  'salt.bar': () => 'Cast it in single cavities, or cut it while it is warm.',
  'sugar.heats': ({ belowC }, texts) =>
    `Use ${texts.range(texts.percent(1), texts.percent(2))}, dissolved in some of the water, and work below ${texts.temperature(belowC)}.`,
  'fragrance.limit-unknown': () =>
    'Ask the supplier for the certificate, and enter its limit for soap (category 9).',
  'fragrance.limit-not-for-soap': () => 'Enter the limit for soap (category 9) from its certificate.',
  'fragrance.over-together': ({ allowedPercent }, texts) =>
    `Take ${texts.percent(allowedPercent)} of each, or ask the suppliers what both hold.`,
  'fragrance.over-limit': ({ allowedPercent }, texts) =>
    `Use at most ${texts.percent(allowedPercent)} of the fats.`,
  'fragrance.much': (_, texts) => `${texts.range(texts.percent(3), texts.percent(6))} is usual.`,
  'fragrance.seizes': () => 'Use another, or leave it out of this batch.',
  'fragrance.rices': () => 'Stir it into some of the oil first, and blend the lumps out by stick blender.',
  'fragrance.untried': () => 'Make a small test batch, and enter what it does.',
  'fragrance.browns': () =>
    'Plan the colour around it. Leave it out of light layers and piping beside it: the brown creeps.',
  'liquid.scorches': (_, texts) =>
    `Freeze it in cubes, stand the jug in ice, and add the lye a spoon at a time, below ${texts.temperature(35)}. Or put it into the batter.`,
  'liquid.boils-over': () =>
    'Boil it for ten minutes, let it go flat, and top it up with water. Use it ice-cold in a tall jug, and add the lye a spoon at a time.',
  'liquid.spits': () =>
    'Never pour it onto dry or strong lye. Have it cold, and add the lye a spoon at a time. On a lye burn no vinegar: plenty of running water.',
  'liquid.spoils': () => 'Strain it finely, and keep a bar back to watch.',
  'liquid.adds-fat': () =>
    'That is how most makers leave it. To keep the superfat you want, lower it in the recipe.',
  'colourant.much': (_, texts) =>
    `${texts.range(texts.percent(1), texts.percent(3))} colours well. Test a piece on a white cloth.`,
  'colourant.oil': () => 'Stir the colour into some of the weighed fats instead, or into glycerol.',
  'fats.turn-rancid': (_, texts) =>
    `Keep them under ${texts.percent(15)} and the superfat at ${texts.percent(5)} or less. Store the soap cool, dark and dry.`,
  'fats.allergens': () => 'Name them on the label, and tell whoever asks.',
  'fats.advised-against': () => 'Say so on the label, or take another fat.',
  'batch.heavy': ({ batches }, texts) =>
    `Make it in ${texts.number(batches, 0)} batches, or check the amounts.`,
  'addition.spoils': () => 'Use it dried and strained, in place of some water. Keep a bar back and watch it.',
  'addition.browns': () => 'Put it on top late and bone dry, and wrap the soap once it is cured.',
  'addition.scorches': ({ belowC }, texts) =>
    `Work below ${texts.temperature(belowC)}, and stir it into some of the fats.`,
  'fat.confirmed': () => 'Check the sheet once more before you weigh the lye.',
  'fat.own-figure': () => 'Check it against the sheet of the lot you use.',
  'portions.too-heavy': () => 'Give them less, or give them shares.',
  'mould.too-few': () => 'Make fewer pieces, or make them in two runs.',
  'soap.ash': () =>
    'Cover the soap so that no air moves over it. Or spritz it with isopropyl alcohol, which burns: no flame, no hot plate.',
  'soap.overheats': ({ advice }, texts) =>
    `${adviceOr(advice, texts, 'Do not insulate it, and set it in a draught or the cold.')} Look after it for the first two hours.`,
  'soap.gel-unsure': ({ advice }, texts) =>
    adviceOr(
      advice,
      texts,
      'Wrap the mould to gel it wholly, or set it in the refrigerator to keep it from gel.',
    ),
  'soap.gel-unlikely': ({ advice }, texts) =>
    adviceOr(advice, texts, 'Wrap the mould, or keep it warm in an oven that is switched off.'),
  'soap.gel-likely': ({ advice }, texts) =>
    adviceOr(advice, texts, 'Set it in the refrigerator for a day, or pour it cooler.'),
  'soap.sweats': () => 'Cure it in a drier room with moving air, and wrap it once it is cured.',
  'soap.not-forecast': (_, texts) =>
    `Go by the amounts alone. For bars keep potassium hydroxide to ${texts.percent(10)} or less.`,
  'soap.sticks': (_, texts) =>
    `Add ${texts.range(texts.percent(1), texts.percent(2))} sodium lactate, wait longer, or freeze it for some hours before you push it out.`,
};
