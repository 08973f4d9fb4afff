import type { Risk } from '#contract';
import type { MessageWords, Texts } from '../words.js';

const allergens = {
  'tree-nut': 'tree nuts',
  ...{ peanut: 'peanut', soya: 'soya', sesame: 'sesame', wheat: 'wheat', mustard: 'mustard' },
  wool: 'wool wax',
} as const;

/** What may go wrong. What would help is in `risk-remedies.ts`. */
export const risks: MessageWords<Risk> = {
  'lye.strong': ({ lyePercent }, texts) =>
    `Lye of ${texts.percent(lyePercent)} gets very hot while you mix it. Near ${texts.percent(50)} it crystallises as it cools.`,
  'lye.wet': ({ lyePercent }, texts) =>
    `With all its water this batter is as wet as with lye of ${texts.percent(lyePercent)}. It sets slowly, shrinks and gets ash.`,
  'lye.cold-bath': ({ batterTemperatureC, roomC }, texts) =>
    `In a room of ${texts.temperature(roomC)} lye and fats do not cool to ${texts.temperature(batterTemperatureC)} by themselves.`,
  'lye.taken-ready': () => 'No stage makes the lye. It is taken as made and cool when you mix.',
  'lye.excess': ({ percent }, texts) =>
    `This batter holds ${texts.percent(percent)} more lye than its fats can take. The soap burns skin and eyes.`,
  'lye.little-superfat': ({ superfatPercent }, texts) =>
    `A superfat of ${texts.percent(superfatPercent)} leaves little room for scales that are off.`,
  'lye.much-superfat': ({ superfatPercent }, texts) =>
    `A superfat of ${texts.percent(superfatPercent)} makes soft soap that goes rancid sooner.`,
  'lye.lean-lot': ({ leftOverPercent }, texts) =>
    `If your fats are from the low end of their range, ${texts.percent(leftOverPercent)} lye stays in the soap.`,
  'acid.takes-much': ({ percent }, texts) =>
    `The acid takes ${texts.percent(percent)} of the lye. If it is weaker than written, that lye stays in the soap.`,
  'batch.small': ({ gramPercent }, texts) =>
    `In a batch this small, ${texts.mass(1)} of lye is ${texts.percent(gramPercent)} of it.`,
  'batch.reaches-not': ({ count, pieces, certainty, shortageChance }, texts) =>
    `The batch has the size its recipe gives. It reaches for ${String(pieces)} of ${String(count)} pieces with ${texts.share(certainty)} certainty. Too little for all: ${texts.share(shortageChance)}.`,
  'batter.too-cool': ({ fats, batterTemperatureC }, texts) =>
    `${texts.and(fats.map(({ fat, title }) => texts.titled(fat, title)))}: this sets at ${texts.temperature(batterTemperatureC)}, and lye may be caught in lumps.`,
  'batter.pace': ({ count, neededMin, stretchMin, chance, piecesSurely }, texts) =>
    `All ${String(count)} pieces take ${texts.duration(neededMin)}, and the batter leaves about ${texts.band(stretchMin)}. ` +
    `All in time: ${texts.odds(chance)}. Sure of ${String(piecesSurely)} pieces. Late ones get air pockets.`,
  'sodium-lactate.much': ({ percent }, texts) =>
    `Sodium lactate at ${texts.percent(percent)} of the fats makes edges brittle.`,
  'salt.much': ({ percent }, texts) =>
    `Salt at ${texts.percent(percent)} of the fats thickens the batter and lowers the lather.`,
  'salt.bar': ({ percent }, texts) =>
    `With salt at ${texts.percent(percent)} of the fats the soap sets within hours. Cut late, it crumbles.`,
  'sugar.heats': ({ percent }, texts) =>
    `Sugar at ${texts.percent(percent)} of the fats heats the soap from inside. It may crack or rise out of the mould.`,
  'fragrance.limit-unknown': ({ fragrance, sharePercent }, texts) =>
    `${texts.quoted(fragrance)} makes up to ${texts.percent(sharePercent)} of the dry soap. Its limit is not given.`,
  'fragrance.limit-not-for-soap': ({ fragrance, sharePercent, category }, texts) =>
    `${texts.quoted(fragrance)} makes up to ${texts.percent(sharePercent)} of the dry soap. Its limit is for other products (category ${category}), not for soap.`,
  'fragrance.over-limit': ({ fragrance, sharePercent, limitPercent }, texts) =>
    `${texts.quoted(fragrance)} makes up to ${texts.percent(sharePercent)} of the dry soap. Its supplier allows ${texts.percent(limitPercent)}.`,
  'fragrance.over-together': ({ usedPercent }, texts) =>
    `Each fragrance is within its limit, but together they use ${texts.percent(Math.round(usedPercent))} of their limits. They may hold the same substance.`,
  'fragrance.much': ({ percent }, texts) =>
    `Fragrance at ${texts.percent(percent)} of the fats may soften the soap and thicken the batter sooner.`,
  'fragrance.seizes': ({ fragrance }, texts) =>
    `${texts.quoted(fragrance)} makes the batter seize as it goes in. After that nothing can be poured or piped.`,
  'fragrance.rices': ({ fragrance }, texts) =>
    `${texts.quoted(fragrance)} may turn the batter lumpy, like rice, as it goes in.`,
  'fragrance.untried': ({ fragrance }, texts) =>
    `What ${texts.quoted(fragrance)} does to the batter is not known. Its times may be far off.`,
  'fragrance.browns': ({ shade }) =>
    `The vanillin in the fragrance turns the soap ${shades[shade]} within hours to weeks.`,
  'liquid.scorches': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: with lye it heats up, turns orange and smells of ammonia.`,
  'liquid.boils-over': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: alcohol and fizz make lye foam over and burn you, and alcohol that is left makes the batter seize.`,
  'liquid.spits': ({ liquids }, texts) => `${liquidsOf(liquids, texts)}: acid on lye heats and spits.`,
  'liquid.spoils': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: bits of it may brown or grow mould in the soap.`,
  'liquid.adds-fat': ({ fatPercent, superfatPercent }, texts) =>
    `The liquids bring fat: ${texts.percent(fatPercent)} of the fats. It gets no lye, and the superfat becomes about ${texts.percent(superfatPercent)}.`,
  'colourant.much': ({ colourant, percent }, texts) =>
    `${texts.quoted(colourant)} at ${texts.percent(percent)} of the fats may colour the lather and rub off.`,
  'colourant.oil': ({ superfatPercent }, texts) =>
    `The oil that carries the colour gets no lye. The superfat becomes about ${texts.percent(superfatPercent)}.`,
  'fats.turn-rancid': ({ percent }, texts) =>
    `${texts.percent(percent)} of the fats is linoleic and linolenic acid: the soap may smell rancid and get orange spots within months.`,
  'fats.allergens': ({ fats }, texts) =>
    `Some people react to ${texts.and(fats.map(({ fat, title, allergen }) => `${texts.titled(fat, title)} (${allergens[allergen]})`))}.`,
  'fats.advised-against': ({ fats }, texts) =>
    `${liquidsOf(
      fats.map(({ fat, title }) => ({ liquid: fat, title })),
      texts,
    )}: some suppliers advise against it in pregnancy.`,
  'batch.heavy': ({ massG, liftsG }, texts) =>
    `This batch weighs ${texts.mass(massG)}; one person lifts ${texts.mass(liftsG)} at most. So much lye, hot at once, can boil over.`,
  'addition.spoils': ({ addition }, texts) =>
    `${texts.quoted(addition)}: fresh food may brown, smell or grow mould in soap without a preservative.`,
  'addition.browns': ({ addition }, texts) =>
    `${texts.quoted(addition)}: plants brown in fresh soap, and damp ones may grow mould on it.`,
  'addition.scorches': ({ addition, belowC }, texts) =>
    `${texts.quoted(addition)}: above ${texts.temperature(belowC)} milk turns brown in lye and smells of ammonia.`,
  'fat.confirmed': ({ fat, title }, texts) =>
    `You confirmed an unlikely figure of ${texts.quoted(texts.titled(fat, title))}.`,
  'fat.own-figure': ({ fat, title, used, shipped, differsByPercent }, texts) => {
    const own = `The lye for ${texts.titled(fat, title)} goes by your own figure, ${texts.number(used)} mg KOH/g`;
    const share = Math.abs(Math.round(differsByPercent * 10) / 10);
    if (share === 0) return `${own}, the same as the shipped one.`;
    return `${own}: ${texts.percent(share)} ${differsByPercent > 0 ? 'more' : 'less'} than the shipped ${texts.number(shipped)}.`;
  },
  'portions.too-heavy': ({ askedG, haveG }, texts) =>
    `The portions in grams take ${texts.mass(askedG)}, and all of it is ${texts.mass(haveG)}. They are cut down to fit, and nothing is left for the rest.`,
  'mould.too-few': ({ mould, needed, owned }, texts) =>
    `This takes ${String(needed)} cavities of ${texts.quoted(mould)}. You have ${String(owned)}.`,
  'soap.ash': ({ signs }, texts) =>
    `White ash may show on open faces in the first days: ${signsOf(signs, texts)}.`,
  'soap.overheats': ({ signs, chance, hottestC }, texts) => {
    const odds = chance === undefined ? '' : `, ${texts.odds(chance)}`;
    const heat = hottestC === undefined ? '' : ` Its middle reaches about ${texts.temperature(hottestC)}.`;
    return `It may overheat, crack or rise${odds}${signs.length === 0 ? '' : `: ${signsOf(signs, texts)}`}.${heat}`;
  },
  'soap.gel-unsure': ({ whole, part, none }, texts) =>
    `It may gel wholly (${texts.odds(whole)}), in its middle only (${texts.odds(part)}) or not at all (${texts.odds(none)}). A gelled middle shows as a ring.`,
  'soap.gel-unlikely': ({ chance }, texts) =>
    `By its own heat it gels in ${texts.odds(chance)}. Its times count on full gel.`,
  'soap.gel-likely': ({ chance }, texts) =>
    `By its own heat it gels in ${texts.odds(chance)}. Its times count on no gel.`,
  'soap.sweats': ({ humidityPercent }, texts) =>
    `The soap may sweat: salt draws water from damp air (${texts.percent(humidityPercent)}).`,
  'soap.not-forecast': ({ potashPercent }, texts) =>
    `With ${texts.percent(potashPercent)} of its lye as potassium hydroxide this becomes a soft paste. Its times are not forecast.`,
  'soap.sticks': ({ hardPercent }, texts) =>
    `It may stick and tear in the mould: no hardener, and only ${texts.percent(hardPercent)} hard fatty acids.`,
};

const shades = { cream: 'cream', tan: 'tan', brown: 'chocolate brown' } as const;

function liquidsOf(
  liquids: readonly { readonly liquid: string; readonly title: string }[],
  texts: Texts,
): string {
  return texts.and(liquids.map(({ liquid, title }) => texts.titled(liquid, title)));
}

type Signs = Extract<Risk, { readonly code: 'soap.ash' }>['signs'];

function signsOf(signs: Signs, texts: Texts): string {
  const [percent, degrees] = [texts.percent, texts.temperature];
  return texts.and(
    signs.map(({ sign, value = 0 }) => {
      switch (sign) {
        case 'wet-batter':
          return `wet batter (lye of ${percent(value)})`;
        case 'no-gel':
          return 'no gel';
        case 'cool-batter':
          return `cool batter (${degrees(value)})`;
        case 'damp-air':
          return `damp air (${percent(value)})`;
        case 'draught':
          return 'air that moves over it';
        case 'full-gel':
          return 'full gel';
        case 'large-block':
          return 'a block that keeps its heat';
        case 'sugar-or-milk':
          return 'sugar or milk';
        case 'warm-batter':
          return `warm batter (${degrees(value)})`;
        case 'hot-fragrance':
          return 'a fragrance that heats';
      }
    }),
  );
}
