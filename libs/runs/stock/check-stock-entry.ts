import type { StockEntry, WorkshopFacts } from '#contract';
import type { Issue } from '#units';
import { effectiveLedger, type StockEntryLine } from './effective-ledger.js';

/**
 * Whether a new entry can be true of a ledger: what it names is there, of a leftover no more is used than is left, a material
 * is told in the unit in which it is kept, and no later entry needs one that is taken back.
 * @returns issues with paths from the entry's root; none when it may be appended
 */
export function checkStockEntry(
  lines: readonly StockEntryLine[],
  entry: StockEntry,
  { materials }: Pick<WorkshopFacts, 'materials'>,
): Issue[] {
  const had = new Set(effectiveLedger(lines).issues.map((issue) => JSON.stringify(issue)));
  const told = effectiveLedger([...lines, { entry }]).issues.filter(
    (issue) => !had.has(JSON.stringify(issue)),
  );
  const issues = told.map((issue): Issue => {
    const [place, , ...rest] = issue.path;
    return place === lines.length
      ? { ...issue, path: rest }
      : { code: 'stock.needed-later', path: ['entry'] };
  });
  return [...issues.slice(0, 1), ...otherUnit(entry, materials)];
}

function otherUnit(entry: StockEntry, materials: WorkshopFacts['materials']): Issue[] {
  if (!('unit' in entry)) return [];
  const known = materials.find(({ key }) => key === entry.material);
  if (known === undefined || known.unit === entry.unit) return [];
  const { unit, title = known.key } = known;
  const accepted = { kind: 'one-of', values: [unit] } as const;
  return [{ code: 'stock.other-unit', path: ['unit'], value: entry.unit, accepted, title, unit }];
}
