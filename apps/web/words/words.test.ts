import { describe, expect, it } from 'vitest';
import { de } from './de/index.js';
import { lessons as deLessons } from './de/lessons.js';
import { notes as deNotes } from './de/notes.js';
import { pasting as dePasting } from './de/pasting.js';
import { settings as deSettings } from './de/settings.js';
import { stock as deStock } from './de/stock.js';
import { en } from './en/index.js';
import { lessons as enLessons } from './en/lessons.js';
import { notes as enNotes } from './en/notes.js';
import { pasting as enPasting } from './en/pasting.js';
import { settings as enSettings } from './en/settings.js';
import { stock as enStock } from './en/stock.js';

type Leaf = string | ((...given: never[]) => unknown);

/** Texts that are rightly the same in both languages: signs, and words that both have. */
const SAME = new Set([
  'form.lengthUnits.min',
  'library.allergenName',
  'library.name',
  'lessons.and',
  'run.remedies.none',
  'run.tabs.plan',
  'session.devices.tablet',
  'session.devices.computer',
  'settings.code',
  'stock.material',
  'stock.name',
  'stock.toolName',
]);

/** Every text with its path, arrays and rooms opened. */
function leaves(words: unknown, path = ''): Map<string, Leaf> {
  if (typeof words === 'string' || typeof words === 'function') return new Map([[path, words as Leaf]]);
  if (typeof words !== 'object' || words === null) throw new Error(`${path} is no text`);
  return new Map(
    Object.entries(words).flatMap(([key, value]) => [...leaves(value, path === '' ? key : `${path}.${key}`)]),
  );
}

/** What is filled in where numbers and texts will not do. */
const SAMPLES: Readonly<Record<string, readonly unknown[]>> = {
  ...Object.fromEntries(
    Object.keys(en.patterns.stageTitles).map((kind) => [`patterns.stageTitles.${kind}`, ['Layer 2']]),
  ),
  'library.length': [2, 'days', String],
  'library.range': ['1', '2', 'days'],
};

/** What a function says when its places are filled in with one, with several, and with texts. */
function said(path: string, text: (...given: never[]) => unknown): unknown[] {
  const sample = SAMPLES[path];
  const tries = sample ? [sample] : [1, 2, 'x'].map((value) => Array<unknown>(text.length).fill(value));
  return tries.map((values) => text(...(values as never[])));
}

/** Those that only some pages bring along, too. */
const english = leaves({
  ...en,
  lessons: enLessons,
  notes: enNotes,
  pasting: enPasting,
  settings: enSettings,
  stock: enStock,
});
const german = leaves({
  ...de,
  lessons: deLessons,
  notes: deNotes,
  pasting: dePasting,
  settings: deSettings,
  stock: deStock,
});

describe('the second language', () => {
  it('has the same texts as the first', () => {
    expect([...german.keys()].sort()).toEqual([...english.keys()].sort());
    for (const [path, text] of german) expect(typeof text, path).toBe(typeof english.get(path));
  });

  it('is translated, but for what is the same in both', () => {
    const same = [...german].filter(
      ([path, text]) => typeof text === 'string' && text === english.get(path) && !SAME.has(path),
    );
    expect(same).toEqual([]);
  });

  it.each([
    ['English', english],
    ['German', german],
  ])('leaves nothing unsaid in %s', (_, texts) => {
    for (const [path, text] of texts) {
      if (typeof text === 'string') {
        expect(text, path).not.toBe('');
        continue;
      }
      for (const one of said(path, text)) {
        expect([undefined, null, ''], path).not.toContain(one);
      }
    }
  });

  it('fills in as many places', () => {
    for (const [path, text] of german) {
      const first = english.get(path);
      if (typeof text !== 'function' || typeof first !== 'function') continue;
      expect(text.length, path).toBeLessThanOrEqual(first.length);
    }
  });

  it('says Sie, never du', () => {
    const familiar = [...german].filter(
      ([, text]) => typeof text === 'string' && /\b(du|dich|dir|dein\w*)\b/i.test(text),
    );
    expect(familiar).toEqual([]);
  });
});
