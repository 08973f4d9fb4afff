/** A stage's flag before it is placed, in pixels. */
export interface Flag {
  /** Where its pole stands. */
  readonly x: number;
  /** From the left of its number to the end of its name. */
  readonly width: number;
}

export interface PlacedFlag {
  /** How high it hangs: 0 is the lowest. */
  readonly level: number;
  /** Its name stands on the left of the pole, as there is no room on the right. */
  readonly isLeft: boolean;
}

/** From the pole to the end of its number on the other side. */
export const FLAG_HALF = 13;

/**
 * Hangs flags on their poles so high that none lies over another, as low as is possible and the later ones lower. No pole crosses
 * a name, but for those of flags that hang to the left.
 * @param flags in order of time
 * @param end pixels from the left where the picture ends; flags that would not fit before it hang to the left where they can
 * @returns one for each flag
 */
export function hang(flags: readonly Flag[], end: number): PlacedFlag[] {
  const placed: Hung[] = [];
  for (const { x, width } of flags.toReversed()) {
    const name = width - FLAG_HALF;
    const isLeft = x + name > end && x >= name;
    const span = isLeft
      ? { x, from: x - name, to: x + FLAG_HALF, isLeft }
      : { x, from: x - FLAG_HALF, to: x + name, isLeft };
    const levels = Array.from({ length: placed.length + 1 }, (_, level) => ({ ...span, level }));
    const free = levels.filter((at) => placed.every((other) => !areOver(at, other)));
    // The highest level of all is always free.
    placed.push(free.find((at) => placed.every((other) => !isCrossed(at, other))) ?? free[0]!);
  }
  return placed.toReversed().map(({ level, isLeft }) => ({ level, isLeft }));
}

/** A flag that hangs, and the pixels that it takes. */
interface Hung extends PlacedFlag {
  readonly x: number;
  readonly from: number;
  readonly to: number;
}

function areOver(a: Hung, b: Hung): boolean {
  return a.level === b.level && a.from < b.to && b.from < a.to;
}

/** Whether the pole of the higher one goes through the name of the lower. */
function isCrossed(a: Hung, b: Hung): boolean {
  if (a.level === b.level) return false;
  const [low, { x }] = a.level < b.level ? [a, b] : [b, a];
  return low.isLeft ? x > low.from && x < low.x - FLAG_HALF : x > low.x + FLAG_HALF && x < low.to;
}
