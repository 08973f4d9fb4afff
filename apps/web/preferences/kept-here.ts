import { forShown } from './shown-workshop.js';

/** Something that this browser keeps of the workshop that is shown, and how those who show it hear of changes. */
export interface KeptHere<T> {
  readonly get: () => T;
  readonly set: (value: T) => void;
  /** @returns how to stop listening */
  readonly onChange: (listener: () => void) => () => void;
}

/**
 * Keeps a value in the browser through reloads, for the workshop that is shown; another tab hears of it too. Where the
 * browser keeps nothing, it lasts as long as the page.
 * @param name under which it is kept
 * @param read makes sense of what was kept, or of `undefined` where nothing was
 */
export function keptHere<T>(name: string, read: (kept: unknown) => T): KeptHere<T> {
  const key = forShown(name);
  const listeners = new Set<() => void>();
  const load = (): T => {
    try {
      return read(JSON.parse(localStorage.getItem(key) ?? 'null') ?? undefined);
    } catch {
      return read(undefined);
    }
  };
  let value = load();
  const change = (next: T): void => {
    value = next;
    listeners.forEach((listener) => listener());
  };
  addEventListener('storage', (event) => {
    if (event.key === key) change(load());
  });
  return {
    get: () => value,
    set(next) {
      change(next);
      try {
        localStorage.setItem(key, JSON.stringify(next));
      } catch {
        // A full or forbidden store: it lasts as long as the page.
      }
    },
    onChange(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
