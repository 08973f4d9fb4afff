import { describe, expect, it } from 'vitest';
import type { Risk } from '#contract';
import { textsFor } from '#words';
import { wordsOf } from '#words/all';
import { amountsCommand } from './amounts-command.js';
import { RiskPrinter } from './print-risks.js';

const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('risks of several parts', () => {
  it('are told once, at the first, with the names of all', () => {
    const told = flat(amountsCommand(['orchard-loaves']).stdout);
    expect(told.match(/It may gel wholly/g)).toHaveLength(1);
    expect(told).toContain('! “Bark layer”, “Leaf layer” and “Blossom layer”: It may gel wholly (');
    expect(told).not.toContain('As for');
  });

  it('name no part where one alone has them, and repeat what does harm at each', () => {
    const texts = textsFor({ language: 'en', units: 'metric', timeZone: 'UTC' }, wordsOf.en);
    const excess: Risk = { code: 'lye.excess', level: 'high', percent: 3 };
    const sweats: Risk = { code: 'soap.sweats', level: 'low', humidityPercent: 80 };
    const [one, two] = [
      { title: '“One”', risks: [excess] },
      { title: '“Two”', risks: [sweats, excess] },
    ] as const;
    const printer = new RiskPrinter([one, two], texts);
    const [ofOne, ofTwo] = [printer.lines(one, 'high'), printer.lines(two, 'high')].map((lines) =>
      flat(lines.join(' ')).trim(),
    );
    expect(ofOne).toMatch(/^! “One” and “Two”: This batter holds 3% more lye .* Salt it out/);
    expect(ofTwo).toMatch(/^! This batter holds 3% more lye .* burns skin and eyes\.$/);
    expect(flat(printer.lines(two, 'other').join(' ')).trim()).toMatch(/^! The soap may sweat/);
    expect(printer.lines(one, 'other')).toEqual([]);
  });
});
