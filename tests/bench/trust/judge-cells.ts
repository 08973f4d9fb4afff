import { median } from '../../support/figure.js';
import { normalQuantile, studentQuantile } from '#units';
import type { Well } from './oracle.js';
import type { Judged } from './simulated-maker.js';

/** Makers of one pace and spread, after so many runs. */
export interface Cell {
  readonly name: string;
  readonly seen: readonly Judged[];
}

/** What a value of a cell has to lie within. */
export interface Bar {
  readonly least: number;
  readonly most: number;
}

/**
 * - `holds`: within the bar.
 * - `out of reach`: who knows all but the pace misses this side of the bar as well, so looks at such times cannot tell what it would take.
 * - `spread unknown`: who must learn the spread from batch to batch misses it.
 * - `maybe luck`: outside, but the interval of 99 % reaches the bar.
 * - `short`: outside for sure, and neither oracle is.
 */
export type Verdict = 'holds' | 'maybe luck' | 'out of reach' | 'spread unknown' | 'short';

/** A mean or a middle of makers, with an interval of 99 %, as dozens of cells are asked at once. */
export interface Estimate {
  readonly value: number;
  readonly from: number;
  readonly to: number;
  /** Who knows the spread, and who must learn it. */
  readonly oracles: readonly [number, number];
  readonly verdict: Verdict;
}

export interface JudgedCell {
  readonly name: string;
  readonly makers: number;
  readonly coverage: Estimate;
  readonly ratio: Estimate;
  /** Middle of high over low. */
  readonly width: number;
  readonly oracleWidths: readonly [number, number];
}

/** A cell is judged by makers whose logs tell of soap, if there are at least so many of them: of a third the mean is luck. */
const TOLD_AT_LEAST = 0.5;
const SURE = 0.995;

/** @returns undefined where too few logs tell of soap */
export function judgeCell({ name, seen }: Cell, coverageBar: Bar, ratioBar: Bar): JudgedCell | undefined {
  const told = seen.filter(({ isTold }) => isTold);
  if (told.length < TOLD_AT_LEAST * seen.length || told.length === 0) return undefined;
  const both = <T>(of: (well: Well) => T): [T[], T[]] => [
    told.map(({ oracle }) => of(oracle)),
    told.map(({ oracleOfBoth }) => of(oracleOfBoth)),
  ];
  const [[known, learned], [knownRatio, learnedRatio], [knownWidth, learnedWidth]] = [
    both(({ coverage }) => coverage),
    both(({ ratio }) => ratio),
    both(({ width }) => width),
  ];
  return {
    ...{ name, makers: told.length },
    coverage: judged(
      meanOf(told.map(({ coverage }) => coverage)),
      [meanOf(known).value, meanOf(learned).value],
      coverageBar,
    ),
    ratio: judged(
      middleOf(told.map(({ ratio }) => ratio)),
      [median(knownRatio), median(learnedRatio)],
      ratioBar,
    ),
    width: median(told.map(({ width }) => width)),
    oracleWidths: [median(knownWidth), median(learnedWidth)],
  };
}

type Interval = Pick<Estimate, 'value' | 'from' | 'to'>;

function judged(of: Interval, oracles: Estimate['oracles'], bar: Bar): Estimate {
  return { ...of, oracles, verdict: verdictOf(of, oracles, bar) };
}

function verdictOf(
  { value, from, to }: Interval,
  [known, learned]: Estimate['oracles'],
  { least, most }: Bar,
): Verdict {
  if (value >= least && value <= most) return 'holds';
  const misses = (oracle: number): boolean => (value < least ? oracle < least : oracle > most);
  if (misses(known)) return 'out of reach';
  if (misses(learned)) return 'spread unknown';
  return (value < least ? to >= least : from <= most) ? 'maybe luck' : 'short';
}

/** By Student's t. */
function meanOf(values: readonly number[]): Interval {
  const n = values.length;
  const value = values.reduce((sum, each) => sum + each, 0) / n;
  if (n < 2) return { value, from: -Infinity, to: Infinity };
  const variance = values.reduce((sum, each) => sum + (each - value) ** 2, 0) / (n - 1);
  const half = studentQuantile(SURE, n - 1) * Math.sqrt(variance / n);
  return { value, from: value - half, to: value + half };
}

/** By ranks: how many of so many makers lie below the true middle is binomial, taken for normal. */
function middleOf(values: readonly number[]): Interval {
  const sorted = values.toSorted((a, b) => a - b);
  const n = sorted.length;
  const off = (normalQuantile(SURE) * Math.sqrt(n)) / 2;
  return {
    value: median(values),
    from: sorted[Math.floor(n / 2 - off) - 1] ?? -Infinity,
    to: sorted[Math.ceil(n / 2 + off)] ?? Infinity,
  };
}
