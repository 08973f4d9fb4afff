import { describe, expect, it } from 'vitest';
import type { RemedyMessage } from '#contract';
import { en } from './en/index.js';
import { textsFor } from './index.js';
import { de } from './de/index.js';

const english = textsFor({ language: 'en', units: 'us', timeZone: 'Europe/Dublin' }, en);
const german = textsFor({ language: 'de', units: 'metric', timeZone: 'Europe/Berlin' }, de);

const told: readonly [RemedyMessage, string, string][] = [
  [
    { code: 'remedy.make-fewer', run: 'Cups', before: 13, after: 12 },
    'Make 12 pieces of “Cups” instead of 13',
    'Von „Cups“ nur 12 Stück machen statt 13',
  ],
  [
    { code: 'remedy.better-odds', before: 0.71, after: 0.88 },
    'Odds: 9 in 10 instead of 7 in 10.',
    'Chance: 9 statt 7 von 10.',
  ],
  [
    { code: 'remedy.better-odds', before: 0.871, after: 0.893 },
    'Odds: 89 in 100 instead of 87 in 100.',
    'Chance: 89 statt 87 von 100.',
  ],
  [
    { code: 'remedy.nothing-ready', run: 'Cups', readyBy: '2027-01-16' },
    'Nothing of “Cups” to sell on Sat 16 Jan.',
    'Am Sa., 16. Jan. ist von „Cups“ nichts zu verkaufen.',
  ],
  [
    { code: 'remedy.outside-hours', from: '2026-11-28T14:00:00.000Z', to: '2026-11-28T15:00:00.000Z' },
    'Work outside your hours: Sat 28 Nov, 14:00 to 15:00.',
    'Arbeit außerhalb Ihrer Zeiten: Sa., 28. Nov., 15:00 bis 16:00.',
  ],
  [
    {
      code: 'remedy.other-amounts',
      materials: [{ key: 'own-oil', title: 'My oil', unit: 'g', before: 500, after: 450 }],
      more: 2,
    },
    'Weigh other amounts: My oil 15.87 oz instead of 1 lb 1.64 oz (and 2 more).',
    'Andere Mengen abwiegen: My oil 450 g statt 500 g (und 2 weitere).',
  ],
  [
    { code: 'remedy.costs-more', amount: 3.2, currency: 'EUR', complete: true },
    'Materials cost €3.20 more.',
    'Das Material kostet 3,20 € mehr.',
  ],
  [
    { code: 'remedy.later-cure', run: 'Cups', minutes: 1860, likely: '2027-01-07T12:00:00.000Z' },
    '“Cups” is likely cured 31 h later, about Thu 7 Jan.',
    '„Cups“ ist wahrscheinlich 31 h später reif, etwa Do., 7. Jan.',
  ],
  [
    { code: 'remedy.holds-no-more', bandPercent: 80 },
    'If the soap is among the slowest or fastest 10%, this plan may break.',
    'Gehört die Seife zu den langsamsten oder schnellsten 10 %, geht dieser Plan vielleicht nicht auf.',
  ],
];

describe('remedies in words', () => {
  it.each(told)('%o', (message, inEnglish, inGerman) => {
    expect(plain(english.of(message))).toBe(inEnglish);
    expect(plain(german.of(message))).toBe(inGerman);
  });
});

/** Intl sets blanks that do not break. */
function plain(text: string): string {
  return text.replace(/[\u00a0\u202f]/g, ' ');
}
