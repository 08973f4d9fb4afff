import type { UnitSystem } from '#units';

/** The languages that there are words for, by their own names. */
export const languages = { en: 'English', de: 'Deutsch' } as const;
export type Language = keyof typeof languages;

export function isLanguage(name: string): name is Language {
  return Object.hasOwn(languages, name);
}

/** For whom something is written. */
export interface Reader {
  readonly language: Language;
  readonly units: UnitSystem;
  /** IANA name of the zone in which times are read. */
  readonly timeZone: string;
}
