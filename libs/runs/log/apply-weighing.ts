import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { expectedUse } from '../input/expected-use.js';
import type { LogPlace } from './standing-log.js';
import { unknownName } from '../input/name-issues.js';
import { useSurroundings } from '../input/piece-surroundings.js';
import { latestAttempt, type RunProgress } from './run-progress.js';
import { makingStage, type RunWorkings } from '../input/workings.js';

type WeighedEntry = Extract<LogEntry, { kind: 'weighed' }>;

/**
 * A weighing this many times above or below what was written is a slip of the keys or of the unit. A choice, no source:
 * no maker is off by that much, and a slip of a digit is.
 */
const IMPLAUSIBLE = 4;

/** Takes down a weighing that can be true: of a part that was poured or piped, of no more pieces, and of about its size. */
export function applyWeighing(
  run: RunWorkings,
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
  if (attempt?.status !== 'done') return [notMade(entry, making.title)];
  if (entry.pieces > attempt.count) return [tooMany(entry, attempt.count)];
  const around = useSurroundings(part, run);
  const expected = expectedUse(part, around).meanMl * around.densityGPerMl * entry.pieces;
  const plausible = entry.usedG <= expected * IMPLAUSIBLE && entry.usedG >= expected / IMPLAUSIBLE;
  if (plausible || entry.confirmed === true) {
    progress.weighed.push({ part: part.key, pieces: entry.pieces, usedG: entry.usedG, at, entry: ref });
    return [];
  }
  const accepted = `${grams(expected / IMPLAUSIBLE)} to ${grams(expected * IMPLAUSIBLE)} g, or confirmed: true`;
  const message =
    `${String(entry.usedG)} g for ${String(entry.pieces)} of “${part.title}” is far from the ` +
    `${grams(expected)} g they should take; accepted: ${accepted}.`;
  return [{ code: 'log.weighing-implausible', path: ['usedG'], message, value: entry.usedG, accepted }];
}

function notMade({ part }: WeighedEntry, stage: string): Issue {
  const accepted = `“${stage}” logged as done first`;
  const message = `“${part}” is not made yet in this log, so no piece has taken any of it; accepted: ${accepted}.`;
  return { code: 'log.not-made', path: ['part'], message, value: part, accepted };
}

function tooMany({ pieces }: WeighedEntry, made: number): Issue {
  const accepted = `1 to ${String(made)} pieces`;
  const message = `It was made for ${String(made)} pieces, not ${String(pieces)}; accepted: ${accepted}.`;
  return { code: 'log.more-than-made', path: ['pieces'], message, value: pieces, accepted };
}

function grams(value: number): string {
  return String(Number(value.toPrecision(3)));
}
