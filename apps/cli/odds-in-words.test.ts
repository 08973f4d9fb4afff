import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { PlanDocument } from '#contract';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import { printPlan } from './print-plan.js';

const place = { units: 'metric', timeZone: 'Europe/Berlin' } as const;
const texts = {
  en: textsFor({ language: 'en', ...place }, wordsOf.en),
  de: textsFor({ language: 'de', ...place }, wordsOf.de),
};
const said = {
  en: { byTheDay: /by the day/, may: /may break/, hours: /hours/, number: /\d+ in (10|100)\b/g },
  de: {
    byTheDay: /bis zum Tag/,
    may: /vielleicht nicht auf/,
    hours: /Zeiten/,
    number: /\d+ von (10|100)\b/g,
  },
};

/** Three figures of which each is at most the one before, and whether the order holds in the bands. */
const anyFigures = fc.record({
  figures: fc
    .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.nat(3), fc.nat(3))
    .map(([atAll, late, plain]) => {
      const byTheDay = late === 0 ? atAll : atAll * (1 - late / 4);
      return { soundAtAll: atAll, soundByTheDay: byTheDay, asPlanned: byTheDay * (1 - plain / 4) };
    }),
  holds: fc.boolean(),
});

function planWith({
  figures,
  holds,
}: typeof anyFigures extends fc.Arbitrary<infer T> ? T : never): PlanDocument {
  return {
    ...{ schema: 'benchtide.plan/4', madeAt: '2026-11-27T12:00:00.000Z', timeZone: 'Europe/Berlin' },
    ...{ status: 'planned', runs: [], sittings: [], weakLinks: [], conflict: [] },
    odds: { ...figures, standardError: 0.01, scenarios: 2000, seed: 1 },
    guarantee: { holds, bandPercent: 80, reasons: [] },
  };
}

/**
 * A guarantee is stricter than odds and knows no hours. So what it does not promise may still go well, at any odds, and what it
 * does may fail for lack of hours; neither is said flatly beside odds that say otherwise.
 */
it.each(['en', 'de'] as const)('odds and guarantee do not contradict each other: %s', (language) => {
  const { byTheDay, may, hours, number } = said[language];
  const seen = { late: 0, may: 0, sure: 0 };
  fc.assert(
    fc.property(anyFigures, (made) => {
      const text = printPlan(planWith(made), texts[language]).replaceAll(/\s+/g, ' ');
      const isLate = made.figures.soundAtAll > made.figures.soundByTheDay;
      expect(byTheDay.test(text)).toBe(isLate);
      expect(may.test(text)).toBe(!made.holds);
      expect(text).toMatch(hours);
      // In tens or hundreds, and never none or all.
      expect(text.match(number)).toHaveLength(isLate ? 3 : 2);
      expect(text).not.toMatch(/\b(0|100) (in|von) 100|\b(0|10) (in|von) 10\b|1000|\d[.,]\d ?%/);
      if (isLate) seen.late++;
      if (made.holds) seen.sure++;
      else seen.may++;
    }),
    { numRuns: 300, seed: 5 },
  );
  expect(Math.min(...Object.values(seen))).toBeGreaterThan(50);
});
