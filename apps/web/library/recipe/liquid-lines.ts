import type { Schemas } from '../../api/client.js';
import { valueAt, type Value } from '../../form/values.js';

/** What a liquid that is told the other way begins with: common amounts, for the maker to change. */
const BEGINS = { percent: 50, grams: 100 } as const;

/** A line of a liquid with its amount told as a share of all liquid, or as a weight; the other way goes. */
export function turnedTo(line: Value, sort: 'percent' | 'grams'): Value {
  if (typeof line !== 'object' || line === null || Array.isArray(line)) return line;
  const { percentOfLiquid: _share, grams: _weight, ...rest } = line as Readonly<Record<string, Value>>;
  if (sort === 'grams') return { ...rest, grams: valueAt(line, ['grams']) ?? BEGINS.grams };
  return { ...rest, percentOfLiquid: valueAt(line, ['percentOfLiquid']) ?? BEGINS.percent };
}

/** Lines of liquids that a pasted text names, each in the lye until the maker says otherwise. */
export function linesOf(poured: readonly { readonly liquid: string; readonly grams: number }[]): Value {
  return poured.map(({ liquid, grams }) => ({ liquid, grams, addedTo: 'lye' }));
}

/**
 * Lines whose weights stood beside fats in weights, as shares of all liquid: those of the batch as it was worked out last, to a
 * tenth; half of it where none was.
 */
export function inShares(
  lines: readonly Value[],
  batch: Pick<Schemas['BatchAmounts'], 'liquids' | 'waterG'> | undefined,
): readonly Value[] {
  const masses = (batch?.liquids ?? []).map(({ massG }) => massG);
  const all = masses.reduce((sum, massG) => sum + massG, batch?.waterG ?? 0);
  return lines.map((line, i) => {
    const turned = turnedTo(line, 'percent');
    const mass = masses[i];
    if (valueAt(line, ['grams']) === undefined || mass === undefined || !(all > 0)) return turned;
    return { ...(turned as object), percentOfLiquid: Math.round((1000 * mass) / all) / 10 };
  });
}
