import { useState } from 'react';
import { forShown } from '../preferences/shown-workshop.js';
import { isSame, withValue, type Path, type Value } from './values.js';

interface Kept {
  readonly content: Value;
  /** Of what was read when the change began; absent: it is new. */
  readonly version?: number | undefined;
}

export interface Draft {
  readonly content: Value;
  /** What the change is based on; absent: it is new. */
  readonly version: number | undefined;
  readonly isChanged: boolean;
  readonly change: (path: Path, value: Value) => void;
  /** Puts all of it in place of what there was. @param version on which it is based from now on */
  readonly replace: (content: Value, version?: number) => void;
  /** Forgets what was changed. */
  readonly drop: () => void;
}

/**
 * What is being edited. What was typed survives a reload: it is kept in this tab until it is saved or discarded.
 * @param name tells drafts apart
 * @param stored what the API has; null for something new
 * @param blank what something new begins with
 */
export function useDraft(
  name: string,
  stored: { readonly content: Value; readonly version: number } | null,
  blank: Value = {},
): Draft {
  const key = forShown(`benchtide.draft.${name}`);
  const [state, setState] = useState(() => ({ key, kept: read(key) }));
  const kept = state.key === key ? state.kept : read(key);
  const base: Kept = stored ?? { content: blank };
  const now = kept ?? base;
  const keep = (next: (before: Kept) => Kept | null): void => {
    // By what was there last, so that two changes in one turn both count.
    setState((before) => {
      const made = next((before.key === key ? before.kept : read(key)) ?? base);
      const kept = made !== null && isSame(made.content, base.content) ? null : made;
      write(key, kept);
      return { key, kept };
    });
  };
  return {
    content: now.content,
    version: now.version,
    isChanged: kept !== null && !isSame(kept.content, base.content),
    change: (path, value) =>
      keep((before) => ({ ...before, content: withValue(before.content, path, value) })),
    replace: (content, version = now.version) => keep(() => ({ content, version })),
    drop: () => keep(() => null),
  };
}

function read(key: string): Kept | null {
  try {
    return JSON.parse(sessionStorage.getItem(key) ?? 'null') as Kept | null;
  } catch {
    return null;
  }
}

function write(key: string, kept: Kept | null): void {
  try {
    if (kept === null) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(kept));
  } catch {
    // A full or forbidden store: the draft lasts as long as the page.
  }
}
