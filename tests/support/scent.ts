import type { Fragrance } from '#chemistry';

/** A fragrance that a test need not say all about: it does nothing to the batter. */
export function scent(over: Partial<Fragrance> & Pick<Fragrance, 'percent'>): Fragrance {
  return { key: 'sea', title: 'Sea air', behaviour: 'none', ...over };
}
