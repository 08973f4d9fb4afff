import type { SoapState } from '#contract';
import type {
  ClockIssues,
  CureIssues,
  DesignIssues,
  Issue,
  LogIssues,
  PhotoIssues,
  PlanIssues,
  RunIssues,
  StockIssues,
} from '#units';
import type { IssueWordsOf, Said, Texts } from '../../words.js';

type Codes = keyof (ClockIssues &
  CureIssues &
  DesignIssues &
  LogIssues &
  PhotoIssues &
  PlanIssues &
  RunIssues &
  StockIssues);

/** „Eine Form „Tasse“ gibt es nicht.“ @param what mit Artikel */
const noSuch =
  (what: string) =>
  ({ value, known }: Unknown, { quoted }: Texts): Said =>
    known.length === 0
      ? `${what} ${quoted(String(value))} gibt es nicht, und noch nichts dieser Art.`
      : `${what} ${quoted(String(value))} gibt es nicht.`;

interface Unknown {
  readonly value?: unknown;
  readonly known: readonly string[];
}

const confirm = 'Wenn die Waage es wirklich so zeigt, bestätigen Sie es.';

/** What the clocks read. */
const inputName = ({ names }: Texts, input: string): string =>
  names.inputs[input as keyof Texts['names']['inputs']];

const stateIs = ({ names }: Texts, state: string): string => names.states[state as SoapState].is;

/** `2026-11-27T18:00`, nach der Uhr an der Wand. */
const wallTime = ({ calendarDay }: Texts, local: string): string =>
  `${calendarDay(local.slice(0, 10))}, ${local.slice(11)}`;

function capital(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}

export const runIssues: IssueWordsOf<Codes> = {
  'design.unknown': noSuch('Einen Entwurf'),
  'recipe.unknown': noSuch('Ein Rezept'),
  'mould.unknown': noSuch('Eine Form'),
  'part.unknown': noSuch('Einen Teil'),
  'stage.unknown': noSuch('Einen Schritt'),
  'equipment.unknown': noSuch('Ein Gerät'),
  'run.unknown': noSuch('Einen Lauf'),
  'group.unknown': noSuch('Eine Gruppe'),
  'change.no-such-run': noSuch('Einen Lauf'),
  'change.no-such-recipe': noSuch('Ein Rezept'),
  'change.no-such-mould': noSuch('Eine Form'),
  'design.making-stage': ({ title, count }, { quoted, number }) =>
    `${quoted(title)} wird in ${number(count, 0)} Schritten gemacht. Genau einer muss es sein: gießen, schichten, tauchen, spritzen, übergießen oder pressen.`,
  'design.wait-without-making': ({ title }, { quoted }) =>
    `Kein Schritt macht ${quoted(title)}, also gibt es nichts abzuwarten. Fügen Sie den Schritt hinzu, oder nehmen Sie das Warten heraus.`,
  'design.no-hands-on': () =>
    'Kein Schritt braucht Zeit am Arbeitsplatz. Geben Sie an, wie lange die Arbeit dauert, oder lassen Sie es weg: Dann gilt das Übliche.',
  'design.firmness-refused': ({ title }, { quoted }) =>
    `${quoted(title)} muss warten, bis die Seife fest ist. Wissen Sie die Zeit besser, geben Sie eigene Stunden nach dem Gießen an.`,
  'design.state-without-clock': ({ title, states }, { quoted }) =>
    states.length === 0
      ? `${quoted(title)} wird nicht fest. Warten Sie stattdessen nach der Uhr.`
      : `${quoted(title)} kommt nie in diesen Zustand.`,
  'design.cavity-overfull': ({ mould, filledMl, holdsMl }, { quoted, volume }) => ({
    wrong: `Die Teile in einer Mulde von ${quoted(mould)} ergeben ${volume(filledMl)}, und sie fasst ${volume(holdsMl)}. Nehmen Sie von einem weniger.`,
    isWhole: true,
  }),
  'design.batch-recipes': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} werden auf einmal angerührt und brauchen dasselbe Rezept. Wählen Sie eines, oder rühren Sie sie getrennt an.`,
  'design.batch-needs-mix': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} kommen aus einem Ansatz. Fügen Sie einen Schritt hinzu, der ihn anrührt: Von da an dicken sie zusammen ein.`,
  'design.cook-needs-test': ({ title }, { quoted }) =>
    `Lauge, die das Kochen in ${quoted(title)} übrig lässt, bleibt darin. Fügen Sie einen Schritt hinzu, der auf Lauge prüft.`,
  'design.cavities-differ': ({ titles }, { quoted, and }) =>
    `${and(titles.map(quoted))} teilen sich ihre Mulden. Also braucht ein Stück für beide gleich viele.`,
  'design.mould-never-freed': ({ title }, { quoted }) =>
    `${quoted(title)} kommt in eine Form und nie heraus. Fügen Sie einen Schritt zum Ausformen hinzu.`,
  'design.circular-links': ({ way }, { quoted, and }) =>
    `${and(way.slice(0, -1).map(quoted))} warten im Kreis aufeinander. Nehmen Sie eines davon heraus.`,

  'workshop.unknown-time-zone': ({ value }, { quoted }) =>
    `${quoted(String(value))} ist keine Zeitzone. Wählen Sie eine wie Europe/Berlin.`,
  'hours.never-open': () =>
    'Zu diesen Zeiten ist nie jemand da, also lässt sich nichts tun. Geben Sie mindestens eine Spanne in der Woche an.',
  'library.key-changed': ({ key }, { quoted }) =>
    `Behalten Sie den Kurznamen ${quoted(key)}: Anderes bezieht sich darauf.`,
  'run.ready-before-start': ({ readyBy, startAfter }, texts) =>
    `Fertig bis ${texts.calendarDay(readyBy)} liegt vor dem Beginn (${wallTime(texts, startAfter)}). Wählen Sie einen späteren Tag.`,
  'run.groups-sum': ({ sum, count }, { inUnit, number }) => ({
    wrong: `Die Gruppen haben ${inUnit(sum, 'pieces')}, der Lauf ${number(count, 0)}. Gleichen Sie beides an.`,
    isWhole: true,
  }),
  'run.group-part-twice': ({ group, part }, { quoted }) =>
    `${quoted(part)} steht zweimal in ${quoted(group)}. Nennen Sie es einmal.`,
  'run.group-without-host': ({ group, part }, { quoted }) =>
    `In ${quoted(group)} gibt es nichts, worauf ${quoted(part)} kommt. Fügen Sie den Teil hinzu, der es trägt, oder lassen Sie es weg.`,
  'run.key-repeated': ({ value }, { quoted }) => `Es gibt noch einen Lauf ${quoted(String(value))}.`,
  'run.start-too-far': ({ startAfter }, texts) =>
    `${wallTime(texts, startAfter)} ist zu weit weg, um zu planen. Beginnen Sie innerhalb von zwei Jahren.`,
  'run.begun': ({ title }, { quoted }) =>
    `${quoted(title)} hat begonnen, sein spätester Beginn ist vorbei. Wählen Sie einen Lauf, der noch nicht begonnen hat.`,
  'run.which': ({ known }, { or, quoted }) => `Welcher Lauf: ${or(known.map(quoted))}?`,
  'run.no-day': () => 'Fertig bis wann? Geben Sie einen Tag in den nächsten zwei Jahren an.',
  'run.day-out-of-range': ({ day }, { calendarDay }) =>
    `Für ${calendarDay(day)} lässt sich nicht planen. Geben Sie einen Tag in den nächsten zwei Jahren an.`,
  'run.no-such-day': () => 'Diesen Tag gibt es nicht. Geben Sie einen Tag in den nächsten zwei Jahren an.',
  'plan.too-large': ({ stages, most }, { number }) =>
    `Diese Läufe haben zusammen ${number(stages, 0)} Schritte. Höchstens ${number(most, 0)} werden auf einmal geplant.`,
  'plan.pins-impossible': () =>
    'Mit diesen Schritten zu diesen Zeiten gibt es keinen Plan. Legen Sie sie anders.',
  'plan.potash': ({ recipe, percent }, { quoted, inUnit }) => ({
    wrong: `${quoted(recipe)} hat ${inUnit(percent, '%')} der Lauge als Ätzkali. Das gibt eine weiche Paste, deren Zeiten nicht vorhergesagt werden; ein Lauf damit lässt sich nicht planen.`,
    why: 'Ihre Mengen lassen sich trotzdem berechnen.',
  }),
  'plan.undecided': () =>
    'Mit diesen Schritten zu diesen Zeiten wurde rechtzeitig kein Plan gefunden. Legen Sie sie anders, oder versuchen Sie es noch einmal.',

  'clocks.out-of-range': ({ input, found, unit }, texts) =>
    `${capital(inputName(texts, input))}: ${texts.inUnit(found, unit)}.`,
  'clocks.unknown-choice': ({ input, value }, texts) =>
    `${capital(inputName(texts, input))}: ${texts.quoted(String(value))} gibt es nicht.`,
  'clocks.more-than-whole': ({ inputs, sum }, texts) => ({
    wrong: `Zusammen ergeben ${texts.and(inputs.map((input) => inputName(texts, input)))} ${texts.inUnit(sum, '%')}. Es sind Anteile eines Ganzen.`,
    isWhole: true,
  }),
  'clocks.batter-colder-than-room': ({ batterC, roomC }, { temperature }) =>
    `Der Leim hat ${temperature(batterC)}, viel kälter als der Raum mit ${temperature(roomC)}.`,
  'cure.too-few-weighings': ({ count }, { number }) =>
    `Es gibt ${number(count, 0)} Wägungen. Wiegen Sie dieselben Stücke mindestens zweimal.`,
  'cure.day-out-of-range': ({ value }, { number }) => `${number(Number(value))} ist kein Tag einer Reife.`,
  'cure.mass-out-of-range': ({ value }, { mass }) => `${mass(Number(value))} wiegt keine Seife.`,
  'cure.water-share-out-of-range': ({ value }, { number }) =>
    `${number(Number(value), 3)} ist kein Wasseranteil.`,
  'cure.scale-out-of-range': ({ value }, { mass }) => `Eine Waage irrt sich nicht um ${mass(Number(value))}.`,
  'cure.mass-gained': ({ massG, mostG }, { mass }) => ({
    wrong: `${mass(massG)} ist mehr, als nach einer früheren Wägung sein kann: höchstens ${mass(mostG)}. Feuchte Luft, oder andere Stücke?`,
    isWhole: true,
  }),
  'cure.lost-more-than-water': ({ massG, leastG }, { mass }) => ({
    wrong: `${mass(massG)} ist weniger, als ohne alles Wasser bliebe: mindestens ${mass(leastG)}. Andere Stücke?`,
    isWhole: true,
  }),

  'log.time-doubtful': ({ title, state, saw, afterMin, leastMin, mostMin }, texts) => {
    const [part, is, after] = [title, stateIs(texts, state)]
      .map(texts.quoted)
      .concat(texts.duration(afterMin));
    const expected = texts.range(texts.duration(leastMin), texts.duration(mostMin));
    const wrong =
      saw === 'not-yet'
        ? `${part} nach ${after} noch nicht ${is}? Erwartet waren höchstens ${texts.duration(mostMin)}.`
        : `${part} nach ${after} ${is}? Erwartet waren ${expected}.`;
    return { wrong, why: 'War es so, bestätigen Sie es; sonst berichtigen Sie die Zeit.' };
  },
  'log.state-without-clock': ({ title, state }, texts) =>
    `${texts.quoted(title)} ist nie ${texts.quoted(stateIs(texts, state))}. Wählen Sie einen anderen Zustand.`,
  'log.clock-not-started': ({ state, stage }, texts) =>
    stage === undefined
      ? `Wann kam die Lauge dazu? ${texts.quoted(stateIs(texts, state))} zählt ab da.`
      : `Tragen Sie zuerst ${texts.quoted(stage)} ein: ${texts.quoted(stateIs(texts, state))} zählt ab da.`,
  'log.before-clock': ({ at }, { dayTime }) =>
    `${dayTime(at)} liegt vor dem Machen der Seife. Geben Sie eine spätere Zeit an.`,
  'log.ends-before-start': ({ startedAt, at }, { dayTime }) => ({
    wrong: `Beginn ${dayTime(startedAt)}, fertig ${dayTime(at)}: Das geht nicht. Berichtigen Sie eines von beiden.`,
    isWhole: true,
  }),
  'log.out-of-order': ({ title, missing }, { quoted, and }) =>
    `Tragen Sie zuerst ${and(missing.map(quoted))} ein: ${quoted(title)} kommt danach.`,
  'log.nothing-to-wait-for': ({ title }, { quoted }) =>
    `${quoted(title)} wartet noch auf keine Seife: Es ist keine gemacht.`,
  'log.already-done': ({ title }, { quoted }) => `${quoted(title)} ist schon erledigt.`,
  'log.cure-not-begun': ({ at, stage }, { dayTime, quoted }) =>
    stage === undefined
      ? 'An diesem Lauf reift nichts.'
      : `Um ${dayTime(at)} reift noch nichts. Tragen Sie zuerst ${quoted(stage)} ein.`,
  'log.weigh-in-doubtful': ({ massG, pieces, expectedEachG }, { mass, inUnit }) => ({
    wrong:
      `${mass(massG)} für ${inUnit(pieces, 'pieces')} sind ${mass(massG / pieces)} je Stück; erwartet wurden etwa ${mass(expectedEachG)}. ` +
      'Vertippt?',
    why: confirm,
  }),
  'log.weighing-implausible': ({ title, usedG, pieces, expectedG }, { mass, inUnit, quoted }) => ({
    wrong: `${mass(usedG)} von ${quoted(title)} für ${inUnit(pieces, 'pieces')}: erwartet wurden etwa ${mass(expectedG)}. Vertippt?`,
    why: confirm,
  }),
  'log.not-made': ({ title, stage }, { quoted }) =>
    `${quoted(title)} ist noch nicht gemacht. Tragen Sie zuerst ${quoted(stage)} ein.`,
  'log.more-than-made': ({ made, pieces }, { inUnit, number }) =>
    `Gemacht wurde es für ${inUnit(made, 'pieces')}, nicht für ${number(pieces, 0)}.`,
  'log.dropped-of-one-group': ({ title, group }, { quoted }) =>
    `Auch andere Gruppen haben ${quoted(title)}, also lässt es sich nicht nur bei ${quoted(group)} weglassen. Lassen Sie es bei allen weg, oder machen Sie weiter.`,
  'log.needed-later': ({ because }, texts) =>
    `Nehmen Sie zuerst die späteren Einträge zurück. Ohne diesen: ${texts.issue(because as Issue)}`,
  'log.unknown-entry': ({ known }) =>
    known.length === 0
      ? 'Es gibt keinen Eintrag, der sich zurücknehmen lässt.'
      : 'Dieser Eintrag steht nicht im Protokoll, oder er wurde zurückgenommen.',
  'log.in-the-future': ({ at }, { dayTime }) => `${dayTime(at)} ist noch nicht gekommen.`,
  'log.long-ago': ({ at }, { dayTime }) => `${dayTime(at)} liegt lange vor dem Lauf.`,
  'photo.no-jpeg': () => 'Das ist kein Bild, das aufbewahrt werden kann.',
  'photo.too-large': ({ side }, { number }) => `Dieses Bild ist ${number(side, 0)} Pixel lang.`,
  'photo.no-room': ({ of, mostMb }, { number }) =>
    of === 'run'
      ? `Für ein weiteres Foto ist kein Platz: Dieser Lauf hat schon ${number(mostMb, 0)} MB davon. Nehmen Sie eine Notiz mit Fotos zurück, die Sie nicht brauchen.`
      : `Für ein weiteres Foto ist kein Platz: Es sind schon ${number(mostMb, 0)} MB.`,
  'photo.id-taken': () => 'Dieses Foto wurde schon einmal gesendet, mit einem anderen Bild.',
  'photo.unknown': () => 'Dieser Lauf hat kein solches Foto.',
  'stock.unknown-entry': () => 'Diesen Eintrag gibt es im Bestand nicht, oder er wurde zurückgenommen.',
  'stock.leftover-short': ({ title, leftG }, { mass, quoted }) =>
    `Von ${quoted(title)} sind noch ${mass(leftG)} da. Nehmen Sie so viel oder weniger.`,
  'stock.needed-later': () => 'Davon wurde später etwas verbraucht. Nehmen Sie das zuerst zurück.',
  'stock.other-unit': ({ title, unit }, { quoted }) =>
    unit === 'g'
      ? `${quoted(title)} wird nach Gewicht geführt. Geben Sie Gramm an.`
      : `${quoted(title)} wird nach Stück geführt. Geben Sie Stück an.`,
  'stock.id-taken': () => 'Dieser Eintrag wurde schon einmal gesendet, mit anderem Inhalt.',
};
