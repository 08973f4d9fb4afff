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
      /** Cautions that stand with its batch. */
      readonly told: BatchToMix['cautions'];
    };

/** Parts in their order, each shared batch before the first part that comes from it. */
export function sheetCards(parts: readonly PartAmounts[], batches: readonly BatchToMix[]): SheetCard[] {
  const seen = new Set<BatchToMix>();
  return parts.flatMap((part): SheetCard[] => {
    const batch = batches.find((each) => each.parts.includes(part.part));
    const { cautions: told = [] } = batch ?? {};
    if (batch === undefined || batch.parts.length === 1) {
      return [{ part, own: batch, from: undefined, told }];
    }
    const first = seen.has(batch) ? [] : [{ shared: batch }];
    seen.add(batch);
    return [...first, { part, own: undefined, from: batch.title, told }];
  });
}
