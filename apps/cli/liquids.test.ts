import { describe, expect, it } from 'vitest';
import type { AmountsDocument } from '#contract';
import { amountsCommand } from './amounts-command.js';
import { planCommand } from './plan-command.js';

const FILE = 'tests/fixtures/ok/goat-milk-bars.yaml';

function batchOf() {
  const { stdout, status } = amountsCommand([FILE, '--json']);
  expect(status).toBe(0);
  const [batch] = (JSON.parse(stdout) as AmountsDocument).runs[0]?.batches ?? [];
  if (batch === undefined) throw new Error('no batch');
  return batch;
}

/**
 * By hand, with rounds in place of the code's equation: begin with the lye that the fats ask for, share its water out among milk
 * and plain water, add lye for the milk's acid, and go round until nothing changes. Figures: saponification values of the
 * shipped oils at the middle of their ranges, 190 and 256.5 mg/g, milk of 87.03 % of water and 0.16 % of lactic acid, coconut milk of 72.88 % of water.
 */
describe('bars with goat’s milk in the lye and coconut milk in the batter', () => {
  const { amounts } = batchOf();

  it('are weighed as by hand', () => {
    const forFats = (700 * 0.19 + 300 * 0.2565) * (39.997 / 56.105) * 0.95;
    let [naoh, milk] = [forFats, 0];
    for (let round = 0; round < 60; round += 1) {
      const water = naoh / 0.3 - naoh / 0.98;
      const plain = water - milk * 0.8703 - 60 * 0.7288;
      // Half of all liquid is goat's milk: as much as plain water and coconut milk together.
      milk = (milk + plain + 60) / 2;
      naoh = forFats + ((milk * 0.0016) / 90.078) * 39.997;
    }
    const water = naoh / 0.3 - naoh / 0.98;
    const byKey = new Map(amounts.liquids?.map(({ key, massG }) => [key, massG]));
    expect(byKey.get('goat-milk')).toBeCloseTo(milk, 1);
    expect(byKey.get('coconut-milk')).toBeCloseTo(60, 9);
    expect(amounts.naohG).toBeCloseTo(naoh / 0.98, 1);
    expect(amounts.waterG).toBeCloseTo(water - milk * 0.8703 - 60 * 0.7288, 1);
    // 4.14 % of fat in the one, 21.33 % in the other.
    expect(amounts.liquids?.map(({ fatG }) => fatG)).toEqual([
      expect.closeTo(milk * 0.0414, 1),
      expect.closeTo(12.798, 3),
    ]);
    // Milk fat takes 225 mg of KOH/g and coconut 256.5, the oils together 209.95: their superfat is the lye's 5 % and this.
    const besides = (milk * 0.0414 * 225 + 12.798 * 256.5) / 209.95 / 1000;
    expect(amounts.superfat.used).toBeCloseTo((100 * (0.05 + besides)) / (1 + besides), 1);
  });

  it('have all of it in the batch, the cautions and the list of things to gather', () => {
    const parts = [
      ...amounts.fats.map(({ massG }) => massG),
      ...(amounts.liquids ?? []).map(({ massG }) => massG),
      amounts.naohG,
      amounts.waterG,
    ];
    expect(parts.reduce((sum, each) => sum + each, 0)).toBeCloseTo(amounts.batchG, 9);
    expect(batchOf().cautions).toContainEqual(
      expect.objectContaining({ code: 'caution.allergens', allergens: ['milk'] }),
    );
    expect(amounts.liquids?.map(({ inci }) => inci)).toEqual(['Caprae Lac', 'Cocos Nucifera Fruit Extract']);
    const { gather } = JSON.parse(amountsCommand([FILE, '--json']).stdout) as AmountsDocument;
    const milk = gather.lines.find(({ key }) => key === 'goat-milk');
    expect(milk).toMatchObject({ kind: 'liquid', onHand: 50, price: 3.2 });
    expect(milk?.needed).toBeCloseTo(amounts.liquids?.[0]?.massG ?? NaN, 9);
    const water = gather.lines.find(({ key }) => key === 'water');
    expect(water?.needed).toBeCloseTo(amounts.waterG, 9);
  });

  it('say what to weigh into the lye and what into the batter, in both languages', () => {
    const english = amountsCommand([FILE]).stdout;
    expect(english).toMatch(/Lye: NaOH [\d.]+ g into water [\d.]+ g and Goat’s milk [\d.]+ g\./);
    expect(english).toMatch(/Into the batter: Coconut milk, canned 60 g\./);
    expect(english).toMatch(/! Goat’s milk: with lye it heats up[^!]+Freeze it in cubes/);
    expect(english).toContain('Holds milk.');
    const german = amountsCommand([FILE, '--lang', 'de']).stdout;
    expect(german).toMatch(/Lauge: NaOH [\d,]+ g in [\d,]+ g Wasser und Ziegenmilch [\d,]+ g\./);
    expect(german).toMatch(/In den Leim: Kokosmilch aus der Dose 60 g\./);
    expect(german).toContain('Enthält Milch.');
  });

  it('have a plan with the same amounts', () => {
    const { stdout, status } = planCommand([FILE]);
    expect(status).toBe(0);
    expect(stdout).toContain(`Goat’s milk ${(amounts.liquids?.[0]?.massG ?? NaN).toFixed(1)} g`);
  });
});
