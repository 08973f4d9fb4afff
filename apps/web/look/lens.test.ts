import { describe, expect, it } from 'vitest';
import { lensPath } from './lens.js';

describe('a lens', () => {
  it('is closed, thin at both ends and full where it is likely', () => {
    const numbers = lensPath(10, 20, 50, 30, 8).match(/-?[\d.]+,-?[\d.]+/g) ?? [];
    expect(numbers[0]).toBe('10,30');
    expect(numbers.at(-1)).toBe('10,30');
    for (const point of ['20,22', '50,30', '20,38']) expect(numbers).toContain(point);
  });
});
