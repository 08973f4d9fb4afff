/** What was ticked of one batch or part: grams of each line as they stood when it was ticked. */
export type Ticks = Readonly<Record<string, number>>;

/** By batch, with when it was ticked at last, in milliseconds since 1970. */
export type Weighed = Readonly<Record<string, { readonly at: number; readonly ticks: Ticks }>>;

/** More than anybody has in work; the oldest are forgotten. */
const MOST_BATCHES = 60;

/** How a line stands: `changed` once its amount is another than the one that was ticked. */
export function tickOf(ticks: Ticks, line: string, massG: number): 'open' | 'ticked' | 'changed' {
  const ticked = ticks[line];
  if (ticked === undefined) return 'open';
  // No scales show a difference that is smaller.
  return Math.abs(ticked - massG) < 0.05 ? 'ticked' : 'changed';
}

/** What is kept, so that it does not grow for ever. */
export function latest(all: Weighed): Weighed {
  const newest = Object.entries(all).toSorted(([, a], [, b]) => b.at - a.at);
  return Object.fromEntries(newest.slice(0, MOST_BATCHES));
}

/** Whatever stands in the store: what makes no sense there is left out. */
export function readWeighed(kept: unknown): Weighed {
  if (typeof kept !== 'object' || kept === null) return {};
  return Object.fromEntries(
    Object.entries(kept as Record<string, unknown>).flatMap(([batch, value]) => {
      const { at, ticks } = (value ?? {}) as { at?: unknown; ticks?: unknown };
      if (typeof at !== 'number' || typeof ticks !== 'object' || ticks === null) return [];
      const sound = Object.entries(ticks).filter(([, grams]) => typeof grams === 'number');
      return [[batch, { at, ticks: Object.fromEntries(sound) as Ticks }]];
    }),
  );
}
