import fc from 'fast-check';
import { expect, it } from 'vitest';
import { allPages } from './all-pages.js';

it('puts the pages of a list together, whatever its length, and asks for none in vain but one after a full page', async () => {
  await fc.assert(
    fc.asyncProperty(fc.nat(20), fc.integer({ min: 1, max: 7 }), async (length, size) => {
      const rows = Array.from({ length }, (_, i) => ({ id: String(i).padStart(2, '0') }));
      let asked = 0;
      const found = await allPages(size, async (before) => {
        asked += 1;
        return rows.filter(({ id }) => before === undefined || id < before).slice(-size);
      });
      expect(found).toEqual(rows);
      expect(asked).toBe(Math.floor(length / size) + 1);
    }),
  );
});
