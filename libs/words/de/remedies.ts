import type { DisturbanceCause, RemediesNote, RemedyMessage } from '#contract';
import { spanText } from '../format/spans.js';
import type { MessageWords, Texts } from '../words.js';

/** Was stört, als Namen in einer Liste. */
const disturbances: MessageWords<DisturbanceCause> = {
  'disturbance.any-change': () => 'überhaupt eine Änderung',
  'disturbance.moved-stages': ({ moved }, texts) =>
    moved === 1 ? '1 Schritt verschiebt sich' : `${texts.number(moved)} Schritte verschieben sich`,
  'disturbance.sittings': ({ more }, texts) => `${sittings(more, texts)} mehr`,
  'disturbance.bench-time': ({ minutes }, texts) => `${texts.duration(minutes)} länger am Arbeitstisch`,
  'disturbance.later-cure': ({ minutes }, texts) => `${texts.duration(minutes)} später reif`,
  'disturbance.new-risk': ({ parts }, texts) => `ein neues Risiko für ${quoted(parts, texts)}`,
  'disturbance.moulds': () => 'Formen kaufen',
  'disturbance.fewer-pieces': ({ fewer }, texts) => `${pieces(fewer, texts)} weniger`,
  'disturbance.without-parts': ({ parts }, texts) => `Stücke ohne ${quoted(parts, texts)}`,
  'disturbance.day-given-up': () => 'ein zugesagter Tag fällt weg',
  'disturbance.recipe': () => 'ein geändertes Rezept abwiegen',
  'disturbance.outside-hours': ({ minutes }, texts) => `${texts.duration(minutes)} außerhalb Ihrer Zeiten`,
  'disturbance.batches-twice': () => 'jeder Ansatz zweimal',
};

const notes: MessageWords<RemediesNote> = {
  'remedies.nothing-lost': () => 'Keine Änderung nötig. Es gibt nichts zu gewinnen.',
  'remedies.nothing-to-try': () => 'Hier lässt sich nichts mehr ändern.',
  'remedies.none-gains': ({ tried }, texts) => `${tries(tried, texts)} Keine hilft mehr als der Zufall.`,
  'remedies.none-enough': ({ tried }, texts) =>
    `${tries(tried, texts)} Keine davon macht allein einen Plan möglich.`,
  'remedies.sorted': ({ tried }, texts) =>
    `${tries(tried, texts)} Die erste hilft am meisten und stört am wenigsten.`,
  'remedies.time-up': () =>
    'Die Zeit war um, bevor alle Änderungen probiert waren. Vielleicht gibt es bessere.',
};

/** Was Abhilfen sind, und was sie besser und schlechter machen. */
export const remedies: MessageWords<RemedyMessage> = {
  ...disturbances,
  ...notes,
  'remedy.buy-moulds': ({ mould, before, after }, texts) =>
    `Mehr von ${texts.quoted(mould)} anschaffen: Platz für ${pieces(after, texts)} statt ${texts.number(before)}`,
  'remedy.make-fewer': ({ run, before, after }, texts) =>
    `Von ${texts.quoted(run)} nur ${pieces(after, texts)} machen statt ${texts.number(before)}`,
  'remedy.leave-out': ({ run, parts }, texts) => `${quoted(parts, texts)} bei ${texts.quoted(run)} weglassen`,
  'remedy.plan-anew': () => 'Ganz neu planen, jeder Schritt darf sich verschieben',
  'remedy.later-day': ({ run, before, after }, texts) =>
    `${texts.quoted(run)} für ${texts.calendarDay(after)} zusagen statt für ${texts.calendarDay(before)}`,
  'remedy.change-recipe': ({ recipe, lyePercent: lye, sodiumLactatePercent: lactate }, texts) => {
    const instead = ({ before, after }: { readonly before: number; readonly after: number }): string =>
      `${texts.percent(after)} statt ${texts.percent(before)}`;
    const changes = [
      ...(lye === undefined
        ? []
        : [`${lye.after > lye.before ? 'weniger' : 'mehr'} Wasser (Lauge ${instead(lye)})`]),
      ...(lactate === undefined
        ? []
        : [`${lactate.after > lactate.before ? 'mehr' : 'weniger'} Natriumlaktat (${instead(lactate)})`]),
    ];
    return `${texts.quoted(recipe)} ändern: ${texts.and(changes)}`;
  },
  'remedy.add-sitting': (span, texts) => `Noch eine Sitzung: ${spanText(span, texts)}`,
  'remedy.longer-sitting': (span, texts) => `Eine längere Sitzung: ${spanText(span, texts)}`,
  'remedy.split': ({ run, first, rest }, texts) =>
    `${texts.quoted(run)} auf zwei Mal machen: ${pieces(first, texts)} und ${texts.number(rest)}`,
  'remedy.begin-later': ({ run, at }, texts) =>
    `Mit ${texts.quoted(run)} später anfangen: ${texts.dayTime(at)}`,
  'remedy.begin-earlier': ({ run, at }, texts) =>
    `Mit ${texts.quoted(run)} früher anfangen: ${texts.dayTime(at)}`,

  'remedy.makes-plan': ({ odds }, texts) => `Damit gibt es einen Plan. Chance: ${texts.odds(odds)}.`,
  'remedy.better-odds': ({ before, after }, texts) => `Chance: ${texts.oddsInstead(after, before)}.`,
  'remedy.holds-within': ({ bandPercent }, texts) =>
    `Geht auf, außer die Seife gehört zu den langsamsten oder schnellsten ${outerShare(bandPercent, texts)}.`,
  'remedy.earlier-cure': ({ run, minutes }, texts) =>
    `${texts.quoted(run)} ist wahrscheinlich ${texts.duration(minutes)} früher reif.`,
  'remedy.fewer-sittings': ({ fewer }, texts) => `${sittings(fewer, texts)} weniger.`,

  'remedy.price-of-moulds': () => 'Die Formen sind zu kaufen. Ihr Preis ist hier nicht eingerechnet.',
  'remedy.pieces-without': ({ parts }, texts) => `Die Stücke sind ohne ${quoted(parts, texts)}.`,
  'remedy.no-time-for': ({ stages }, texts) => `Für ${quoted(stages, texts)} ist keine Zeit mehr eingeplant.`,
  'remedy.nothing-ready': ({ run, readyBy }, texts) =>
    `Am ${texts.calendarDay(readyBy)} ist von ${texts.quoted(run)} nichts zu verkaufen.`,
  'remedy.outside-hours': (span, texts) => `Arbeit außerhalb Ihrer Zeiten: ${spanText(span, texts)}.`,
  'remedy.mixed-twice': () =>
    'Jeder Ansatz wird zweimal angerührt, also zweimal mit Lauge. Auch der Abwasch kommt zweimal.',
  'remedy.fewer-pieces': ({ before, after }, texts) =>
    `${pieces(after, texts)} statt ${texts.number(before)}.`,
  'remedy.later-cure': ({ run, minutes, likely }, texts) =>
    `${texts.quoted(run)} ist wahrscheinlich ${texts.duration(minutes)} später reif, etwa ${texts.day(likely)}.`,
  'remedy.later-slow-cure': ({ run, minutes }, texts) =>
    `Reift ${texts.quoted(run)} langsam, dauert es ${texts.duration(minutes)} länger.`,
  'remedy.more-sittings': ({ before, after }, texts) =>
    `${sittings(after, texts)} statt ${texts.number(before)}.`,
  'remedy.more-bench-time': ({ minutes }, texts) => `${texts.duration(minutes)} mehr am Arbeitstisch.`,
  'remedy.ends-later': ({ minutes, endAt }, texts) =>
    `Die letzte Sitzung endet ${texts.duration(minutes)} später: ${texts.dayTime(endAt)}.`,
  'remedy.stage-riskier': ({ stage, before, after }, texts) =>
    `Bei ${texts.quoted(stage)} geht öfter etwas schief: ${texts.oddsInstead(after, before)}.`,
  'remedy.day-riskier': ({ run, before, after }, texts) =>
    `${texts.quoted(run)} kommt öfter zu spät: ${texts.oddsInstead(after, before)}.`,
  'remedy.holds-no-more': ({ bandPercent }, texts) =>
    `Gehört die Seife zu den langsamsten oder schnellsten ${outerShare(bandPercent, texts)}, geht dieser Plan vielleicht nicht auf.`,
  'remedy.new-risk': ({ parts, risk }, texts) =>
    `Neu für ${quoted(parts, texts)}: ${texts.of(risk)} ${texts.remedyOf(risk)}`,
  'remedy.new-caution': ({ caution }, texts) => `Vorsicht. ${texts.of(caution)}`,
  'remedy.stiffens-sooner': ({ part, before, after }, texts) =>
    `Der Seifenleim von ${texts.quoted(part)} wird früher fest. Für alle Stücke reicht die Zeit in ${texts.oddsInstead(after, before)} Fällen.`,
  'remedy.runs-short': ({ part, before, after }, texts) =>
    `${texts.quoted(part)} reicht öfter nicht: ${texts.oddsInstead(after, before)}.`,
  'remedy.costs-more': ({ amount, currency, complete }, texts) =>
    `Das Material kostet ${texts.money(amount, currency)} mehr${pricesKnown(complete)}.`,

  'remedy.weigh-anew': () => 'Nach dem neuen Arbeitsblatt abwiegen, nicht nach dem alten.',
  'remedy.stages-move': ({ run, moved }, texts) =>
    `${texts.quoted(run)}: ${moved === 1 ? '1 Schritt verschiebt sich' : `${texts.number(moved)} Schritte verschieben sich`}.`,
  'remedy.other-amounts': ({ materials, more }, texts) => {
    const changes = materials.map(({ key, title, unit, before, after }) => {
      const text = (amount: number): string => (unit === 'g' ? texts.mass(amount) : pieces(amount, texts));
      return `${texts.titled(key, title)} ${text(after)} statt ${text(before)}`;
    });
    const others = more === 0 ? '' : ` (und ${texts.number(more)} weitere)`;
    return `Andere Mengen abwiegen: ${changes.join('; ')}${others}.`;
  },
  'remedy.costs-less': ({ amount, currency, complete }, texts) =>
    `Das Material kostet ${texts.money(amount, currency)} weniger${pricesKnown(complete)}.`,
};

function pieces(count: number, texts: Texts): string {
  return texts.pieces(texts.number(count, 0), Math.round(count) === 1);
}

function sittings(count: number, texts: Texts): string {
  return count === 1 ? '1 Sitzung' : `${texts.number(count)} Sitzungen`;
}

function quoted(titles: readonly string[], texts: Texts): string {
  return texts.and(titles.map((title) => texts.quoted(title)));
}

/** Was an jedem Ende außerhalb eines Bandes liegt. */
function outerShare(bandPercent: number, texts: Texts): string {
  return texts.percent((100 - bandPercent) / 2);
}

function pricesKnown(complete: boolean): string {
  return complete ? '' : ', soweit Preise bekannt sind';
}

function tries(tried: number, texts: Texts): string {
  return tried === 1 ? '1 Änderung probiert.' : `${texts.number(tried, 0)} Änderungen probiert.`;
}
