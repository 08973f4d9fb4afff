import { describe, expect, it } from 'vitest';
import { amountsCommand } from './amounts-command.js';
import { planCommand } from './plan-command.js';

/** Words that only English has. What the maker of the demo called things is English too, and is left out of what is read. */
const ENGLISH = /\b(the|of|with|is|are|and|this|your|for|at|by|from|until|after|any|no|not|that|makes)\b/i;
/** Titles of the demo stand in quotes, in the first column, or beside a middle dot. */
const DEMO_TITLE =
  /„[^“]*“|Mix and [a-z -]+|Press the shells|Patch holes and edges|Set the shells into the foam|Melt and drip the water drops|Turn the tiles|Stamp the backs|Rockpool tiles for the harbour market/g;

const german = ['rockpool-tiles', '--lang', 'de'];

describe('what is printed in German', () => {
  it.each([
    ['plan', () => planCommand([...german, '--remedies'])],
    ['batch sheet', () => amountsCommand(german)],
  ])('has no English in its %s but what the maker wrote', (name, printed) => {
    const lines = printed().stdout.split('\n');
    // Prices and what to gather have English headings still.
    const end = name === 'plan' ? lines.length : lines.findIndex((line) => line.startsWith('Cost of'));
    const read = lines.slice(0, end).join('\n').replace(DEMO_TITLE, '').split('\n');
    expect(read.length).toBeGreaterThan(30);
    expect(read.filter((line) => ENGLISH.test(line))).toEqual([]);
  });

  it('has no metric figure where US units are wanted', () => {
    const { stdout } = planCommand([...german, '--units', 'us', '--remedies']);
    expect(stdout).toMatch(/\d oz/);
    expect(stdout.match(/\d\s?(g|kg|ml|mL|mm|cm²?|°C)(?![a-z])/g)).toBeNull();
  });
});
