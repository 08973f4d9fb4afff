import type { Words } from '../en/index.js';

export const tide: Words['tide'] = {
  title: 'Gezeitenkarte',
  table: 'Gezeitentafel',
  summary: (stages, parts, from, to) =>
    `${stages} Arbeitsschritte auf ${parts} Bändern, von ${from} bis ${to}.`,
  how: 'Jedes Band ist ein Teil und wird dicker, während seine Seife fest wird. Eine Linse zeigt, wann ein Schritt beginnen kann: am breitesten, wo es am besten ist. Tippen Sie auf einen Schritt für Zeiten und Grund.',
  day: 'Ein Tag',
  box: 'Gezeitenkarte. Pfeiltasten bewegen in der Zeit, Plus und Minus gehen näher heran und weiter weg. Tab führt zu den Schritten.',
  stages:
    'Arbeitsschritte, der Reihe nach. Pfeiltasten gehen von einem zum nächsten, Eingabe zeigt einen, M verschiebt ihn.',
  closer: 'Näher heran',
  farther: 'Weiter weg',
  earlier: 'Früher',
  later: 'Später',
  making: 'Die Herstellung',
  whole: 'Mit der Reife',
  now: 'Jetzt',
  cured: (when) => `wohl gereift ${when}`,
  markLabel: (m) =>
    `${m.number}. ${m.title}, ${m.state}. Ab ${m.opens}, am besten ${m.best}, spätestens ${m.lastCall}. ${m.why}`,
  doneLabel: (m) => `${m.number}. ${m.title}, ${m.state} ${m.at}.`,
  status: { planned: 'geplant', done: 'fertig', spoilt: 'misslungen' },
  lost: (odds) => `Hier scheitern ${odds} Läufen.`,
  none: 'kein Ende',
  number: 'Nr.',
  stage: 'Schritt',
  opens: 'Ab',
  best: 'Am besten',
  lastCall: 'Spätestens',
  surely: 'In 9 von 10 Fällen möglich',
  surelySpan: (from, to) => `${from} bis ${to}`,
  surelyFrom: (from) => `ab ${from}`,
  surelyNever: 'zu keiner Zeit',
  why: 'Warum',
  was: (when) => `vorher ${when}`,
  added: 'neu',
  gone: 'Entfällt mit dieser Änderung',
  close: 'Schließen',
  inTable: 'In der Gezeitentafel',
  move: 'Verschieben',
  moving: {
    title: (stage) => `Wohin soll „${stage}“?`,
    how: 'Ziehen Sie den Schritt, oder nehmen Sie Knöpfe oder Pfeiltasten. Nichts wird behalten, bevor Sie es sagen.',
    back: '15 min früher',
    on: '15 min später',
    lastSitting: 'Sitzung davor',
    nextSitting: 'Sitzung danach',
    trying: 'Wird berechnet …',
    odds: (there, here) => `Chance hier: ${there}; vorher: ${here}.`,
    moves: (count) =>
      count === 0
        ? 'Kein anderer Schritt verschiebt sich.'
        : count === 1
          ? 'Ein anderer Schritt verschiebt sich.'
          : `${count} andere Schritte verschieben sich.`,
    cannot: 'Dort geht es nicht:',
    keep: 'Dort lassen',
    leave: 'Lassen, wo er war',
    kept: 'Der Schritt bleibt dort. Spätere Pläne verschieben ihn so wenig wie jeden anderen.',
  },
  legend: {
    hours: 'Ihre Zeiten',
    night: 'Nacht',
    sitting: 'Sitzung',
    done: 'fertig',
    forecast: 'Vorhersage',
    window: 'wann ein Schritt beginnen kann',
    risk: 'wo es am ehesten scheitert',
    before: 'wo er war',
  },
};
