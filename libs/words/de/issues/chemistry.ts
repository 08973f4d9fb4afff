import type { BatterIssues, FatIssues, MouldIssues, RecipeIssues } from '#units';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

type Codes = keyof RecipeIssues | keyof BatterIssues | keyof FatIssues | keyof MouldIssues;

const confirm = 'Wenn es wirklich so auf dem Blatt steht, bestätigen Sie die Werte.';
const alkalis = { naoh: 'des Ätznatrons', koh: 'des Ätzkalis' } as const;
const acids: Readonly<Record<string, string>> = {
  'citric-acid': 'Zitronensäure',
  'citric-acid-monohydrate': 'Zitronensäure-Monohydrat',
  'lactic-acid': 'Milchsäure',
  'acetic-acid': 'Essig',
};

/** „Überfettung: 30 %.“ */
const isNow =
  (name: string, why?: string) =>
  ({ found, unit }: Found, { inUnit }: Texts): Said => ({
    wrong: `${name}: ${inUnit(found, unit)}.`,
    ...(why !== undefined && { why }),
  });

interface Found {
  readonly found: number;
  readonly unit: Parameters<Texts['inUnit']>[1];
}

export const chemistryIssues: IssueWordsOf<Codes> = {
  'recipe.unknown-fat': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Meinten Sie ${or(nearest.map(quoted))}?`;
    return `Ein Fett ${quoted(String(value))} gibt es nicht.${near}`;
  },
  'recipe.fat-twice': ({ value }, { quoted }) =>
    `${quoted(String(value))} steht zweimal in der Liste. Geben Sie ihm einen Anteil.`,
  'recipe.fat-share-out-of-range': ({ fat, value }, { quoted, percent }) =>
    `Anteil von ${quoted(fat)}: ${percent(Number(value))}.`,
  'recipe.fat-mass-out-of-range': ({ fat, value }, { quoted, mass }) =>
    `${quoted(fat)} wiegt ${mass(Number(value))}.`,
  'recipe.fat-amount-unclear': ({ fat, problem }, { quoted }) => ({
    wrong: {
      missing: `${quoted(fat)} hat keine Menge. Geben Sie den Anteil oder die Gramm an.`,
      twice: `${quoted(fat)} hat einen Anteil und Gramm. Geben Sie eines davon an.`,
      mixed: `${quoted(fat)} steht in Gramm, andere Fette in Anteilen. Geben Sie alle Fette auf eine Art an.`,
    }[problem],
    isWhole: true,
  }),
  'recipe.size-of-other-fat': ({ fat }, { quoted }) =>
    `Der Ansatz soll sich nach ${quoted(fat)} richten, das nicht im Rezept steht. Nennen Sie eines seiner Fette.`,
  'recipe.size-out-of-range': ({ fatsG }, { mass }) =>
    `Alle Fette des Ansatzes würden zusammen ${mass(fatsG)} wiegen.`,
  'recipe.no-fats': () => 'Das Rezept hat keine Fette. Fügen Sie eines hinzu.',
  'recipe.shares-not-100': ({ sum }, { inUnit }) => ({
    wrong: `Die Anteile der Fette ergeben ${inUnit(sum, '%')}. Bringen Sie sie auf ${inUnit(100, '%')}.`,
    isWhole: true,
  }),
  'recipe.water-twice': () => 'Das Wasser ist zweimal angegeben. Geben Sie es auf eine Art an.',
  'recipe.acid-strength-missing': ({ acid }) => ({
    wrong: `${acids[acid] ?? acid} gibt es in Wasser, in vielen Stärken. Geben Sie die vom Etikett an, etwa 5 bei Haushaltsessig.`,
    isWhole: true,
  }),
  'recipe.acid-for-water': ({ waterG, lyeG }, { mass }) =>
    `Auf ${mass(100)} Fette blieben nur ${mass(waterG)} Wasser, um ${mass(lyeG)} Ätznatron zu lösen. ` +
    'Lassen Sie mindestens so viel Wasser wie Ätznatron.',
  'recipe.too-wet': ({ part, percent, ofColours }, { quoted, inUnit }) =>
    ofColours
      ? `Die Farben von ${quoted(part)} sind in so viel Wasser angerührt, dass der Leim so nass ist wie mit Lauge von ${inUnit(Number(percent.toFixed(1)), '%')}. Nehmen Sie weniger Wasser, Glycerin oder Öl.`
      : `Die Säure bringt so viel Wasser in ${quoted(part)}, dass der Leim so nass ist wie mit Lauge von ${inUnit(Number(percent.toFixed(1)), '%')}. Lassen Sie ihr Wasser Wasser der Lauge ersetzen.`,
  'recipe.unknown-liquid': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Meinten Sie ${or(nearest.map(quoted))}?`;
    return `Eine Flüssigkeit ${quoted(String(value))} steht nicht in der Tabelle.${near} Oder geben Sie ihre Werte an.`;
  },
  'recipe.liquid-twice': ({ value, addedTo }, { quoted }) =>
    `${quoted(String(value))} kommt zweimal in ${addedTo === 'lye' ? 'die Lauge' : 'den Leim'}. Geben Sie eine Menge an.`,
  'recipe.liquid-amount-unclear': ({ liquid, problem }, { quoted }) => ({
    wrong: {
      missing: `${quoted(liquid)} hat keine Menge. Geben Sie den Anteil an der Flüssigkeit an oder Gramm.`,
      twice: `${quoted(liquid)} hat einen Anteil und Gramm. Geben Sie eines davon an.`,
      'fats-in-shares': `${quoted(liquid)} steht in Gramm, die Fette stehen in Anteilen. Geben Sie den Anteil an der Flüssigkeit an.`,
    }[problem],
    isWhole: true,
  }),
  'recipe.liquid-share-out-of-range': ({ liquid, value }, { quoted, percent }) =>
    `${quoted(liquid)} hat einen Anteil von ${percent(Number(value))}.`,
  'recipe.liquid-mass-out-of-range': ({ liquid, value }, { quoted, mass }) =>
    `${quoted(liquid)} wiegt ${mass(Number(value))}.`,
  'recipe.liquid-figures-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `Was in ${quoted(title)} ist, ergibt ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'recipe.liquids-over-100': ({ sum }, { inUnit }) =>
    `Die Anteile der Flüssigkeiten ergeben ${inUnit(Number(sum.toFixed(1)), '%')}. Wasser ist, was sie von ${inUnit(100, '%')} lassen.`,
  'recipe.liquids-too-sour': () =>
    'In den Flüssigkeiten ist so viel Säure oder so wenig Wasser, dass das Rezept damit nicht geht. Nehmen Sie weniger davon.',
  'recipe.liquids-over-water': ({ broughtG, askedG }, { mass }) =>
    `Auf ${mass(100)} Fette braucht das Rezept ${mass(askedG)} Wasser, und in den Flüssigkeiten sind ${mass(broughtG)}. Nehmen Sie weniger davon oder schwächere Lauge.`,
  'recipe.lye-not-dissolved': ({ waterG, lyeG }, { mass }) =>
    `Auf ${mass(100)} Fette wären ${mass(lyeG)} Ätznatron in ${mass(waterG)} Wasser zu lösen. Es braucht mindestens sein eigenes Gewicht. ` +
    'Geben Sie weniger Flüssigkeit in den Leim, oder nehmen Sie schwächere Lauge.',
  'lye.stock-too-weak': ({ lyePercent, stockPercent }, { inUnit }) =>
    `Die Lauge soll ${inUnit(Number(lyePercent.toFixed(1)), '%')} haben, die Vorratslauge hat ${inUnit(stockPercent, '%')}: zu viel Wasser dafür. Nehmen Sie im Rezept mehr Wasser, eine stärkere Vorratslauge oder Plätzchen.`,
  'lye.stock-leaves-no-liquids': ({ missingG }, { mass }) =>
    `In Vorratslauge und Flüssigkeiten sind auf ${mass(100)} Fette ${mass(missingG)} Wasser zu viel. Nehmen Sie weniger Flüssigkeit, eine stärkere Vorratslauge oder Plätzchen.`,
  'lye.stock-without-naoh': () =>
    'Die Vorratslauge ist aus Ätznatron, und das Rezept braucht keines. Lassen Sie sie weg.',
  'lye.koh-purity-missing': () => ({
    wrong:
      'Geben Sie die Reinheit des Ätzkalis vom Blatt des Lieferanten an: Es wird in vielen verkauft, und falsch geraten könnte die Seife ätzen.',
  }),
  'lye.concentration-out-of-range': ({ percent: found }, { inUnit }) => ({
    wrong: `Die Laugenkonzentration ist ${inUnit(Number(found.toFixed(2)), '%')}.`,
    why: 'Stärkere Lauge kristallisiert aus; mit schwächerer wird die Seife nicht fest.',
  }),
  'lye.superfat-out-of-range': ({ found, isExcessIntended }, { inUnit }) => ({
    wrong: `Die Überfettung ist ${inUnit(found, '%')}.`,
    why:
      isExcessIntended && found < 0
        ? 'Mit noch mehr Lauge sollte niemand die Seife anfassen.'
        : found > 0
          ? 'So viel Fett bleibt frei, dass die Seife schmiert, kaum schäumt und bald ranzig wird.'
          : 'Unter 0 bleibt Lauge in der Seife, und sie ätzt. Wenn Sie die Seife vor dem Gebrauch aussalzen oder ' +
            'neutralisieren, geben Sie an, dass der Laugenüberschuss gewollt ist.',
  }),
  'lye.purity-out-of-range': ({ found, alkali }, { inUnit }) =>
    `Die Reinheit ${alkalis[alkali]} ist ${inUnit(found, '%')}.`,
  'lye.stock-out-of-range': isNow(
    'Stärke der Vorratslauge',
    'Stärkere Lauge kristallisiert in der Flasche aus.',
  ),
  'recipe.koh-share-out-of-range': isNow('Anteil des Ätzkalis an der Lauge'),
  'recipe.sodium-lactate-out-of-range': isNow('Natriumlaktat'),
  'recipe.salt-out-of-range': isNow('Salz'),
  'recipe.sugar-out-of-range': isNow('Zucker'),
  'recipe.fragrance-out-of-range': ({ title, found }, { quoted, inUnit }) => ({
    wrong: `${quoted(title)}: ${inUnit(found, '%')}.`,
    why: 'Bleiben Sie auch unter der Grenze des Lieferanten.',
  }),
  'recipe.fragrances-out-of-range': ({ sum }, { inUnit }) =>
    `Alle Düfte zusammen machen ${inUnit(Number(sum.toFixed(2)), '%')} der Fette aus.`,
  'recipe.unknown-allergen': ({ value, nearest }, { quoted, or }) => {
    const near = nearest.length === 0 ? '' : ` Meinten Sie ${or(nearest.map(quoted))}?`;
    return `${quoted(String(value))} steht nicht auf der Liste der Allergene, die ein Etikett nennt.${near}`;
  },
  'recipe.allergens-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `Die Allergene von ${quoted(title)} ergeben ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'recipe.acid-out-of-range': isNow('Säure'),
  'recipe.acid-strength-out-of-range': isNow('Stärke der Säure'),
  'recipe.colourant-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `${quoted(title)}: ${inUnit(found, '%')}.`,
  'recipe.addition-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `${quoted(title)}: ${inUnit(found, '%')}.`,
  'batter.temperature-out-of-range': isNow('Temperatur des Leims'),
  'batch.fats-out-of-range': ({ found }, { mass }) => `Ein Ansatz mit ${mass(found)} Fetten geht nicht.`,
  'batch.volume-out-of-range': ({ found }, { volume }) => `Ein Ansatz von ${volume(found)} geht nicht.`,
  'titration.impossible': () =>
    'Das sind keine Werte einer Titration: Die Blindprobe braucht mindestens so viel wie die Probe, und Masse und Stärke liegen über 0.',

  'fat.saponification-disordered': ({ title, low, used, high, isAsNaoh }, { quoted, number }) =>
    isAsNaoh
      ? {
          wrong: `${quoted(title)} hat eine Verseifungszahl von ${number(used, 4)}.`,
          why: `Ein Wert wie ${number(0.135, 3)} gilt für Ätznatron: durch ${number(0.000713, 6)} geteilt, ist er in mg KOH/g.`,
        }
      : `${quoted(title)} hat die Verseifungszahlen ${number(low)}, ${number(used)} und ${number(high)}. Sie müssen steigen.`,
  'fat.unknown-fatty-acid': ({ name, share, isCalled }, { quoted, inUnit }) => ({
    wrong: `${quoted(name)} mit ${inUnit(share, '%')} ist kein Anteil einer Fettsäure. Schreiben Sie Kohlenstoffe und Doppelbindungen, etwa C18:1, oder ricinoleic.`,
    ...(isCalled !== undefined && { why: `${quoted(name)} ist ${isCalled}.` }),
  }),
  'fat.fatty-acids-over-100': ({ title, sum }, { quoted, inUnit }) =>
    `Die Fettsäuren von ${quoted(title)} ergeben ${inUnit(Number(sum.toFixed(1)), '%')}.`,
  'fat.density-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `Die Dichte von ${quoted(title)} ist ${inUnit(found, 'g/mL')}.`,
  'fat.expansion-out-of-range': ({ title, found }, { quoted, inUnit }) =>
    `Die Ausdehnung von ${quoted(title)} ist ${inUnit(found, 'g/mL per °C')}.`,
  'fat.iodine-disordered': ({ title, low, high }, { quoted, number }) =>
    `Die Iodzahlen von ${quoted(title)} sind ${number(low)} und ${number(high)}. Die erste darf nicht über der zweiten liegen.`,
  'fat.unsaponifiable-disordered': ({ title, low, high }, { quoted, inUnit }) =>
    `Von ${quoted(title)} verseifen ${inUnit(low, '%')} und ${inUnit(high, '%')} nicht. Der erste Wert darf nicht über dem zweiten liegen.`,
  'fat.wax-saponification-doubtful': ({ title, used, most }, { quoted, number }) => ({
    wrong:
      `${quoted(title)} ist als Wachs eingetragen und braucht ${number(used)} mg KOH/g. Kein Wachs braucht mehr als ${number(most)}. ` +
      'Wenn es ein Öl oder eine Butter ist, geben Sie die Fettsäuren an: Mit zu viel Lauge ätzt die Seife.',
    why: confirm,
    isWhole: true,
  }),
  'fat.differs-from-shipped': ({ title, used, shipped, differsByPercent }, { quoted, number, inUnit }) => ({
    wrong:
      `${quoted(title)} braucht ${number(used)} mg KOH/g, ${inUnit(Number(Math.abs(differsByPercent).toFixed(1)), '%')} ` +
      `${differsByPercent > 0 ? 'mehr' : 'weniger'} als die üblichen ${number(shipped)}.`,
    why: `Wenn es ein anderes Fett ist, geben Sie ihm einen anderen Kurznamen. ${confirm}`,
  }),
  'fat.saponification-as-naoh': ({ title, used, expected, asKoh }, { quoted, number }) => ({
    wrong:
      `${quoted(title)} braucht ${number(used)} mg KOH/g, nach seinen Fettsäuren aber ${number(expected)}. ` +
      `Das sieht nach einem Wert für Ätznatron aus: In mg KOH/g wären es ${number(asKoh)}.`,
    why: confirm,
    isWhole: true,
  }),
  'fat.saponification-doubtful': ({ title, used, expected }, { quoted, number }) => ({
    wrong: `${quoted(title)} braucht ${number(used)} mg KOH/g, nach seinen Fettsäuren aber ${number(expected)}.`,
    why: confirm,
  }),
  'fat.profile-incomplete': ({ title, sum }, { quoted, inUnit }) => ({
    wrong: `Die Fettsäuren von ${quoted(title)} ergeben ${inUnit(Number(sum.toFixed(1)), '%')}.`,
    why: `Aus ihnen wird berechnet, wie hart und wie bald die Seife fest wird.${sum === 0 ? ' Wenn es ein Wachs ist, geben Sie das an.' : ''} ${confirm}`,
  }),
  'fat.density-doubtful': ({ title, found, expected }, { quoted, inUnit }) => ({
    wrong: `Die Dichte von ${quoted(title)} ist ${inUnit(found, 'g/mL')}; nach den übrigen Werten wären es etwa ${inUnit(expected, 'g/mL')}.`,
    why: confirm,
  }),

  'shape.measure-out-of-range': ({ foundMm }, { length }) => `Das Maß kann nicht ${length(foundMm)} sein.`,
  'shape.tube-too-thick': ({ tubeMm, outerMm }, { length }) =>
    `Ein Ring von ${length(outerMm)} Durchmesser kann nicht ${length(tubeMm)} dick sein.`,
  'mould.cavity-out-of-range': ({ holdsMl }, { volume }) =>
    `Mit diesen Maßen fasst eine Mulde ${volume(holdsMl)}.`,
  'mould.shape-differs': ({ statedMl, holdsMl }, { volume }) =>
    `Nach ihrem Inhalt fasst eine Mulde ${volume(statedMl)}, nach ihren Maßen ${volume(holdsMl)}. Messen Sie noch einmal oder lassen Sie die Maße weg.`,
};
