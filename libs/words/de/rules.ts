import type { Names } from '../names.js';

/** Warum die Seife tut, was eine Regel der Uhren sagt. */
export const rules: Names['rules'] = {
  'lye-on-batter': 'Stärkere Lauge trifft weniger verdünnt auf die Fette, darum dickt der Leim eher an.',
  'batter-temperature': 'Je wärmer der Leim, desto schneller wird er zu Seife.',
  'fragrance-slowing': 'Manche Düfte bremsen den Leim. Wie sehr, zeigt nur ein Probeansatz.',
  'fragrance-ricing':
    'Manche Düfte lassen den Leim klumpen. Bis die Klumpen glatt gerührt sind, dickt er weiter an.',
  'fragrance-unknown':
    'Was dieser Duft macht, ist nicht bekannt. Er kann nichts tun oder den Leim stark beschleunigen: Das zeigt nur ein Probeansatz.',
  fragrance:
    'Manche Düfte beschleunigen den Leim. Wie sehr, hängt von Lieferant und Charge ab: Das zeigt nur ein Probeansatz.',
  'olive-pomace': 'Tresteröl bringt freie Fettsäuren und Wachse mit, die sofort zu Seife werden.',
  castor: 'Viel Rizinusöl zieht die Lauge in die Fette, darum kommt die Spur eher.',
  butters: 'Viel Butter dickt den Leim beim Abkühlen an.',
  sugar: 'Zucker erwärmt den Leim und beschleunigt ihn.',
  emulsifying:
    'Von Hand gerührt bleiben große Laugentropfen, und die Emulsion braucht ein Mehrfaches der Zeit.',
  mixing:
    'Nur bis zur Emulsion gemixt, bleibt der Leim etwa doppelt so lange dünn; von Hand gerührt ein Mehrfaches.',
  'lye-on-set': 'Mit weniger Wasser muss weniger trocknen, bis die Seife fest ist.',
  'sodium-lactate': 'Natriumlaktat härtet frische Seife, darum kommt sie eher und sauberer aus der Form.',
  'salt-in-mould':
    'Salz entzieht der Seife Wasser und härtet sie. Ein Stück mit einem Viertel der Fette an Salz wird nach Stunden geschnitten.',
  'salt-in-the-open': 'Salz entzieht der Seife Wasser und härtet sie.',
  'hard-fatty-acids':
    'Seife aus gesättigten Fettsäuren ist von Anfang an hart; Seife aus Ölsäure bleibt tagelang weich.',
  'room-temperature': 'In einem warmen Raum läuft die Reaktion weiter, und die Oberfläche trocknet.',
  'gel-on-set': 'In voller Gelphase ist die Reaktion nach Stunden vorbei.',
  'hard-fats-in-gel':
    'In der Gelphase ist Seife aus Kokos und anderen harten Fetten fest, solange sie noch warm ist, und splittert bald danach beim Schneiden.',
  mould:
    'Ein ausgelegter Block hält seine Wärme und wird am Papier herausgehoben; enger Kunststoff hält die Seife fest.',
  'room-on-glaze': 'Gießseife wird nur durch Abkühlen fest, darum verzögert es ein warmer Raum.',
  'lye-on-ash': 'Schwache Lauge lässt mehr Wasser zurück, und das trägt Lauge an die Luft.',
  'room-on-ash': 'In einem kühlen Raum wird die Lauge langsam verbraucht.',
  'humidity-on-ash': 'Feuchte Luft hält die Oberfläche nass, und wo es nass ist, entsteht Sodaasche.',
  'air-on-ash':
    'Luftzug trocknet die Oberfläche, solange dort noch Lauge frei ist. Unter einer Abdeckung entsteht kaum Sodaasche.',
  'gel-on-ash': 'In voller Gelphase ist die Lauge nach Stunden verbraucht.',
  'lye-on-cure': 'Mit weniger Wasser im Ansatz muss weniger trocknen.',
  oleic: 'Seife aus vorwiegend Ölsäure bleibt zwei bis vier Monate weich und schleimig.',
  'room-humidity': 'Feuchte Luft nimmt Wasser langsamer auf.',
  'air-on-drying':
    'Ein Ventilator trägt die feuchte Luft weg. In einem geschlossenen Kasten oder Schrank bleibt Seife feucht.',
  'gel-on-cure': 'Nach voller Gelphase beginnt die Reife mit fertiger Reaktion.',
  'hot-process-on-set': 'Gekochte Seife ist schon Seife: Sie muss nur abkühlen.',
  'hot-process-on-ash': 'Die Lauge ist im Topf verbraucht, also kommt keine an die Luft.',
  'hot-process-on-cure': 'Gekochte Seife ist fertig, aber feucht: Sie trocknet noch Wochen.',
  'rebatch-on-set': 'Noch einmal eingeschmolzene Seife ist feucht und wird langsam fest.',
  'rebatch-on-cure': 'Was beim Einschmelzen dazukam, muss wieder heraustrocknen.',
  'fats-on-batter': 'Flüssige Öle dicken langsam an, Palm und Talg in der halben Zeit, Kokos noch eher.',
  lard: 'Schmalz dickt für ein so hartes Fett langsam an.',
  'free-acids': 'Freie Fettsäuren werden sofort zu Seife und dicken den Leim an.',
  wax: 'Wachs wird beim Abkühlen fest und dickt den Leim an.',
  alcohol: 'Alkohol, der noch in der Flüssigkeit ist, dickt den Leim sofort an. Vorher auskochen.',
  clay: 'Tonerde nimmt Wasser auf. Vorher anfeuchten.',
  'salt-early': 'Eine Salzseife wird schon beim Gießen steif.',
  'cutting-end':
    'Seife aus harten Fetten splittert früh: Ein Kokosblock wird innerhalb eines halben Tages geschnitten.',
  'batter-on-set': 'Kalt gegossen braucht Seife etwa einen Tag länger als heiß gegossen.',
  'koh-on-set': 'Ätzkali macht Seife weicher.',
  'cast-size': 'Ein kleines Stück verliert seine Wärme und bleibt länger weich; ein Block hält sie.',
  'coat-thickness': 'Ein dicker Überzug wird so langsam fest wie ein Block.',
  'bead-width': 'Feine Linien sind eher fest als dicke.',
  'melt-size': 'Je mehr es ist, desto langsamer kühlt es ab.',
  'oleic-on-best': 'Olivenseife wird ein halbes Jahr und länger immer besser.',
  polyunsaturated: 'Seife aus Sonnenblumen-, Soja- oder Traubenkernöl bleibt lange weich.',
  'castor-on-cure': 'Viel Rizinusöl hält Seife weich und klebrig.',
  'superfat-on-cure': 'Fett, das übrig bleibt, hält das Stück weich.',
  'salt-on-cure': 'Salzseifen sind vom ersten Tag an hart.',
  'size-on-cure': 'Dünne Stücke trocknen eher als dicke.',
  'room-on-cure': 'In einem warmen Raum geht das Wasser eher.',
  'hot-soap':
    'Seife wird nicht ausgeformt oder geschnitten, bevor sie abgekühlt ist, und nicht in der ersten Stunde.',
  'gel-cools': 'In der Gelphase ist Seife heißes Gelee. Sie wird einige Stunden nicht geschnitten.',
  lesson: 'Ihr Raum, Ihre Formen und Ihre Fette haben ein eigenes Tempo.',
};

/** Was jenseits der Enden einer Regel zu wissen ist. */
export const beyondRules: Names['beyondRules'] = {
  'batter-temperature': {
    below: 'Harte Fette werden beim Abkühlen fest und dicken den Leim an, ohne dass Seife darin ist.',
  },
  'sodium-lactate': { above: 'Mehr macht die Kanten spröde.' },
};
