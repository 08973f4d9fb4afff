import { useEffect, useState } from 'react';
import { forShown } from '../preferences/shown-workshop.js';

/**
 * A state that survives a reload: kept on this device.
 * @param revive makes it from what was kept, null at first
 */
export function useSavedDraft<T>(
  name: string,
  revive: (text: string | null) => T,
): readonly [T, (change: (now: T) => T) => void, () => void] {
  const key = forShown(name);
  const [draft, setDraft] = useState(() => revive(read(key)));
  useEffect(() => {
    try {
      localStorage.setItem(key, JSON.stringify(draft));
    } catch {
      // A full or forbidden store: the draft lasts as long as the page.
    }
  }, [key, draft]);
  const forget = (): void => {
    try {
      localStorage.removeItem(key);
    } catch {
      // As above.
    }
  };
  return [draft, setDraft, forget];
}

function read(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}
