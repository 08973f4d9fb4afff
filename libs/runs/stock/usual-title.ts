import { shippedFats } from '#chemistry';

const titles: Readonly<Record<string, string>> = {
  ...Object.fromEntries(shippedFats.map(({ key, title }) => [key, title])),
  naoh: 'Sodium hydroxide (NaOH)',
  'naoh-solution': 'Sodium hydroxide solution',
  koh: 'Potassium hydroxide (KOH)',
  water: 'Water, distilled',
  'sodium-lactate': 'Sodium lactate, 60% solution',
  salt: 'Salt',
  sugar: 'Sugar',
  'melt-and-pour': 'Melt-and-pour base',
  'soap-dough': 'Soap dough',
};

/** What a material is called in English where nobody has named it; of a key of the maker's own its words. */
export function usualTitle(key: string): string {
  const words = key.replaceAll('-', ' ');
  return titles[key] ?? words.charAt(0).toUpperCase() + words.slice(1);
}
