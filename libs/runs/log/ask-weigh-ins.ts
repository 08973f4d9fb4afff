import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { expectedUse } from '../input/expected-use.js';
import type { LogLine } from '../input/input.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import type { ResolvedRun } from '../input/resolve-run.js';
import { effectiveLog } from './effective-log.js';

/**
 * So many times above or below its forecast a weigh-in is more likely a slip of the keys than a piece. A choice, no source:
 * a slip of a digit is ten times off, and curing takes away a third at most.
 */
const DOUBTFUL = 5;

type WeighIn = Extract<LogEntry, { kind: 'weigh-in' }>;

/**
 * Weigh-ins of a run that are hard to believe and not confirmed: by what the pieces weighed the last time, or by the
 * design where they were never weighed. Asked when an entry is made or a file is read; what stands in a log already is
 * not asked about again.
 * @param lines of this run only
 * @returns issues with paths from the log's root: place of the line, then the field
 */
export function askWeighIns(run: ResolvedRun, lines: readonly LogLine[]): Issue[] {
  let forecast = pieceGrams(run);
  return effectiveLog(lines).effective.flatMap(({ entry, place }) => {
    if (entry.kind !== 'weigh-in') return [];
    const question = entry.confirmed === true ? undefined : doubt(entry, forecast, place);
    if (question !== undefined) return [question];
    forecast = entry.massG / entry.pieces;
    return [];
  });
}

function doubt({ massG, pieces }: WeighIn, perPiece: number, place: number): Issue | undefined {
  const forecast = perPiece * pieces;
  if (!(forecast > 0) || (massG < forecast * DOUBTFUL && massG > forecast / DOUBTFUL)) return undefined;
  return {
    code: 'log.weigh-in-doubtful',
    path: [place, 'massG'],
    value: massG,
    accepted: { kind: 'range', low: forecast / DOUBTFUL, high: forecast * DOUBTFUL, unit: 'g' },
    ...{ massG, pieces, expectedEachG: perPiece },
  };
}

/** A fresh piece by its design, without what is bought by the piece and has no mass given. */
function pieceGrams(run: ResolvedRun): number {
  return run.design.parts.reduce((sum, part) => {
    if (part.kind === 'decor') return sum + part.perPiece * (part.eachG ?? 0);
    const around = useSurroundings(part, run);
    return sum + expectedUse(part, around).meanMl * around.densityGPerMl;
  }, 0);
}
