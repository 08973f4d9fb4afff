import type { Risk } from '#contract';
import type { MessageWords, Texts } from '../words.js';
import { adviceOr } from '../format/advice.js';

function commonLye(texts: Texts): string {
  return `${texts.range(texts.percent(25), texts.percent(40))} sind üblich`;
}

/** Was gegen jedes Risiko hilft. */
export const riskRemedies: MessageWords<Risk> = {
  'lye.strong': (_, texts) =>
    `${commonLye(texts)}. Langsam und gekühlt einrühren und verwenden, bevor sie fest wird.`,
  'lye.wet': (_, texts) =>
    `${commonLye(texts)}. Das Wasser von Essig oder Farben vom Wasser der Lauge abziehen.`,
  'lye.cold-bath': () =>
    'Das abgedeckte Gefäß in eine Schüssel mit kaltem Wasser und etwas Eis stellen, so niedrig, dass nichts davon in die Lauge gerät. Die Zeiten gelten dafür.',
  'lye.taken-ready': () =>
    'Vorher anrühren, oder den Schritt „Lauge anrühren“ hinzufügen: Sie braucht Stunden zum Abkühlen.',
  'lye.excess': () => 'Aussalzen oder neutralisieren und prüfen, bevor jemand sie ohne Handschuhe anfasst.',
  'lye.little-superfat': (_, texts) => `${texts.percent(5)} sind üblich.`,
  'lye.much-superfat': (_, texts) =>
    `${texts.range(texts.percent(2), texts.percent(8))} sind üblich, ${texts.range(texts.percent(15), texts.percent(20))} für Seife fast ganz aus Kokosöl.`,
  'lye.lean-lot': ({ enoughPercent }, texts) =>
    `Die Verseifungszahlen aus den Zertifikaten Ihrer Chargen eintragen oder eine Überfettung von ${texts.percent(enoughPercent)} nehmen.`,
  'acid.takes-much': (_, texts) => `Ihre Stärke auf dem Etikett prüfen. Essig hat etwa ${texts.percent(5)}.`,
  'batch.small': ({ scalesG }, texts) =>
    scalesG < 0.1
      ? `Auf ${texts.mass(scalesG)} genau wiegen oder mindestens ${texts.mass(300)} Fette nehmen und den Rest ausgießen.`
      : `Auf ${texts.mass(scalesG)} genau wiegen.`,
  'batch.reaches-not': () => 'Machen Sie einen größeren Ansatz, einen zweiten oder weniger Stücke.',
  'batter.too-cool': ({ enoughC }, texts) =>
    `Bei ${texts.temperature(enoughC)} oder mehr arbeiten und rühren, bis kein Klumpen mehr da ist.`,
  'batter.pace': ({ batches, count }) =>
    `${batches < count ? `In ${String(batches)} Ansätze teilen oder` : 'Den Leim'} verlangsamen: kühler arbeiten, mehr Wasser oder ein milderer Duft.`,
  'sodium-lactate.much': (_, texts) => `${texts.range(texts.percent(1), texts.percent(3))} nehmen.`,
  'salt.much': (_, texts) =>
    `Zum Härten reichen ${texts.range(texts.percent(0.5), texts.percent(1))}. Eine Salzseife braucht ${texts.percent(25)} oder mehr und viel Kokosöl.`,
  'salt.bar': () => 'In einzelne Mulden gießen oder schneiden, solange sie warm ist.',
  'sugar.heats': ({ belowC }, texts) =>
    `${texts.range(texts.percent(1), texts.percent(2))} nehmen, in etwas von dem Wasser gelöst, und unter ${texts.temperature(belowC)} arbeiten.`,
  'fragrance.limit-unknown': () =>
    'Den Lieferanten nach dem Zertifikat fragen und den Höchstwert für Seife (Kategorie 9) eintragen.',
  'fragrance.limit-not-for-soap': () =>
    'Tragen Sie aus dem Zertifikat den Höchstwert für Seife (Kategorie 9) ein.',
  'fragrance.over-together': ({ allowedPercent }, texts) =>
    `Nehmen Sie von jedem ${texts.percent(allowedPercent)}, oder fragen Sie die Lieferanten, was beide enthalten.`,
  'fragrance.over-limit': ({ allowedPercent }, texts) =>
    `Höchstens ${texts.percent(allowedPercent)} der Fette nehmen.`,
  'fragrance.much': (_, texts) => `${texts.range(texts.percent(3), texts.percent(6))} sind üblich.`,
  'fragrance.seizes': () => 'Einen anderen nehmen oder ihn in diesem Ansatz weglassen.',
  'fragrance.rices': () =>
    'Rühren Sie ihn erst in etwas Öl, und mixen Sie die Klumpen mit dem Stabmixer glatt.',
  'fragrance.untried': () => 'Machen Sie einen kleinen Probeansatz, und tragen Sie ein, was geschieht.',
  'fragrance.browns': () =>
    'Die Farbe darauf abstimmen. In hellen Schichten und Gespritztem daneben weglassen: Das Braun wandert.',
  'liquid.scorches': (_, texts) =>
    `Frieren Sie es in Würfeln ein, stellen Sie den Becher in Eis, und geben Sie die Lauge löffelweise dazu, unter ${texts.temperature(35)}. Oder geben Sie es in den Leim.`,
  'liquid.boils-over': () =>
    'Kochen Sie es zehn Minuten, lassen Sie es schal werden, und füllen Sie mit Wasser auf. Nehmen Sie es eiskalt in einem hohen Becher, und geben Sie die Lauge löffelweise dazu.',
  'liquid.spits': () =>
    'Gießen Sie es nie auf trockene oder starke Lauge. Nehmen Sie es kalt, und geben Sie die Lauge löffelweise dazu. Auf eine Verätzung kein Essig: viel fließendes Wasser.',
  'liquid.spoils': () => 'Passieren Sie es fein, und heben Sie zum Beobachten ein Stück auf.',
  'liquid.adds-fat': () =>
    'So lassen es die meisten. Soll die Überfettung bleiben, geben Sie im Rezept eine niedrigere an.',
  'colourant.much': (_, texts) =>
    `${texts.range(texts.percent(1), texts.percent(3))} färben gut. Ein Stück auf einem weißen Tuch prüfen.`,
  'colourant.oil': () =>
    'Die Farbe stattdessen in etwas von den abgewogenen Fetten oder in Glycerin anrühren.',
  'fats.turn-rancid': (_, texts) =>
    `Unter ${texts.percent(15)} bleiben, höchstens ${texts.percent(5)} Überfettung. Die Seife kühl, dunkel und trocken lagern.`,
  'fats.allergens': () => 'Auf dem Etikett nennen, und sagen Sie es allen, die fragen.',
  'fats.advised-against': () => 'Sagen Sie es auf dem Etikett, oder nehmen Sie ein anderes Fett.',
  'batch.heavy': ({ batches }, texts) =>
    `In ${texts.number(batches, 0)} Ansätzen machen oder die Mengen prüfen.`,
  'addition.spoils': () =>
    'Getrocknet und gesiebt statt eines Teils des Wassers verwenden. Ein Stück zurücklegen und beobachten.',
  'addition.browns': () => 'Spät und ganz trocken obenauf geben und die Seife nach der Reife einwickeln.',
  'addition.scorches': ({ belowC }, texts) =>
    `Unter ${texts.temperature(belowC)} arbeiten und es in etwas von den Fetten rühren.`,
  'fat.confirmed': () => 'Das Blatt noch einmal prüfen, bevor Sie die Lauge wiegen.',
  'fat.own-figure': () => 'Mit dem Blatt der Charge vergleichen, die Sie verwenden.',
  'portions.too-heavy': () => 'Geben Sie ihnen weniger oder Anteile.',
  'mould.too-few': () => 'Weniger Stücke machen oder sie in zwei Läufen machen.',
  'soap.ash': () =>
    'Die Seife abdecken, damit keine Luft darüber streicht. Oder mit Isopropylalkohol besprühen; der brennt: keine Flamme, keine Herdplatte.',
  'soap.overheats': ({ advice }, texts) =>
    `${adviceOr(advice, texts, 'Nicht einpacken, und in Zugluft oder in die Kälte stellen.')} Sehen Sie die ersten zwei Stunden danach.`,
  'soap.gel-unsure': ({ advice }, texts) =>
    adviceOr(
      advice,
      texts,
      'Die Form einpacken, damit sie ganz geliert, oder in den Kühlschrank stellen, damit sie nicht geliert.',
    ),
  'soap.gel-unlikely': ({ advice }, texts) =>
    adviceOr(advice, texts, 'Die Form einpacken oder in einem ausgeschalteten Ofen warm halten.'),
  'soap.gel-likely': ({ advice }, texts) =>
    adviceOr(advice, texts, 'Einen Tag in den Kühlschrank stellen oder kühler gießen.'),
  'soap.sweats': () =>
    'In einem trockeneren Raum mit bewegter Luft reifen lassen und nach der Reife einwickeln.',
  'soap.not-forecast': (_, texts) =>
    `Richten Sie sich nur nach den Mengen. Für Stücke höchstens ${texts.percent(10)} Ätzkali nehmen.`,
  'soap.sticks': (_, texts) =>
    `${texts.range(texts.percent(1), texts.percent(2))} Natriumlaktat zugeben, länger warten oder vor dem Herausdrücken einige Stunden einfrieren.`,
};
