import type { Risk } from '#contract';
import type { MessageWords, Texts } from '../words.js';

const allergens = {
  'tree-nut': 'Schalenfrüchte',
  ...{ peanut: 'Erdnuss', soya: 'Soja', sesame: 'Sesam', wheat: 'Weizen', mustard: 'Senf' },
  wool: 'Wollwachs',
} as const;

/** Was schiefgehen kann. Was hilft, steht in `risk-remedies.ts`. */
export const risks: MessageWords<Risk> = {
  'lye.strong': ({ lyePercent }, texts) =>
    `Lauge mit ${texts.percent(lyePercent)} wird beim Anrühren sehr heiß. Um ${texts.percent(50)} kristallisiert sie beim Abkühlen.`,
  'lye.wet': ({ lyePercent }, texts) =>
    `Mit allem Wasser ist der Leim so nass wie mit Lauge von ${texts.percent(lyePercent)}. Er wird langsam fest, schrumpft und bekommt Sodaasche.`,
  'lye.cold-bath': ({ batterTemperatureC, roomC }, texts) =>
    `In einem Raum von ${texts.temperature(roomC)} kühlen Lauge und Fette nicht von selbst auf ${texts.temperature(batterTemperatureC)} ab.`,
  'lye.taken-ready': () =>
    'In keinem Schritt wird die Lauge angerührt. Sie gilt beim Verrühren als fertig und kühl.',
  'lye.excess': ({ percent }, texts) =>
    `In diesem Leim ist ${texts.percent(percent)} mehr Lauge, als seine Fette aufnehmen. Die Seife verätzt Haut und Augen.`,
  'lye.little-superfat': ({ superfatPercent }, texts) =>
    `Eine Überfettung von ${texts.percent(superfatPercent)} lässt wenig Spielraum für eine ungenaue Waage.`,
  'lye.much-superfat': ({ superfatPercent }, texts) =>
    `Eine Überfettung von ${texts.percent(superfatPercent)} gibt weiche Seife, die eher ranzig wird.`,
  'lye.lean-lot': ({ leftOverPercent }, texts) =>
    `Kommen Ihre Fette vom unteren Ende der Spanne, bleibt ${texts.percent(leftOverPercent)} Lauge in der Seife.`,
  'acid.takes-much': ({ percent }, texts) =>
    `Die Säure verbraucht ${texts.percent(percent)} der Lauge. Ist sie schwächer als angegeben, bleibt so viel Lauge in der Seife.`,
  'batch.small': ({ gramPercent }, texts) =>
    `In einem so kleinen Ansatz ist ${texts.mass(1)} Lauge schon ${texts.percent(gramPercent)} davon.`,
  'batch.reaches-not': ({ count, pieces, certainty, shortageChance }, texts) =>
    `Der Ansatz hat die Größe, die sein Rezept angibt. Er reicht mit ${texts.share(certainty)} Sicherheit für ${String(pieces)} von ${String(count)} Stücken. Zu wenig für alle: ${texts.share(shortageChance)}.`,
  'batter.too-cool': ({ fats, batterTemperatureC }, texts) =>
    `${texts.and(fats.map(({ fat, title }) => texts.titled(fat, title)))}: Das wird bei ${texts.temperature(batterTemperatureC)} fest, und Lauge kann in Klumpen eingeschlossen werden.`,
  'batter.pace': ({ count, neededMin, stretchMin, chance, piecesSurely }, texts) =>
    `Alle ${String(count)} Stück brauchen ${texts.duration(neededMin)}, und der Leim lässt etwa ${texts.band(stretchMin)}. ` +
    `Alle rechtzeitig: ${texts.odds(chance)}. Sicher sind ${String(piecesSurely)} Stück. Späte bekommen Luftblasen.`,
  'sodium-lactate.much': ({ percent }, texts) =>
    `Natriumlaktat mit ${texts.percent(percent)} der Fette macht die Kanten spröde.`,
  'salt.much': ({ percent }, texts) =>
    `Salz mit ${texts.percent(percent)} der Fette dickt den Leim an und mindert den Schaum.`,
  'salt.bar': ({ percent }, texts) =>
    `Mit ${texts.percent(percent)} Salz auf die Fette wird die Seife nach Stunden fest. Spät geschnitten, bröckelt sie.`,
  'sugar.heats': ({ percent }, texts) =>
    `Zucker mit ${texts.percent(percent)} der Fette erhitzt die Seife von innen. Sie kann reißen oder aus der Form steigen.`,
  'fragrance.limit-unknown': ({ fragrance, sharePercent }, texts) =>
    `${texts.quoted(fragrance)} macht bis zu ${texts.percent(sharePercent)} der trockenen Seife aus. Der Höchstwert ist nicht angegeben.`,
  'fragrance.limit-not-for-soap': ({ fragrance, sharePercent, category }, texts) =>
    `${texts.quoted(fragrance)} macht bis zu ${texts.percent(sharePercent)} der trockenen Seife aus. Der Höchstwert gilt für andere Produkte (Kategorie ${category}), nicht für Seife.`,
  'fragrance.over-limit': ({ fragrance, sharePercent, limitPercent }, texts) =>
    `${texts.quoted(fragrance)} macht bis zu ${texts.percent(sharePercent)} der trockenen Seife aus. Der Lieferant erlaubt ${texts.percent(limitPercent)}.`,
  'fragrance.over-together': ({ usedPercent }, texts) =>
    `Jeder Duft hält seinen Höchstwert ein, zusammen brauchen sie davon aber ${texts.percent(Math.round(usedPercent))}. Sie können denselben Stoff enthalten.`,
  'fragrance.much': ({ percent }, texts) =>
    `Duft mit ${texts.percent(percent)} der Fette kann die Seife weich machen und den Leim eher andicken.`,
  'fragrance.seizes': ({ fragrance }, texts) =>
    `${texts.quoted(fragrance)} lässt den Leim sofort stocken. Danach lässt sich nichts mehr gießen oder spritzen.`,
  'fragrance.rices': ({ fragrance }, texts) =>
    `${texts.quoted(fragrance)} kann den Leim klumpen lassen, körnig wie Reis.`,
  'fragrance.untried': ({ fragrance }, texts) =>
    `Was ${texts.quoted(fragrance)} mit dem Leim macht, ist nicht bekannt. Die Zeiten können weit danebenliegen.`,
  'fragrance.browns': ({ shade }) =>
    `Das Vanillin im Duft färbt die Seife ${shades[shade]}, nach Stunden bis Wochen.`,
  'liquid.scorches': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: Mit Lauge wird das heiß, färbt sich orange und riecht nach Ammoniak.`,
  'liquid.boils-over': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: Mit Alkohol und Kohlensäure schäumt Lauge über und verätzt Sie, und Alkohol, der bleibt, lässt den Leim schlagartig fest werden.`,
  'liquid.spits': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: Säure auf Lauge wird heiß und spritzt.`,
  'liquid.spoils': ({ liquids }, texts) =>
    `${liquidsOf(liquids, texts)}: Stückchen davon können in der Seife braun werden oder schimmeln.`,
  'liquid.adds-fat': ({ fatPercent, superfatPercent }, texts) =>
    `Die Flüssigkeiten bringen Fett mit: ${texts.percent(fatPercent)} der Fette. Es bekommt keine Lauge, und die Überfettung wird etwa ${texts.percent(superfatPercent)}.`,
  'colourant.much': ({ colourant, percent }, texts) =>
    `${texts.quoted(colourant)} mit ${texts.percent(percent)} der Fette kann den Schaum färben und abfärben.`,
  'colourant.oil': ({ superfatPercent }, texts) =>
    `Für das Öl, in dem die Farbe angerührt ist, gibt es keine Lauge. Die Überfettung steigt auf etwa ${texts.percent(superfatPercent)}.`,
  'fats.turn-rancid': ({ percent }, texts) =>
    `${texts.percent(percent)} der Fette sind Linol- und Linolensäure: Die Seife kann in Monaten ranzig riechen und orange Flecken bekommen.`,
  'fats.allergens': ({ fats }, texts) =>
    `Manche Menschen reagieren auf ${texts.and(fats.map(({ fat, title, allergen }) => `${texts.titled(fat, title)} (${allergens[allergen]})`))}.`,
  'fats.advised-against': ({ fats }, texts) =>
    `${liquidsOf(
      fats.map(({ fat, title }) => ({ liquid: fat, title })),
      texts,
    )}: Manche Lieferanten raten in der Schwangerschaft davon ab.`,
  'batch.heavy': ({ massG, liftsG }, texts) =>
    `Dieser Ansatz wiegt ${texts.mass(massG)}; ein Mensch hebt höchstens ${texts.mass(liftsG)}. So viel Lauge auf einmal kann überkochen.`,
  'addition.spoils': ({ addition }, texts) =>
    `${texts.quoted(addition)}: Frische Lebensmittel können in Seife ohne Konservierung braun werden, riechen oder schimmeln.`,
  'addition.browns': ({ addition }, texts) =>
    `${texts.quoted(addition)}: Pflanzen werden in frischer Seife braun, und feuchte können darauf schimmeln.`,
  'addition.scorches': ({ addition, belowC }, texts) =>
    `${texts.quoted(addition)}: Über ${texts.temperature(belowC)} wird Milch in Lauge braun und riecht nach Ammoniak.`,
  'fat.confirmed': ({ fat, title }, texts) =>
    `Sie haben für ${texts.quoted(texts.titled(fat, title))} eine unwahrscheinliche Zahl bestätigt.`,
  'fat.own-figure': ({ fat, title, used, shipped, differsByPercent }, texts) => {
    const own = `Die Lauge für ${texts.titled(fat, title)} richtet sich nach Ihrer eigenen Zahl, ${texts.number(used)} mg KOH/g`;
    const share = Math.abs(Math.round(differsByPercent * 10) / 10);
    if (share === 0) return `${own}, gleich der mitgelieferten.`;
    return `${own}: ${texts.percent(share)} ${differsByPercent > 0 ? 'mehr' : 'weniger'} als die mitgelieferte, ${texts.number(shipped)}.`;
  },
  'portions.too-heavy': ({ askedG, haveG }, texts) =>
    `Die Portionen in Gramm brauchen ${texts.mass(askedG)}, und alles zusammen sind ${texts.mass(haveG)}. Sie sind so gekürzt, dass es reicht; für den Rest bleibt nichts.`,
  'mould.too-few': ({ mould, needed, owned }, texts) =>
    `Dafür braucht es ${String(needed)} Mulden von ${texts.quoted(mould)}. Sie haben ${String(owned)}.`,
  'soap.ash': ({ signs }, texts) =>
    `Auf offenen Flächen kann in den ersten Tagen weiße Sodaasche entstehen: ${signsOf(signs, texts)}.`,
  'soap.overheats': ({ signs, chance, hottestC }, texts) => {
    const odds = chance === undefined ? '' : `, ${texts.odds(chance)}`;
    const heat = hottestC === undefined ? '' : ` Ihre Mitte erreicht etwa ${texts.temperature(hottestC)}.`;
    return `Sie kann überhitzen, reißen oder aufsteigen${odds}${signs.length === 0 ? '' : `: ${signsOf(signs, texts)}`}.${heat}`;
  },
  'soap.gel-unsure': ({ whole, part, none }, texts) =>
    `Sie kann ganz durch die Gelphase gehen (${texts.odds(whole)}), nur in der Mitte (${texts.odds(part)}) oder gar nicht (${texts.odds(none)}). Eine gelierte Mitte zeigt sich als Ring.`,
  'soap.gel-unlikely': ({ chance }, texts) =>
    `Durch eigene Wärme geliert sie: ${texts.odds(chance)}. Ihre Zeiten rechnen mit voller Gelphase.`,
  'soap.gel-likely': ({ chance }, texts) =>
    `Durch eigene Wärme geliert sie: ${texts.odds(chance)}. Ihre Zeiten rechnen mit keiner Gelphase.`,
  'soap.sweats': ({ humidityPercent }, texts) =>
    `Die Seife kann schwitzen: Salz zieht Wasser aus feuchter Luft (${texts.percent(humidityPercent)}).`,
  'soap.not-forecast': ({ potashPercent }, texts) =>
    `Mit ${texts.percent(potashPercent)} der Lauge als Ätzkali wird das eine weiche Paste. Ihre Zeiten werden nicht vorhergesagt.`,
  'soap.sticks': ({ hardPercent }, texts) =>
    `Sie kann in der Form kleben und reißen: kein Härter und nur ${texts.percent(hardPercent)} harte Fettsäuren.`,
};

const shades = { cream: 'cremefarben', tan: 'hellbraun', brown: 'schokoladenbraun' } as const;

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
          return `nasser Leim (Lauge mit ${percent(value)})`;
        case 'no-gel':
          return 'keine Gelphase';
        case 'cool-batter':
          return `kühler Leim (${degrees(value)})`;
        case 'damp-air':
          return `feuchte Luft (${percent(value)})`;
        case 'draught':
          return 'Luft, die darüber zieht';
        case 'full-gel':
          return 'volle Gelphase';
        case 'large-block':
          return 'ein Block, der seine Wärme hält';
        case 'sugar-or-milk':
          return 'Zucker oder Milch';
        case 'warm-batter':
          return `warmer Leim (${degrees(value)})`;
        case 'hot-fragrance':
          return 'ein Duft, der erhitzt';
      }
    }),
  );
}
