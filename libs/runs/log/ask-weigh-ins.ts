import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import type { LogLine } from '../input/input.js';
import { DOUBTFUL_TIMES, pieceGrams } from '../input/piece-grams.js';
import type { ResolvedRun } from '../input/resolve-run.js';
import { effectiveLog } from './effective-log.js';

type WeighIn = Extract<LogEntry, { kind: 'weigh-in' }>;

/**
 * Weigh-ins of a run that are hard to believe and not confirmed: far from the design and from all that was weighed
 * before. Asked when an entry is made or a file is read; what stands in a log already is
 * not asked about again.
 * @param lines of this run only
 * @returns issues with paths from the log's root: place of the line, then the field
 */
export function askWeighIns(run: ResolvedRun, lines: readonly LogLine[]): Issue[] {
  const known = [pieceGrams(run)].filter((grams) => grams > 0);
  return effectiveLog(lines).effective.flatMap(({ entry, place }) => {
    if (entry.kind !== 'weigh-in') return [];
    const each = entry.massG / entry.pieces;
    if (entry.confirmed !== true && isDoubtful(each, known))
      return [doubt(entry, known.at(-1) ?? each, place)];
    known.push(each);
    return [];
  });
}

/** A reading that fits any mass known so far is no slip: where two contradict each other, the first may have been one. */
function isDoubtful(each: number, known: readonly number[]): boolean {
  return (
    known.length > 0 &&
    known.every((grams) => each >= grams * DOUBTFUL_TIMES || each <= grams / DOUBTFUL_TIMES)
  );
}

function doubt({ massG, pieces }: WeighIn, expectedEachG: number, place: number): Issue {
  const forecast = expectedEachG * pieces;
  return {
    code: 'log.weigh-in-doubtful',
    path: [place, 'massG'],
    value: massG,
    accepted: { kind: 'range', low: forecast / DOUBTFUL_TIMES, high: forecast * DOUBTFUL_TIMES, unit: 'g' },
    ...{ massG, pieces, expectedEachG },
  };
}
