import type { Language } from '#words';

export type Trouble = 'database-down' | 'database-restarting' | 'queue-down' | 'disk-full';

/** What is said of each trouble. */
export const troubles: Readonly<Record<Language, Readonly<Record<Trouble, string>>>> = {
  en: {
    'database-down': 'The database cannot be reached.',
    'database-restarting': 'The database ended by itself and is being started again.',
    'queue-down': 'The queue cannot be reached: nudges may come late.',
    'disk-full': 'The disk of the database is full: nothing more can be stored.',
  },
  de: {
    'database-down': 'Die Datenbank ist nicht zu erreichen.',
    'database-restarting': 'Die Datenbank ist ausgefallen und wird neu gestartet.',
    'queue-down': 'Die Warteschlange ist nicht zu erreichen: Erinnerungen kommen vielleicht spät.',
    'disk-full': 'Die Platte der Datenbank ist voll: Es lässt sich nichts mehr speichern.',
  },
};
