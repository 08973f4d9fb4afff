import { expect, it } from 'vitest';
import { writeBatchSheet } from '#runs';
import { loadRunFile } from '../../../tests/support/run-files.js';
import { run as words } from '../words/en/run.js';
import { sheetCards } from './sheet-cards.js';
import { otherCautions, weighSections } from './weigh-sections.js';

const ALL = new Set(['fats', 'lye', 'batter'] as const);
const titled = (_: string, title: string): string => title;

function sheetOf(name: string) {
  const sheet = writeBatchSheet(loadRunFile('ok', name));
  if (!sheet.ok) throw new Error(JSON.stringify(sheet.issues));
  const { amounts, batches } = sheet.value.runs[0]!;
  return { batches, cards: sheetCards(amounts, batches) };
}

it.each(['plain-tiles', 'swirl-loaf', 'goat-milk-bars'])(
  'has all of each batch of %s: what is weighed for it adds up to it',
  (name) => {
    const { cards, batches } = sheetOf(name);
    const weighed = cards.flatMap((card) =>
      weighSections({ card, kinds: ALL }, words.sheet, titled).filter(
        ({ kind }) => kind !== 'base' && kind !== 'decor',
      ),
    );
    // What is taken off a batch for a portion was weighed before.
    const lines = weighed
      .flatMap((section) => section.lines)
      .filter(({ title }) => title !== words.sheet.ofBatter);
    const grams = lines.reduce((sum, { massG, carrier }) => sum + massG + (carrier?.massG ?? 0), 0);
    const coloured = cards.map((card) => {
      const batch = 'shared' in card ? card.shared : card.own;
      if (batch === undefined) return 0;
      const colours = batch.portions
        .flatMap(({ colourants, additions, fragrances }) => [
          ...colourants.map(({ massG, carrier }) => massG + (carrier?.massG ?? 0)),
          ...[...additions, ...fragrances].map(({ massG }) => massG),
        ])
        .reduce((sum, grams) => sum + grams, 0);
      const isSplit = batch.portions.length > 1;
      return isSplit || 'shared' in card
        ? batch.amounts.batchG + (isSplit ? colours : 0)
        : (card.part.batch?.batchG ?? 0);
    });
    expect(batches.length).toBeGreaterThan(0);
    expect(grams).toBeCloseTo(
      coloured.reduce((sum, each) => sum + each, 0),
      6,
    );
  },
);

it('tells no two lines of a section apart by their words alone', () => {
  for (const name of ['plain-tiles', 'swirl-loaf']) {
    for (const card of sheetOf(name).cards) {
      const sections = weighSections({ card, kinds: ALL }, words.sheet, titled);
      expect(new Set(sections.map(({ key }) => key)).size).toBe(sections.length);
      for (const { lines } of sections) expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
    }
  }
});

it('has the caution of lye with the lye and nowhere else', () => {
  const { cards } = sheetOf('plain-tiles');
  const isOfLye = ({ code }: { code: string }): boolean => code.startsWith('caution.lye');
  let found = 0;
  for (const card of cards) {
    for (const { kind, cautions } of weighSections({ card, kinds: ALL }, words.sheet, titled)) {
      expect(cautions.some(isOfLye)).toBe(kind === 'lye');
      if (kind === 'lye') found += 1;
    }
    expect(otherCautions({ card, kinds: ALL }).some(isOfLye)).toBe(false);
  }
  expect(found).toBeGreaterThan(1);
  // Fats alone burn nobody.
  expect(
    weighSections({ card: cards[0]!, kinds: new Set(['fats'] as const) }, words.sheet, titled).map(
      ({ kind }) => kind,
    ),
  ).toEqual(['fats']);
});
