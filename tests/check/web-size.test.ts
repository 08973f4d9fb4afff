import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { initialScripts, scriptsOfWords } from './initial-scripts.js';

const LARGEST_KB = 120;
/** With all texts of one language; the page has to wait for these too. */
const LARGEST_WITH_WORDS_KB = 175;

const kilobytes = (scripts: Iterable<string>): number =>
  [...scripts].reduce((sum, path) => sum + gzipSync(readFileSync(path)).length, 0) / 1000;

const textOf = (scripts: readonly string[]): string =>
  scripts.map((path) => readFileSync(path, 'utf8')).join('\n');

describe('the first script of the web app', () => {
  it(`is at most ${LARGEST_KB} kB, gzipped`, () => {
    const size = kilobytes(initialScripts());
    expect(size).toBeGreaterThan(10);
    expect(size).toBeLessThanOrEqual(LARGEST_KB);
  });

  it.each([
    ['en', 'Unmould'],
    ['de', 'Ausformen'],
  ])(
    `is at most ${LARGEST_WITH_WORDS_KB} kB with the texts of “%s”, and has none by itself`,
    (language, text) => {
      const words = scriptsOfWords(language);
      expect(textOf(words).includes(text)).toBe(true);
      expect(textOf(initialScripts()).includes(text)).toBe(false);
      // Those of the pages and the sentences of all messages.
      expect(words.filter((path) => path.includes(`/${language}-`))).toHaveLength(2);
      expect(kilobytes(words)).toBeGreaterThan(30);
      expect(kilobytes(new Set([...initialScripts(), ...words]))).toBeLessThanOrEqual(LARGEST_WITH_WORDS_KB);
    },
  );
});
