import type { BatchToMix, PartAmounts } from './use-sheet.js';

/** What stands by itself on a batch sheet: a batch that several parts come from, or a part. */
export type SheetCard =
  | { readonly shared: BatchToMix }
  | {
      readonly part: PartAmounts;
      /** What it is poured from, where that is for this part alone. */
      readonly own: BatchToMix | undefined;
      /** What the batch is called that it shares with other parts. */
      readonly from: string | undefined;
    };

/** Parts in their order, each shared batch before the first part that comes from it. */
export function sheetCards(parts: readonly PartAmounts[], batches: readonly BatchToMix[]): SheetCard[] {
  const told = new Set<BatchToMix>();
  return parts.flatMap((part): SheetCard[] => {
    const batch = batches.find((each) => each.parts.includes(part.part));
    if (batch === undefined || batch.parts.length === 1) return [{ part, own: batch, from: undefined }];
    const first = told.has(batch) ? [] : [{ shared: batch }];
    told.add(batch);
    return [...first, { part, own: undefined, from: batch.title }];
  });
}
