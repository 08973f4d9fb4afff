import type { BatchAmounts, GatherLine, MaterialKind, PartAmounts } from '#contract';

/** One material and how much of it something takes. */
export interface MaterialUse {
  readonly key: string;
  readonly title: string;
  readonly kind: MaterialKind;
  readonly unit: GatherLine['unit'];
  readonly amount: number;
}

/** What the parts of a run are made from, one entry per material, in the order of a bench: fats, lye, water, the rest. */
export function materialsOf(amounts: readonly PartAmounts[]): MaterialUse[] {
  return summed(amounts.flatMap(ofPart));
}

/** The same materials from several lists as one. What has another title or kind is another thing, whatever its key. */
export function summed(uses: readonly MaterialUse[]): MaterialUse[] {
  const byName = new Map<string, MaterialUse>();
  for (const use of uses) {
    if (use.amount === 0) continue;
    const name = `${use.unit} ${use.kind} ${use.key} ${namedByMaker.has(use.kind) ? use.title : ''}`;
    const before = byName.get(name);
    byName.set(name, before === undefined ? use : { ...before, amount: before.amount + use.amount });
  }
  return [...byName.values()].sort((a, b) => order.indexOf(a.kind) - order.indexOf(b.kind));
}

/** Two that go by one key are two things where their titles are the maker's own. */
const namedByMaker: ReadonlySet<MaterialKind> = new Set(['fragrance', 'colourant', 'addition']);

const order: readonly MaterialKind[] = [
  'fat',
  'lye',
  'water',
  'liquid',
  'hardener',
  'addition',
  'fragrance',
  'colourant',
  'base',
  'decor',
];

const carriers = {
  fat: { key: 'carrier-oil', title: 'Oil to stir colours into', kind: 'fat' },
  water: { key: 'water', title: 'Water, distilled', kind: 'water' },
  glycerol: { key: 'glycerol', title: 'Glycerol', kind: 'addition' },
} as const;

function ofPart(part: PartAmounts): MaterialUse[] {
  if (part.batch !== undefined) return ofBatch(part.batch);
  if (part.kind === 'melt-and-pour') {
    return [grams('base', part.material ?? 'melt-and-pour', 'Melt-and-pour base', part.massG ?? 0)];
  }
  const { material, massG, pieces = 0 } = part;
  if (material !== undefined && massG !== undefined) {
    return [grams('decor', material, part.title, massG)];
  }
  return [{ key: material ?? part.part, title: part.title, kind: 'decor', unit: 'piece', amount: pieces }];
}

function ofBatch(batch: BatchAmounts): MaterialUse[] {
  return [
    ...batch.fats.map(({ fat, title, massG }) => grams('fat', fat, title, massG)),
    ...sodaOf(batch),
    grams('lye', 'koh', 'Potassium hydroxide (KOH)', batch.kohG),
    grams('water', 'water', 'Water, distilled', batch.stock?.waterG ?? batch.waterG),
    ...(batch.liquids ?? []).map(({ key, title, massG }) => grams('liquid', key, title, massG)),
    grams('hardener', 'sodium-lactate', 'Sodium lactate, 60% solution', batch.sodiumLactateG),
    grams('hardener', 'salt', 'Salt', batch.saltG),
    grams('hardener', 'sugar', 'Sugar', batch.sugarG),
    ...batch.acids.map(({ key, title, massG }) => grams('addition', key, title, massG)),
    ...batch.additions.map(({ key, title, massG }) => grams('addition', key, title, massG)),
    ...batch.fragrances.map(({ key, title, massG }) => grams('fragrance', key, title, massG)),
    ...batch.colourants.flatMap(({ key, title, massG, carrier }) => [
      grams('colourant', key, title, massG),
      ...(carrier === undefined ? [] : [carrierUse(carrier, batch)]),
    ]),
  ];
}

/** Flakes, or the solution that was made of them before. */
function sodaOf({ stock, naohG }: BatchAmounts): MaterialUse[] {
  if (stock === undefined) return [grams('lye', 'naoh', 'Sodium hydroxide (NaOH)', naohG)];
  return [grams('lye', 'naoh-solution', 'Sodium hydroxide solution', stock.massG)];
}

/** A named fat is the one on the shelf; a colour that does not say is stirred into whatever oil there is. */
function carrierUse(
  { kind, fat, massG }: NonNullable<BatchAmounts['colourants'][number]['carrier']>,
  batch: BatchAmounts,
): MaterialUse {
  if (kind === 'fat' && fat !== undefined) {
    return grams('fat', fat, batch.fats.find((each) => each.fat === fat)?.title ?? fat, massG);
  }
  const { kind: of, key, title } = carriers[kind];
  return grams(of, key, title, massG);
}

function grams(kind: MaterialKind, key: string, title: string, amount: number): MaterialUse {
  return { key, title, kind, unit: 'g', amount };
}
