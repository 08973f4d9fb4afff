import { useSyncExternalStore } from 'react';
import type { Language } from '../words/words.js';

/** What a person chose on this device. */
export interface Preferences {
  readonly language: Language;
  readonly units: 'metric' | 'us';
  /** IANA name in which times are shown; `workshop`: that of the workshop. */
  readonly timeZone: string;
  readonly sound: boolean;
}

const KEY = 'benchtide.preferences';
const listeners = new Set<() => void>();
let current = read();

function read(): Preferences {
  const preset: Preferences = {
    language: navigator.language.startsWith('de') ? 'de' : 'en',
    units: 'metric',
    timeZone: 'workshop',
    sound: false,
  };
  try {
    return { ...preset, ...(JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Preferences>) };
  } catch {
    return preset;
  }
}

function change(next: Preferences): void {
  current = next;
  listeners.forEach((listener) => listener());
}

// Another tab of the same device has changed them.
addEventListener('storage', (event) => {
  if (event.key === KEY) change(read());
});

/** What is chosen now, for what is no part of a page. */
export function preferences(): Preferences {
  return current;
}

/** One preference and the way to change it; kept on this device. */
export function usePreference<K extends keyof Preferences>(
  name: K,
): readonly [Preferences[K], (value: Preferences[K]) => void] {
  const value = useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    () => current[name],
  );
  return [
    value,
    (chosen) => {
      change({ ...current, [name]: chosen });
      try {
        localStorage.setItem(KEY, JSON.stringify(current));
      } catch {
        // A full or forbidden store: the choice lasts as long as the page.
      }
    },
  ];
}
