import type { LogEntry } from '#contract';
import type { Issue } from '#units';
import { cavityMl } from './cavity-of-mould.js';
import { expectedUse } from './expected-use.js';
import { unknownName } from './name-issues.js';
import type { RunWorkings } from './workings.js';

/** A weighing this many times above or below what was written is a slip of the keys or of the unit. */
const IMPLAUSIBLE = 4;
/** Batter and melted base lie within a few per cent of it. */
const DENSITY = 1;

/** Whether a weighing can be true of the run: of a part that is poured or piped, and of about its size. */
export function checkWeighing(
  run: RunWorkings,
  entry: Extract<LogEntry, { kind: 'weighed' }>,
  path: (string | number)[],
): Issue[] {
  const part = run.parts.get(entry.part);
  if (part === undefined || part.kind === 'decor') {
    const weighable = run.design.parts.filter((p) => p.kind !== 'decor');
    return [unknownName([...path, 'part'], 'part', entry.part, weighable)];
  }
  const mould = part.kind === 'batch' && part.mould !== undefined ? run.moulds.get(part.mould) : undefined;
  const around = { densityGPerMl: DENSITY, cavityMl: mould === undefined ? undefined : cavityMl(mould) };
  const expected = expectedUse(part, around).meanMl * entry.pieces * DENSITY;
  if (entry.usedG <= expected * IMPLAUSIBLE && entry.usedG >= expected / IMPLAUSIBLE) return [];
  const accepted = `${(expected / IMPLAUSIBLE).toFixed(0)} to ${(expected * IMPLAUSIBLE).toFixed(0)} g`;
  return [
    {
      code: 'log.weighing-implausible',
      path: [...path, 'usedG'],
      message:
        `${String(entry.usedG)} g for ${String(entry.pieces)} pieces of “${part.title}” is far from the ` +
        `${expected.toFixed(0)} g they should take; accepted: ${accepted}.`,
      value: entry.usedG,
      accepted,
    },
  ];
}
