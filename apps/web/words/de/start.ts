import type { Words } from '../en/index.js';

export const start: Words['start'] = {
  title: 'Willkommen bei Benchtide',
  lead: 'Wie möchten Sie anfangen?',
  workshop: 'Meine Werkstatt',
  own: {
    title: 'Meine eigene Werkstatt',
    text: 'Sie ist leer. Vier kurze Schritte führen zum ersten Plan: Ihre Form, Ihr Rezept, Ihre Zeiten, der Beginn.',
    go: 'Anfangen',
    making: 'Einen Augenblick …',
  },
  demo: {
    title: 'Die Demo',
    text: 'Erfundene Rezepte, Läufe und Protokolle, zum Ansehen und Ausprobieren. Die Demo bleibt für sich: Nichts darin zählt für Ihre Vorhersagen. Sie können sie jederzeit verlassen und verwerfen.',
    go: 'Die Demo ansehen',
    making: 'Die Demo wird eingerichtet. Das dauert einige Sekunden …',
  },
};
