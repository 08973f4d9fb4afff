import { describe, expect, it } from 'vitest';
import { en } from './en/index.js';
import { withTexts } from './index.js';
import { de } from './de/index.js';

const reader = { language: 'en', units: 'metric', timeZone: 'UTC' } as const;

describe('texts beside messages', () => {
  it('stand in the language that is asked for, and nowhere else', () => {
    const document = { title: 'Tile', cautions: [{ code: 'caution.lye' }], other: { code: 'plain' } };
    const english = withTexts(document, reader, en);
    expect(english.cautions[0]).toHaveProperty('text', expect.stringMatching(/^Lye burns/));
    expect(english.other).toEqual({ code: 'plain' });
    const german = withTexts(document, { ...reader, language: 'de' }, de);
    expect(JSON.stringify(german)).toContain('Lauge verätzt');
    expect(document.cautions[0]).toEqual({ code: 'caution.lye' });
  });

  it('leave no name of an object’s own prototype for a code', () => {
    expect(withTexts({ code: 'toString' }, reader, en)).toEqual({ code: 'toString' });
  });
});
