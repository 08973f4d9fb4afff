import type { RecordWords } from '../en/record.js';

export const record: RecordWords = {
  title: 'Was die Vorhersagen wert waren',
  told: (all, inside, expected) =>
    all === 1
      ? `Ihre eine Vorhersage bisher: ${inside} von 1 traf die Spanne.`
      : `Von Ihren letzten ${all} Vorhersagen trafen ${inside} die Spanne; ${expected} waren zu erwarten.`,
  outside: (earlier, later) => `Früher als die Spanne: ${earlier}. Später: ${later}.`,
  unknown: (count) =>
    `Nicht zu sagen: ${count}. Niemand hat nachgesehen, bevor die Seife so weit war, oder es lag zu viel Zeit dazwischen. Es können also mehr getroffen haben.`,
  how: (percent) =>
    `Jede Vorhersage zählt so, wie sie vor ihrem Ansatz stand, mit dem, was frühere Ansätze gelehrt hatten. Ihre Spanne soll ${percent} der Zeiten enthalten.`,
  marks: { inside: 'getroffen', earlier: 'früher', later: 'später', unknown: 'nicht zu sagen' },
};
