import type { Schemas } from '../api/client.js';

type Reading = Schemas['CureCurve']['readings'][number];

type Cure = Pick<Schemas['CureCurve'], 'readings' | 'curve'> & {
  readonly cure: Pick<Schemas['CureCurve']['cure'], 'readyDays'>;
};

export interface CureSpan {
  /** Days from the start of the cure, the first 0. */
  readonly days: readonly [number, number];
  /** Grams of one piece. */
  readonly grams: readonly [number, number];
}

/** Room above and below what is drawn, as a share of it. */
const MARGIN = 0.08;

/**
 * What the picture of a cure has to show: every weigh-in, the curve from the first weigh-in on, and the days on which it is
 * ready. Before the first weigh-in nothing was seen, and the curve there would squeeze the rest.
 * @param others further days to be in sight, such as today and the last day of the ready band, from the start of the cure
 */
export function cureSpan({ readings, curve, cure }: Cure, ...others: readonly number[]): CureSpan {
  const days = [...others, ...readings.map((each) => each.days), ...curve.map((point) => point.days)];
  const first = Math.min(...readings.map((each) => each.days));
  const drawn = curve.filter((point) => point.days >= first);
  const grams = [
    ...readings.filter((each) => isNear(each, readings)).map(({ pieceG }) => pieceG),
    ...drawn.flatMap(({ pieceG }) => [pieceG.low, pieceG.high]),
  ];
  const [low, high] = [Math.min(...grams), Math.max(...grams)];
  // A single weigh-in has no range of its own: one per cent shows that scales show no more.
  const margin = Math.max((high - low) * MARGIN, high * 0.005);
  return {
    days: [0, Math.max(...days, cure.readyDays?.high ?? 0, 1)],
    grams: [low - margin, high + margin],
  };
}

/** One that counts, or that the same picture can show: a slip of a digit would squeeze all others into a line. */
function isNear({ counts, pieceG }: Reading, readings: readonly Reading[]): boolean {
  const counted = readings.filter((each) => each.counts).map((each) => each.pieceG);
  if (counts || counted.length === 0) return true;
  return pieceG <= 2 * Math.max(...counted) && pieceG >= Math.min(...counted) / 2;
}

/** One point of the curve for each week, for the table: the nearest that there is. */
export function weekly<T extends { readonly days: number }>(curve: readonly T[]): T[] {
  const last = curve.at(-1)?.days ?? 0;
  const weeks = Array.from({ length: Math.floor(last / 7) + 1 }, (_, i) => i * 7);
  const nearest = weeks.flatMap((week) =>
    curve.length === 0
      ? []
      : [
          curve.reduce((best, point) =>
            Math.abs(point.days - week) < Math.abs(best.days - week) ? point : best,
          ),
        ],
  );
  return [...new Set(nearest)];
}
