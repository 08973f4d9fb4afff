/** One measured value and what it has to reach. */
export interface Figure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** The value to stay at or below (`lower`), or to reach (`higher`); null when it is only watched. */
  readonly bar: number | null;
  readonly better: 'lower' | 'higher';
}

/** The middle one when sorted, or the mean of the middle two. @throws RangeError when there is none */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length / 2)];
  const lower = sorted[Math.ceil(sorted.length / 2) - 1];
  if (upper === undefined || lower === undefined) throw new RangeError('no values have no median');
  return (lower + upper) / 2;
}

export function atLeast(name: string, value: number, bar: number): Figure {
  return { name, value, unit: '', bar, better: 'higher' };
}

export function atMost(name: string, value: number, unit: string, bar: number): Figure {
  return { name, value, unit, bar, better: 'lower' };
}

/** Without a bar. */
export function watched(name: string, value: number, unit: string, better: Figure['better']): Figure {
  return { name, value, unit, bar: null, better };
}
