import type { StockEntry } from '#contract';
import type { Issue } from '#units';

/** One line of the stock ledger. */
export interface StockEntryLine {
  /** What later entries call it by; absent: its place, `#1` for the first. */
  readonly id?: string | undefined;
  readonly entry: StockEntry;
}

/** A line that stands, with what it is called and its place in the ledger. */
export interface EffectiveStockLine {
  readonly ref: string;
  readonly entry: Exclude<StockEntry, { kind: 'take-back' }>;
  readonly place: number;
}

/**
 * The lines of a ledger that stand: those taken back, and those that take back, are left out.
 * @param lines in the order in which they were written
 * @returns the lines, and issues for entries that name what is not there, or use more of a leftover than is left; paths from
 * the ledger's root
 */
export function effectiveLedger(lines: readonly StockEntryLine[]): {
  readonly effective: EffectiveStockLine[];
  readonly issues: Issue[];
} {
  const issues: Issue[] = [];
  const effective = new Map<string, EffectiveStockLine>();
  lines.forEach(({ id, entry }, place) => {
    const ref = id ?? `#${String(place + 1)}`;
    if (entry.kind !== 'take-back') {
      effective.set(ref, { ref, entry, place });
      return;
    }
    if (!effective.delete(entry.entry)) {
      issues.push({ code: 'stock.unknown-entry', path: [place, 'entry', 'entry'], value: entry.entry });
    }
  });
  const standing = [...effective.values()];
  return { effective: standing, issues: [...issues, ...overdrawn(standing)] };
}

/** A leftover of which more is used than was kept, or that was never kept. */
function overdrawn(lines: readonly EffectiveStockLine[]): Issue[] {
  const left = new Map<string, { title: string; massG: number }>();
  for (const { ref, entry } of lines) {
    if (entry.kind === 'leftover-kept') left.set(ref, { title: entry.title, massG: entry.massG });
  }
  return lines.flatMap(({ entry, place }): Issue[] => {
    if (entry.kind !== 'leftover-used' && entry.kind !== 'leftover-written-off') return [];
    const from = left.get(entry.leftover);
    if (from === undefined) {
      return [{ code: 'stock.unknown-entry', path: [place, 'entry', 'leftover'], value: entry.leftover }];
    }
    const leftG = from.massG;
    from.massG -= entry.massG;
    // Tenths of a gram that were summed in binary are not to be refused.
    if (from.massG >= -1e-6) return [];
    const { title } = from;
    const accepted = { kind: 'range', low: 0, high: leftG, unit: 'g' } as const;
    const path = [place, 'entry', 'massG'];
    return [{ code: 'stock.leftover-short', path, value: entry.massG, accepted, title, leftG }];
  });
}
