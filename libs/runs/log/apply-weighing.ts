import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { expectedUse } from '../input/expected-use.js';
import type { LogPlace } from './effective-log.js';
import { unknownName } from '../input/name-issues.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { latestAttempt, type RunProgress } from './run-progress.js';
import { makingStage, type ResolvedRun } from '../input/resolve-run.js';

type WeighedEntry = Extract<LogEntry, { kind: 'weighed' }>;

/**
 * A weighing this many times above or below what was written is a slip of the keys or of the unit. A choice, no source:
 * no maker is off by that much, and a slip of a digit is.
 */
const IMPLAUSIBLE = 4;

/** Takes down a weighing that can be true: of a part that was poured or piped, of no more pieces, and of about its size. */
export function applyWeighing(
  run: ResolvedRun,
  progress: RunProgress,
  entry: WeighedEntry,
  { at, ref }: LogPlace,
): Issue[] {
  const part = run.parts.get(entry.part);
  const making = makingStage(run.design, entry.part);
  if (part === undefined || part.kind === 'decor' || making === undefined) {
    const weighable = run.design.parts.filter((p) => p.kind !== 'decor');
    return [unknownName(['part'], 'part', entry.part, weighable)];
  }
  const attempt = latestAttempt(progress, making.key);
  if (attempt?.status !== 'done') return [notMade(entry, part.title, making.title)];
  if (entry.pieces > attempt.count) return [tooMany(entry, attempt.count)];
  const around = useSurroundings(part, run);
  const expected = expectedUse(part, around).meanMl * around.densityGPerMl * entry.pieces;
  const plausible = entry.usedG <= expected * IMPLAUSIBLE && entry.usedG >= expected / IMPLAUSIBLE;
  if (plausible || entry.confirmed === true) {
    progress.weighed.push({ part: part.key, pieces: entry.pieces, usedG: entry.usedG, at, entry: ref });
    return [];
  }
  const { usedG, pieces } = entry;
  return [
    {
      code: 'log.weighing-implausible',
      path: ['usedG'],
      value: usedG,
      accepted: { kind: 'range', low: expected / IMPLAUSIBLE, high: expected * IMPLAUSIBLE, unit: 'g' },
      ...{ title: part.title, usedG, pieces, expectedG: expected },
    },
  ];
}

function notMade({ part }: WeighedEntry, title: string, stage: string): Issue {
  return { code: 'log.not-made', path: ['part'], value: part, ...{ title, stage } };
}

function tooMany({ pieces }: WeighedEntry, made: number): Issue {
  const accepted = { kind: 'range', low: 1, high: made, unit: 'pieces' } as const;
  return { code: 'log.more-than-made', path: ['pieces'], value: pieces, accepted, ...{ made, pieces } };
}
