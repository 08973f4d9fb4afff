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
  mould:
    'Ein ausgelegter Block hält seine Wärme und wird am Papier herausgehoben; enger Kunststoff hält die Seife fest.',
  'room-on-glaze': 'Gießseife wird nur durch Abkühlen fest, darum verzögert es ein warmer Raum.',
  'lye-on-ash': 'Schwache Lauge lässt mehr Wasser zurück, und das trägt Lauge an die Luft.',
  'room-on-ash': 'In einem kühlen Raum wird die Lauge langsam verbraucht.',
  'humidity-on-ash': 'Feuchte Luft hält die Oberfläche nass, und wo es nass ist, entsteht Sodaasche.',
  'gel-on-ash': 'In voller Gelphase ist die Lauge nach Stunden verbraucht.',
  'lye-on-cure': 'Mit weniger Wasser im Ansatz muss weniger trocknen.',
  oleic: 'Seife aus vorwiegend Ölsäure bleibt monatelang weich und schleimig.',
  'room-humidity': 'Feuchte Luft nimmt Wasser langsamer auf.',
  'gel-on-cure': 'Nach voller Gelphase beginnt die Reife mit fertiger Reaktion.',
  'hot-process-on-set': 'Gekochte Seife ist schon Seife: Sie muss nur abkühlen.',
  'hot-process-on-ash': 'Die Lauge ist im Topf verbraucht, also kommt keine an die Luft.',
  'hot-process-on-cure': 'Gekochte Seife ist fertig, aber feucht: Sie trocknet noch Wochen.',
  'rebatch-on-set': 'Noch einmal eingeschmolzene Seife ist feucht und wird langsam fest.',
  'rebatch-on-cure': 'Was beim Einschmelzen dazukam, muss wieder heraustrocknen.',
  lesson: 'Ihr Raum, Ihre Formen und Ihre Fette haben ein eigenes Tempo.',
};

/** Was jenseits der Enden einer Regel zu wissen ist. */
export const beyondRules: Names['beyondRules'] = {
  'batter-temperature': {
    below: 'Harte Fette werden beim Abkühlen fest und dicken den Leim an, ohne dass Seife darin ist.',
  },
  'sodium-lactate': { above: 'Mehr macht die Kanten spröde.' },
};
