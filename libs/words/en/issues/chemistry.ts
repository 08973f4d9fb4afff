import type { BatterIssues, FatIssues, MouldIssues, RecipeIssues } from '#units';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

type Codes = keyof RecipeIssues | keyof BatterIssues | keyof FatIssues | keyof MouldIssues;

const confirm = 'If the sheet really says so, confirm the figures.';
const alkalis = { naoh: 'sodium hydroxide', koh: 'potassium hydroxide' } as const;
const acids: Readonly<Record<string, string>> = {
  'citric-acid': 'Citric acid',
  'citric-acid-monohydrate': 'Citric acid monohydrate',
  'lactic-acid': 'Lactic acid',
  'acetic-acid': 'Vinegar',
};

/** “The superfat is 30 %.” */
const isNow =
  (name: string, why?: string) =>
  ({ found, unit }: Found, { inUnit }: Texts): Said => ({
    wrong: `${name} is ${inUnit(found, unit)}.`,
    ...(why !== undefined && { why }),
  });

interface Found {
  readonly found: number;
  readonly unit: '%' | '°C' | Parameters<Texts['inUnit']>[1];
}

export const chemistryIssues: IssueWordsOf<Codes> = {
  'recipe.unknown-fat': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Did you mean ${or(nearest.map(quoted))}?`;
    return `There is no fat ${quoted(String(value))}.${near}`;
  },
  'recipe.fat-twice': ({ value }, { quoted }) =>
    `${quoted(String(value))} is in the list twice. Give it one share.`,
  'recipe.fat-share-out-of-range': ({ fat, value }, { quoted, percent }) =>
    `${quoted(fat)} has a share of ${percent(Number(value))}.`,
  'recipe.fat-mass-out-of-range': ({ fat, value }, { quoted, mass }) =>
    `${quoted(fat)} weighs ${mass(Number(value))}.`,
  'recipe.fat-amount-unclear': ({ fat, problem }, { quoted }) => ({
    wrong: {
      missing: `${quoted(fat)} has no amount. Give its share, or its grams.`,
      twice: `${quoted(fat)} has both a share and grams. Give one of them.`,
      mixed: `${quoted(fat)} is in grams, and other fats are in shares. Give all fats in one way.`,
    }[problem],
    isWhole: true,
  }),
  'recipe.size-of-other-fat': ({ fat }, { quoted }) =>
    `The batch is to go by ${quoted(fat)}, which is not in the recipe. Name one of its fats.`,
  'recipe.size-out-of-range': ({ fatsG }, { mass }) => `All fats of the batch would weigh ${mass(fatsG)}.`,
  'recipe.no-fats': () => 'The recipe has no fats. Add one.',
  'recipe.shares-not-100': ({ sum }, { inUnit }) => ({
    wrong: `The shares of the fats add up to ${inUnit(sum, '%')}. Bring them to ${inUnit(100, '%')}.`,
    isWhole: true,
  }),
  'recipe.water-twice': () => 'The water is given twice. Give it in one way.',
  'recipe.acid-strength-missing': ({ acid }) => ({
    wrong: `${acids[acid] ?? acid} is sold in water, at many strengths. Give the one on its label, such as 5 for a household vinegar.`,
    isWhole: true,
  }),
  'recipe.acid-for-water': ({ waterG, lyeG }, { mass }) =>
    `For ${mass(100)} of fats only ${mass(waterG)} of water would be left to dissolve ${mass(lyeG)} of lye. ` +
    'Leave at least as much water as lye.',
  'recipe.too-wet': ({ part, percent, ofColours }, { quoted, inUnit }) =>
    ofColours
      ? `The colours of ${quoted(part)} are stirred into so much water that its batter is as wet as with lye of ${inUnit(Number(percent.toFixed(1)), '%')}. Use less water for them, glycerol or oil.`
      : `The acid brings so much water into ${quoted(part)} that its batter is as wet as with lye of ${inUnit(Number(percent.toFixed(1)), '%')}. Let its water replace water of the lye.`,
  'recipe.unknown-liquid': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Did you mean ${or(nearest.map(quoted))}?`;
    return `There is no liquid ${quoted(String(value))} in the table.${near} Or give its own figures.`;
  },
  'recipe.liquid-twice': ({ value, addedTo }, { quoted }) =>
    `${quoted(String(value))} goes into the ${addedTo === 'lye' ? 'lye' : 'batter'} twice. Give it one amount.`,
  'recipe.liquid-amount-unclear': ({ liquid, problem }, { quoted }) => ({
    wrong: {
      missing: `${quoted(liquid)} has no amount. Give its share of the liquid, or its grams.`,
      twice: `${quoted(liquid)} has both a share and grams. Give one of them.`,
      'fats-in-shares': `${quoted(liquid)} is in grams, and the fats are in shares. Give its share of the liquid.`,
    }[problem],
    isWhole: true,
  }),
  'recipe.liquid-share-out-of-range': ({ liquid, value }, { quoted, percent }) =>
    `${quoted(liquid)} has a share of ${percent(Number(value))}.`,
  'recipe.liquid-mass-out-of-range': ({ liquid, value }, { quoted, mass }) =>
    `${quoted(liquid)} weighs ${mass(Number(value))}.`,
  'recipe.liquid-figures-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `What ${quoted(title)} holds adds up to ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'recipe.liquids-over-100': ({ sum }, { inUnit }) =>
    `The shares of the liquids add up to ${inUnit(Number(sum.toFixed(1)), '%')}. Plain water is what they leave of ${inUnit(100, '%')}.`,
  'recipe.liquids-too-sour': () =>
    'The liquids hold so much acid, or so little water, that the recipe cannot be made with them. Take less of them.',
  'recipe.liquids-over-water': ({ broughtG, askedG }, { mass }) =>
    `For ${mass(100)} of fats the recipe asks for ${mass(askedG)} of water, and the liquids hold ${mass(broughtG)}. Take less of them, or weaker lye.`,
  'recipe.lye-not-dissolved': ({ waterG, lyeG }, { mass }) =>
    `For ${mass(100)} of fats ${mass(lyeG)} of lye would be dissolved in ${mass(waterG)} of water. It needs at least its own weight. ` +
    'Add less of the liquids to the batter, or take weaker lye.',
  'lye.stock-too-weak': ({ lyePercent, stockPercent }, { inUnit }) =>
    `The lye is to be ${inUnit(Number(lyePercent.toFixed(1)), '%')}, and the stock solution has ${inUnit(stockPercent, '%')}: too much water for it. Take more water in the recipe, a stronger stock, or flakes.`,
  'lye.stock-leaves-no-liquids': ({ missingG }, { mass }) =>
    `The stock solution and the liquids hold ${mass(missingG)} of water too much for ${mass(100)} of fats. Take less of the liquids, a stronger stock, or flakes.`,
  'lye.stock-without-naoh': () =>
    'The stock solution is of sodium hydroxide, and the recipe takes none. Leave the stock out.',
  'lye.koh-purity-missing': () => ({
    wrong:
      'Give the purity of the potassium hydroxide, from the supplier’s sheet: it is sold at many, and a guess could burn.',
  }),
  'lye.concentration-out-of-range': ({ percent: found }, { inUnit }) => ({
    wrong: `The lye concentration is ${inUnit(Number(found.toFixed(2)), '%')}.`,
    why: 'Stronger lye crystallises; with weaker lye the soap does not set.',
  }),
  'lye.superfat-out-of-range': ({ found, isExcessIntended }, { inUnit }) => ({
    wrong: `The superfat is ${inUnit(found, '%')}.`,
    why:
      isExcessIntended && found < 0
        ? 'With more lye than that nobody should touch the soap.'
        : found > 0
          ? 'So much fat stays free that the soap is greasy, hardly lathers and soon turns rancid.'
          : 'Below 0 lye is left over in the soap, and it burns. For soap that you salt out or neutralise before use, ' +
            'say that the excess of lye is meant.',
  }),
  'lye.purity-out-of-range': ({ found, alkali }, { inUnit }) =>
    `The purity of the ${alkalis[alkali]} is ${inUnit(found, '%')}.`,
  'lye.stock-out-of-range': isNow(
    'The strength of the stock solution',
    'Stronger lye crystallises in its bottle.',
  ),
  'recipe.koh-share-out-of-range': isNow('The share of potassium hydroxide in the lye'),
  'recipe.sodium-lactate-out-of-range': isNow('Sodium lactate'),
  'recipe.salt-out-of-range': isNow('Salt'),
  'recipe.sugar-out-of-range': isNow('Sugar'),
  'recipe.fragrance-out-of-range': ({ title, found }, { quoted, inUnit }) => ({
    wrong: `${quoted(title)} is ${inUnit(found, '%')}.`,
    why: 'Keep within the supplier’s own limit, too.',
  }),
  'recipe.fragrances-out-of-range': ({ sum }, { inUnit }) =>
    `All fragrances together are ${inUnit(Number(sum.toFixed(2)), '%')} of the fats.`,
  'recipe.unknown-allergen': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Did you mean ${or(nearest.map(quoted))}?`;
    return `${quoted(String(value))} is not on the list of allergens that labels name.${near}`;
  },
  'recipe.allergens-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `The allergens of ${quoted(title)} add up to ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'recipe.acid-out-of-range': isNow('The acid'),
  'recipe.acid-strength-out-of-range': isNow('The strength of the acid'),
  'recipe.colourant-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `${quoted(title)} is ${inUnit(found, '%')}.`,
  'recipe.addition-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `${quoted(title)} is ${inUnit(found, '%')}.`,
  'batter.temperature-out-of-range': isNow('The batter temperature'),
  'batch.fats-out-of-range': ({ found }, { mass }) => `A batch with ${mass(found)} of fats cannot be made.`,
  'batch.volume-out-of-range': ({ found }, { volume }) => `A batch of ${volume(found)} cannot be made.`,
  'titration.impossible': () =>
    'These are no figures of a titration: the blank takes at least as much as the sample, and mass and strength are above 0.',

  'fat.saponification-disordered': ({ title, low, used, high, isAsNaoh }, { quoted, number }) =>
    isAsNaoh
      ? {
          wrong: `${quoted(title)} has a saponification value of ${number(used, 4)}.`,
          why: 'A figure such as 0.135 is for sodium hydroxide: divide it by 0.000713 to have it in mg KOH/g.',
        }
      : `${quoted(title)} has the saponification values ${number(low)}, ${number(used)} and ${number(high)}. They must rise.`,
  'fat.unknown-fatty-acid': ({ name, share, isCalled }, { quoted, inUnit }) => ({
    wrong: `${quoted(name)} with ${inUnit(share, '%')} is not the share of a fatty acid. Write carbons and double bonds, such as C18:1, or ricinoleic.`,
    ...(isCalled !== undefined && { why: `${quoted(name)} is ${isCalled}.` }),
  }),
  'fat.fatty-acids-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `The fatty acids of ${quoted(title)} add up to ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'fat.density-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `The density of ${quoted(title)} is ${inUnit(found, 'g/mL')}.`,
  'fat.expansion-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `The expansion of ${quoted(title)} is ${inUnit(found, 'g/mL per °C')}.`,
  'fat.iodine-disordered': ({ title, low, high }, { quoted, number }) =>
    `The iodine values of ${quoted(title)} are ${number(low)} and ${number(high)}. The first must not be above the second.`,
  'fat.unsaponifiable-disordered': ({ title, low, high }, { quoted, inUnit }) =>
    `${quoted(title)} has ${inUnit(low, '%')} and ${inUnit(high, '%')} that do not saponify. The first must not be above the second.`,
  'fat.wax-saponification-doubtful': ({ title, used, most }, { quoted, number }) => ({
    wrong:
      `${quoted(title)} is entered as a wax and takes ${number(used)} mg KOH/g. No wax takes more than ${number(most)}. ` +
      'If it is an oil or a butter, give its fatty acids: with too much lye the soap burns.',
    why: confirm,
    isWhole: true,
  }),
  'fat.differs-from-shipped': ({ title, used, shipped, differsByPercent }, { quoted, number, inUnit }) => ({
    wrong:
      `${quoted(title)} takes ${number(used)} mg KOH/g, ${inUnit(Number(Math.abs(differsByPercent).toFixed(1)), '%')} ` +
      `${differsByPercent > 0 ? 'more' : 'less'} than the usual ${number(shipped)}.`,
    why: `If it is another fat, give it another short name. ${confirm}`,
  }),
  'fat.saponification-as-naoh': ({ title, used, expected, asKoh }, { quoted, number }) => ({
    wrong:
      `${quoted(title)} takes ${number(used)} mg KOH/g, but its fatty acids ask for ${number(expected)}. ` +
      `It looks like a figure for sodium hydroxide: in mg KOH/g that would be ${number(asKoh)}.`,
    why: confirm,
    isWhole: true,
  }),
  'fat.saponification-doubtful': ({ title, used, expected }, { quoted, number }) => ({
    wrong: `${quoted(title)} takes ${number(used)} mg KOH/g, but its fatty acids ask for ${number(expected)}.`,
    why: confirm,
  }),
  'fat.profile-incomplete': ({ title, sum }, { quoted, inUnit }) => ({
    wrong: `The fatty acids of ${quoted(title)} add up to ${inUnit(Number(sum.toFixed(1)), '%')}.`,
    why: `How hard and how soon the soap sets is worked out from them.${sum === 0 ? ' If it is a wax, say so.' : ''} ${confirm}`,
  }),
  'fat.density-doubtful': ({ title, found, expected }, { quoted, inUnit }) => ({
    wrong: `The density of ${quoted(title)} is ${inUnit(found, 'g/mL')}; from its other figures about ${inUnit(expected, 'g/mL')} was expected.`,
    why: confirm,
  }),

  'shape.measure-out-of-range': ({ foundMm }, { length }) => `It cannot measure ${length(foundMm)}.`,
  'shape.tube-too-thick': ({ tubeMm, outerMm }, { length }) =>
    `A ring ${length(outerMm)} across cannot be ${length(tubeMm)} thick.`,
  'mould.cavity-out-of-range': ({ holdsMl }, { volume }) =>
    `With these measures a cavity holds ${volume(holdsMl)}.`,
  'mould.shape-differs': ({ statedMl, holdsMl }, { volume }) =>
    `By its volume a cavity holds ${volume(statedMl)}, by its measures ${volume(holdsMl)}. Measure again, or leave the measures out.`,
};
