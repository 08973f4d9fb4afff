import type { Names } from '../names.js';

/** Was die Fette, die schon da sind, in Leim und Seife tun; wie in der Tabelle von `libs/chemistry`. */
export const fatBehaviours: Names['fatBehaviours'] = {
  coconut:
    'Wird schnell hart und schäumt in jedem Wasser. Viel davon gibt harte, lösliche, austrocknende Seife; darum wird sie stärker überfettet.',
  'palm-kernel':
    'Ähnlich wie Kokosöl, etwas milder und etwas langsamer; in größeren Anteilen kommt die Spur eher.',
  babassu: 'Ersetzt Kokosöl: hart, weiß, schäumt schnell, etwas sanfter zur Haut.',
  'medium-chain-triglycerides':
    'Bleibt flüssig und braucht viel Lauge. Seine Seife löst sich schnell auf, darum nur in kleinen Anteilen oder gar nicht.',
  palm: 'Gibt harte, haltbare Seife mit cremigem Schaum. Unter etwa 40 °C trübt es und dickt den Leim an. Ganz schmelzen und umrühren, denn im Eimer trennt es sich.',
  'high-oleic-palm':
    'Weicher als Palmöl und leichter flüssig zu halten; in der Seife zwischen Palmöl und Olivenöl.',
  'palm-olein': 'Der flüssige Teil von Palmöl: gießt sich leicht und gibt etwas weichere Seife.',
  'palm-stearin':
    'Der harte Teil von Palmöl: sehr hart, löst sich langsam und wird in der Schüssel fest, wenn der Leim nicht über etwa 50 °C bleibt.',
  olive: 'Die Spur kommt langsam. Tagelang weich und jung etwas schleimig; nach langer Reife mild und hart.',
  'olive-pomace':
    'Die Spur kommt viel schneller als mit Olivenöl, und die Seife wird grün oder hellbraun; sonst gleich.',
  'sweet-almond': 'Mild, leichter Schaum, die Spur kommt langsam; in großen Anteilen weiche Seife.',
  'apricot-kernel': 'Ähnlich wie Mandelöl: mild, leicht, weich.',
  hazelnut: 'Wie Olivenöl, die Spur kommt etwas eher; mild, anfangs weich.',
  macadamia: 'Mild und reichhaltig. Seine Palmitoleinsäure gibt weiche Seife, darum nur ein kleiner Anteil.',
  avocado: 'Mild und pflegend. Unraffiniert färbt es grün; meist unter einem Fünftel der Fette.',
  'high-oleic-sunflower':
    'Der günstige Ersatz für Olivenöl: Die Spur kommt langsam, anfangs weich, wird spät ranzig.',
  'high-oleic-safflower':
    'Hell und mild, die Spur kommt langsam; statt Olivenöl, wo die Seife weiß sein soll.',
  rapeseed:
    'Günstig, die Spur kommt langsam. Viel davon gibt weiche Seife, die Flecken bekommen kann; darum unter etwa zwei Fünfteln.',
  peanut:
    'Die Spur kommt langsam; milder, haltbarer Schaum. Wer gegen Nüsse allergisch ist, will es auf dem Etikett lesen.',
  sunflower:
    'Die Spur kommt langsam, weich. Mehr als etwa ein Fünftel der Fette gibt beim Lagern leicht Flecken.',
  safflower: 'Dünn, die Spur kommt langsam, weich in der Seife; wird früh ranzig.',
  soybean:
    'Die Spur kommt langsam. Weiche Seife mit wenig, cremigem Schaum, die beim Lagern Flecken bekommen kann.',
  'rice-bran':
    'Cremig und mild, die Spur kommt etwas eher als mit Olivenöl; viel davon hält die Seife weich.',
  sesame: 'Weich und mild; das unraffinierte Öl riecht und färbt.',
  maize: 'Günstig, die Spur kommt langsam, weich; nur ein kleiner Anteil, weil es Flecken gibt.',
  cottonseed:
    'Durch seine Palmitinsäure härter als andere Samenöle; dichter, haltbarer Schaum, aber es gibt Flecken.',
  'grape-seed':
    'Leicht auf der Haut, die Spur kommt langsam, weich. Wird früh ranzig, darum nur ein kleiner Anteil.',
  argan: 'Mild und teuer; wegen des Namens mit wenigen Prozent, wo es wenig ändert.',
  walnut: 'Pflegend und weich; nur wenige Prozent, weil es nach Monaten ranzig wird.',
  linseed: 'Weiche, gelbe Seife; mehr als wenige Prozent riechen mit der Zeit nach Farbe.',
  'hemp-seed':
    'Weich und pflegend, unraffiniert grün; über einem Zehntel der Fette hält die Seife nicht lange.',
  'shea-butter':
    'Cremige, haltbare Seife; das Unverseifbare bleibt als zusätzliche Überfettung darin. Langsam schmelzen und nicht zu weit abkühlen, sonst wird sie körnig.',
  'shea-butter-refined': 'Wie unraffinierte Sheabutter, weißer und ohne deren Geruch.',
  'cocoa-butter':
    'In großen Anteilen sehr hart und spröde, wenig Schaum. Die Spur kommt eher, und in kühlem Leim wird sie früh fest.',
  'mango-butter': 'Hart und cremig, zwischen Shea- und Kakaobutter; die Spur kommt etwas eher.',
  'kokum-butter':
    'Die härteste der Butter: Unter etwa 40 °C wird sie in der Schüssel fest, und über einem Zehntel der Fette gibt sie spröde Seife.',
  neem: 'Feste Seife mit starkem Geruch, der die Reife überdauert; wenige Prozent sind üblich. Manche Lieferanten raten in der Schwangerschaft davon ab.',
  lard: 'Die Spur kommt langsam. Weiß, hart und mild mit cremigem Schaum; leicht zu verarbeiten.',
  tallow: 'Harte, haltbare, weiße Seife. Unter etwa 40 °C dickt er den Leim beim Abkühlen an.',
  castor:
    'Hält den Schaum, und die Spur kommt eher. Über etwa einem Zehntel der Fette wird die Seife weich und klebrig.',
  beeswax:
    'Härtet die Seife und dämpft den Schaum. Ein oder zwei Prozent reichen, und der Leim muss über etwa 60 °C bleiben, bis es eingerührt ist.',
  jojoba:
    'Ein flüssiges Wachs: Die Hälfte bleibt unverändert in der Seife. Wenige Prozent fühlen sich seidig an; mehr dämpft den Schaum.',
  lanolin:
    'Ein klebriges Wachs: Ein oder zwei Prozent machen die Seife cremig, mehr dämpft den Schaum. Manche Menschen sind dagegen allergisch.',
  'stearic-acid':
    'Wird zu Seife, sobald Lauge sie berührt; der Leim dickt darum sofort an und muss heiß sein. Wenige Prozent zum Härten.',
};
