import fc from 'fast-check';
import { expect, it } from 'vitest';
import { onOneLine, shownOnOneLine, shownText, withoutSteering } from './shown-text.js';

const ESC = '\u001b';
const RLO = '\u202e';

it('takes out what steers a terminal or turns text around, and nothing that is read', () => {
  expect(onOneLine(`Red ${ESC}[31mtile${RLO}\u2066\u0085`)).toBe('Red [31mtile');
  expect(onOneLine('two\r\nlines\tof it')).toBe('two lines of it');
  expect(withoutSteering(`two\n${RLO}lines`)).toBe('two\nlines');
  for (const text of ['Meer & Salz', 'סבון \u200fים', '👩‍🔬 5 × 7 “½”', 'مای‌صابون'])
    expect(onOneLine(text)).toBe(text);
});

it('shows what steers, in a way that JSON reads as the same', () => {
  expect(shownText(`a${ESC}b\nc${RLO}`)).toBe('a\\u001bb\nc\\u202e');
  expect(shownOnOneLine('a\nb')).toBe('a\\u000ab');
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      expect(JSON.parse(shownText(JSON.stringify(text)))).toBe(text);
      expect(shownOnOneLine(text)).not.toMatch(/[\0-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/);
    }),
  );
});
