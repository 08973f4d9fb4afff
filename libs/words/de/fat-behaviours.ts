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
  'palm-superolein': 'Palmöl ohne seinen harten Teil: bleibt im warmen Zimmer flüssig, in der Seife weicher.',
  'palm-kernel-olein': 'Der weichere Teil von Palmkernöl: schäumt wie dieses und schmilzt eher.',
  'palm-kernel-stearin': 'Der harte Teil von Palmkernöl: spröde, wird schnell fest und schäumt schnell.',
  'hydrogenated-coconut': 'Kokosöl, das im warmen Zimmer fest bleibt; die gleiche Seife, etwas härter.',
  'murumuru-butter': 'Wie Kokosöl, härter und weißer; in kühlem Leim wird sie früh fest.',
  'tucuma-butter': 'Ersetzt Kokosöl: hart, weiß, schäumt schnell.',
  'ucuuba-butter':
    'Durch ihre Myristinsäure sehr hart; ein kleiner Anteil macht die Seife fester und schäumt.',
  'laurel-berry':
    'Grün, stark riechend, schäumt gut; die Spur kommt eher. Manche Menschen bekommen davon Ausschlag: wenig nehmen und auf dem Etikett nennen.',
  'palm-shortening': 'Palmöl, das sich im Eimer nicht trennt; harte Seife, cremiger Schaum.',
  'hydrogenated-palm': 'Sehr hart; wird in der Schüssel fest, wenn der Leim nicht über etwa 55 °C bleibt.',
  'hydrogenated-soybean':
    'Die Spur kommt langsam; günstig, mild, mittelharte Seife. Marken unterscheiden sich: die Werte vom Datenblatt nehmen.',
  'soy-wax':
    'Härtet Seife anstelle von Palmstearin. Es wird unter etwa 55 °C fest, der Leim muss also warm sein. Kerzenwachs mit Zusätzen ist etwas anderes.',
  'hydrogenated-rapeseed': 'Ähnlich wie Sojawachs: hart, und es wird unter etwa 60 °C fest.',
  'illipe-butter':
    'Hart und spröde wie Kakaobutter; wenige Prozent machen die Seife fester und schneller fest.',
  'sal-butter': 'Hart, schmilzt langsam, zwischen Kokum- und Mangobutter.',
  'cupuacu-butter': 'Weicher als Kakaobutter, cremig und mild; wenige Prozent, weil sie teuer ist.',
  'shea-olein': 'Der flüssige Teil von Sheabutter: mild, und das Unverseifbare bleibt in der Seife.',
  'mowrah-butter': 'Feste, milde Seife, ähnlich wie mit Palmöl.',
  'bacuri-butter': 'Dunkel, hart und stark riechend; färbt die Seife braun.',
  'goose-fat': 'Weich und mild, zwischen Schweineschmalz und Olivenöl; die Spur kommt langsam.',
  'duck-fat': 'Weich und mild wie Gänseschmalz; riecht nach Küche, wenn es nicht gereinigt ist.',
  'chicken-fat': 'In der Seife weich und eher ranzig als Schweineschmalz; vorher gut reinigen.',
  'sheep-tallow': 'Härter und spröder als Rindertalg, riecht stärker. Unter etwa 45 °C dickt er den Leim an.',
  'milk-fat':
    'Harte, cremige Seife, die nach Butter riecht und ranzig wird. Butterschmalz nehmen, damit Wasser und Eiweiß draußen bleiben.',
  'horse-fat': 'Weich und mild; viel davon hält die Seife weich, und sie wird früh ranzig.',
  'emu-oil': 'Weich und mild, ähnlich wie Schmalz, das flüssig bleibt; teuer, darum wenige Prozent.',
  'stearic-acid-95':
    'Wird zu Seife, sobald Lauge sie berührt, wie die halb aus Palmitinsäure, und braucht ein Zwanzigstel weniger davon. Auf dem Datenblatt steht, welche es ist.',
  'palmitic-acid':
    'Wird zu Seife, sobald Lauge sie berührt: Der Leim dickt sofort an und muss heiß sein. Wenige Prozent zum Härten.',
  'myristic-acid':
    'Wird zu Seife, sobald Lauge sie berührt; wenige Prozent schäumen und härten, meist in Rasierseife.',
  'lauric-acid':
    'Wird zu Seife, sobald Lauge sie berührt; schäumt stark und trocknet die Haut aus, darum wenige Prozent.',
  'oleic-acid': 'Wird zu Seife, sobald Lauge sie berührt; flüssig, für weiche und flüssige Seifen.',
  rosin:
    'Wird zu Seife, sobald Lauge es berührt, und treibt den ganzen Leim an; über einem Zehntel der Fette klebrig. Manche Menschen sind dagegen allergisch: auf dem Etikett nennen.',
  'candelilla-wax':
    'Ein hartes Pflanzenwachs anstelle von Bienenwachs: ein oder zwei Prozent. Der Leim muss über etwa 70 °C bleiben, bis es eingerührt ist.',
  'carnauba-wax':
    'Das härteste der Wachse, und es schmilzt über etwa 80 °C: höchstens ein Prozent, mit den harten Fetten zuerst geschmolzen.',
  camelina: 'Gelb und weich; hält etwas länger als Leinöl und bleibt ein kleiner Anteil.',
  'evening-primrose': 'Teuer und bald ranzig; in Seife höchstens wenige Prozent.',
  borage: 'Weich und bald ranzig; in Seife höchstens wenige Prozent.',
  'blackcurrant-seed': 'Grünlich und bald ranzig; in Seife höchstens wenige Prozent.',
  'rosehip-seed': 'Rötlich und bald ranzig; in Seife höchstens wenige Prozent.',
  'raspberry-seed': 'Golden und bald ranzig; in Seife höchstens wenige Prozent.',
  'chia-seed': 'Trocknet wie Leinöl: weich und nur wenige Prozent.',
  perilla: 'Trocknet wie Leinöl: weich und nur wenige Prozent.',
  'sea-buckthorn': 'Tief orange: Ein Prozent färbt die Seife, mehr färbt den Schaum.',
  'kukui-nut':
    'Leicht und weich; ein kleiner Anteil, weil es ranzig wird. Wer gegen Nüsse allergisch ist, will es auf dem Etikett lesen.',
  'mid-oleic-sunflower':
    'Zwischen Sonnenblumenöl und dem ölsäurereichen: Die Spur kommt langsam, weniger Flecken.',
  'wheat-germ': 'Dick und golden, riecht nach Getreide; weich, wenige Prozent.',
  'black-cumin': 'Dunkel, riecht würzig; wenige Prozent.',
  'pumpkin-seed': 'Unraffiniert grün bis braun, riecht geröstet; weich, ein kleiner Anteil.',
  'poppy-seed': 'Hell und weich, die Spur kommt langsam; ein kleiner Anteil.',
  'passion-fruit-seed': 'Leicht und weich; ein kleiner Anteil, weil es früh ranzig wird.',
  'watermelon-seed': 'Leicht und weich; ein kleiner Anteil, weil es früh ranzig wird.',
  'milk-thistle': 'Ähnlich wie Sonnenblumenöl: weich, ein kleiner Anteil.',
  'cherry-kernel': 'Mild, riecht nach Mandeln; weicher und eher ranzig als Aprikosenkernöl.',
  'brazil-nut': 'Mild und cremig, mittelhart. Wer gegen Nüsse allergisch ist, will es auf dem Etikett lesen.',
  baobab: 'Mild, mittelhart; teuer, darum wenige Prozent.',
  pistachio: 'Mild und weich wie Mandelöl. Wer gegen Nüsse allergisch ist, will es auf dem Etikett lesen.',
  pecan: 'Mild und weich wie Mandelöl. Wer gegen Nüsse allergisch ist, will es auf dem Etikett lesen.',
  'plum-kernel': 'Wie Aprikosenkernöl; riecht nach Marzipan, was die Lauge meist nimmt.',
  'peach-kernel': 'Ähnlich wie Aprikosenkernöl: mild, leicht, weich.',
  camellia: 'Ähnlich wie Olivenöl, heller und dünner: mild, die Spur kommt langsam.',
  'high-oleic-rapeseed': 'Günstig, die Spur kommt langsam, hält viel länger als gewöhnliches Rapsöl.',
  'high-oleic-soybean': 'Die Spur kommt langsam, mild; hält viel länger als gewöhnliches Sojaöl.',
  'mustard-seed': 'Weich und langsam. Nur raffiniertes nehmen, denn unraffiniertes reizt Haut und Augen.',
  moringa: 'Wie Olivenöl, wird spät ranzig; teuer, darum wenige Prozent.',
  marula: 'Wie Olivenöl, etwas fester; teuer, darum wenige Prozent.',
  buriti: 'Tief orange: Ein Prozent färbt die Seife; sonst wie Olivenöl.',
  acai: 'Grün und mild; teuer, darum wenige Prozent.',
  tamanu: 'Dunkelgrün, harzig und stark riechend; die Spur kommt eher, wenige Prozent.',
  andiroba: 'Mittelhart, riecht bitter; im kühlen Zimmer halb fest.',
  karanja: 'Riecht und wirkt wie Neemöl: wenige Prozent. Nicht in Lebensmittel geraten lassen.',
  meadowfoam:
    'Seidig und wird sehr spät ranzig; seine langen Säuren schäumen wenig, darum ein kleiner Anteil.',
};
