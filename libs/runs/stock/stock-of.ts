import type { KeptLeftover, StockDocument, StockLine, StockMove, WorkshopFacts } from '#contract';
import { byKey } from '../input/by-key.js';
import { effectiveLedger, type EffectiveStockLine, type StockEntryLine } from './effective-ledger.js';
import { materialBalance, type OpeningStock } from './material-balance.js';
import { usualTitle } from './usual-title.js';
import type { UsedMaterial } from './used-materials.js';

/** What the stock of a workshop follows from. */
export interface StockInput {
  readonly workshop: Pick<WorkshopFacts, 'materials' | 'currency'>;
  /** The ledger, in the order in which it was written. */
  readonly ledger: readonly StockEntryLine[];
  /** What the logs of all runs say is used up. */
  readonly uses: readonly UsedMaterial[];
  /** When `onHand` of the materials was so, ISO 8601; absent: before everything. */
  readonly openedAt?: string | undefined;
  /** Titles of runs of which `uses` cannot tell. */
  readonly unsized?: readonly string[] | undefined;
}

interface MaterialMoves {
  readonly key: string;
  readonly unit: 'g' | 'piece';
  /** Undefined where nobody has said what it is called. */
  readonly title: string | undefined;
  readonly moves: StockMove[];
}

/** How much there is of everything, as of the last entry of ledger and logs. */
export function stockOf(input: StockInput): StockDocument {
  const { effective } = effectiveLedger(input.ledger);
  const known = byKey(input.workshop.materials);
  const { currency } = input.workshop;
  const lines = movesByMaterial(input, effective).map((material) => {
    const stated = known.get(material.key);
    const isSame = stated?.unit === material.unit;
    return lineOf(material, isSame ? { amount: stated.onHand, at: input.openedAt } : undefined);
  });
  return {
    ...(currency === undefined ? {} : { currency }),
    materials: lines,
    unsized: [...(input.unsized ?? [])],
    leftovers: leftoversOf(effective),
  };
}

/** What changed the stock of one material, the latest first. */
export function movesOfMaterial(input: StockInput, key: string, unit: 'g' | 'piece'): StockMove[] {
  const { effective } = effectiveLedger(input.ledger);
  const found = movesByMaterial(input, effective).find((each) => each.key === key && each.unit === unit);
  return [...(found?.moves ?? [])].reverse().sort((a, b) => Date.parse(b.at) - Date.parse(a.at));
}

/**
 * The workshop with as much of each material on hand as its stock says; those that only the ledger knows are added.
 * What the stock does not know of stays as the workshop tells it.
 */
export function withStock(
  workshop: WorkshopFacts,
  { materials: lines }: Pick<StockDocument, 'materials'>,
): WorkshopFacts {
  const stock = new Map(lines.map((line) => [`${line.unit} ${line.key}`, line]));
  const known = workshop.materials.map((material) => {
    const line = stock.get(`${material.unit} ${material.key}`);
    return line === undefined ? material : { ...material, onHand: line.onHand };
  });
  const keys = new Set(known.map(({ key }) => key));
  const added = lines
    .filter(({ key, onHand }) => onHand > 0 && !keys.has(key))
    .map(({ key, title, unit, onHand }) => ({ key, title, unit, onHand, packs: [] }));
  return { ...workshop, materials: [...known, ...added] };
}

/** Materials that the workshop or the ledger knows, and those that runs have used up; in that order. */
function movesByMaterial(
  { workshop, uses }: StockInput,
  ledger: readonly EffectiveStockLine[],
): MaterialMoves[] {
  const found = new Map<string, MaterialMoves>();
  const of = (key: string, unit: 'g' | 'piece', title: string | undefined): MaterialMoves => {
    const name = `${unit} ${key}`;
    const before = found.get(name) ?? { key, unit, title, moves: [] };
    const material = { ...before, title: before.title ?? title };
    found.set(name, material);
    return material;
  };
  for (const { key, unit, title } of workshop.materials) of(key, unit, title);
  for (const line of ledger) {
    const move = moveOf(line);
    if (move !== undefined) of(move.key, move.unit, move.title).moves.push(move.move);
  }
  for (const { key, unit, title, amount, at, run, part, isSpoilt } of uses) {
    of(key, unit, title).moves.push({ at, kind: isSpoilt ? 'spoilt' : 'made', amount: -amount, run, part });
  }
  return [...found.values()];
}

function moveOf({
  ref,
  entry,
}: EffectiveStockLine): (Pick<MaterialMoves, 'key' | 'unit' | 'title'> & { move: StockMove }) | undefined {
  const { at, note } = entry;
  const told = { at, entry: ref, ...(note !== undefined && { note }) };
  switch (entry.kind) {
    case 'purchase':
    case 'count':
    case 'used':
    case 'written-off': {
      const { kind, material: key, unit, title } = entry;
      const amount = kind === 'purchase' || kind === 'count' ? entry.amount : -entry.amount;
      const price = kind === 'purchase' && entry.price !== undefined ? { price: entry.price } : {};
      return { key, unit, title, move: { kind, amount, ...price, ...told } };
    }
    case 'leftover-used': {
      if (entry.material === undefined) return undefined;
      const { kind, material: key, massG: amount } = entry;
      return { key, unit: 'g', title: undefined, move: { kind, amount, ...told } };
    }
    case 'leftover-kept':
    case 'leftover-written-off':
      return undefined;
  }
}

function lineOf({ key, unit, title, moves }: MaterialMoves, opening: OpeningStock | undefined): StockLine {
  const hasOpening = opening !== undefined && (opening.amount > 0 || moves.length === 0);
  const balance = materialBalance(moves, hasOpening ? opening : undefined);
  const { onHand, from, ...sums } = balance;
  const isNothing = from !== undefined && from.amount === 0 && moves.length === 0;
  let paid: StockLine['paid'];
  for (const { kind, amount, price, at } of moves) {
    if (kind !== 'purchase' || price === undefined) continue;
    if (paid === undefined || Date.parse(at) >= Date.parse(paid.at)) paid = { amount, price, at };
  }
  return {
    ...{ key, title: title ?? usualTitle(key), unit, onHand: Math.max(0, onHand) },
    ...(onHand < -1e-6 && { missing: -onHand }),
    ...(from !== undefined && !isNothing && { from }),
    ...sums,
    ...(paid !== undefined && { paid }),
  };
}

function leftoversOf(lines: readonly EffectiveStockLine[]): KeptLeftover[] {
  const taken = new Map<string, number>();
  for (const { entry } of lines) {
    if (entry.kind !== 'leftover-used' && entry.kind !== 'leftover-written-off') continue;
    taken.set(entry.leftover, (taken.get(entry.leftover) ?? 0) + entry.massG);
  }
  return lines
    .flatMap(({ ref, entry }): KeptLeftover[] => {
      if (entry.kind !== 'leftover-kept') return [];
      const { kind: _kind, at, note: _note, massG: keptG, ...told } = entry;
      const massG = keptG - (taken.get(ref) ?? 0);
      return massG < 0.05 ? [] : [{ id: ref, ...told, massG, keptG, keptAt: at }];
    })
    .sort((a, b) => Date.parse(a.madeAt) - Date.parse(b.madeAt));
}
