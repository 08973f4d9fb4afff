import type { PartKind, StageKind } from '#contract/names';
import { listAt, textAt, valueAt, withValue, type Group, type Value } from '../../../form/values.js';
import { newKey } from '../../new-key.js';
import type { PieceTitles, Role } from './piece-titles.js';

/** What can be put onto or into a piece that is there already. */
export const additions = ['layer', 'filling', 'coat', 'piping', 'decor', 'glaze', 'cast', 'embed'] as const;
export type Addition = (typeof additions)[number];

/** Where a stage goes: behind the last stage of these kinds, or at the very beginning. */
type Place = readonly StageKind[] | 'first';

interface AddedStage {
  readonly kind: StageKind;
  readonly place: Place;
  /** Not a second one: one of the kind serves all that is on the piece. */
  readonly isOnce?: true;
  /** Handles what was cast, not what is added. */
  readonly ofCast?: true;
}

interface AddedPart {
  /** What it is on the piece, where the addition is called otherwise. */
  readonly role?: Role;
  readonly kind: PartKind;
  readonly fields: Group;
  readonly stages: readonly AddedStage[];
  /** Minutes that it stands from when it is made until it is put on; none where its kind says all. */
  readonly standsMin?: number;
}

const casting: readonly StageKind[] = ['pour', 'layer'];
const bare: readonly StageKind[] = ['press-decor', ...casting, 'unmould', 'cut', 'patch'];
const withBatter: readonly StageKind[] = [...bare, 'dip', 'pipe', 'set-in', 'sprinkle', 'mist'];
const onTop: readonly StageKind[] = [...withBatter, 'glaze'];
const turn: AddedStage = { kind: 'turn', place: onTop, isOnce: true, ofCast: true };

/**
 * What each addition brings: a part, and the stage that makes it. What is put on goes on top of what is there, a filling goes
 * in as soon as the piece is out of its mould, decor into the batter that went on last. When each may be done follows
 * from the kinds of its stages. Common practice, no source.
 */
const added: Readonly<Record<Addition, AddedPart>> = {
  layer: { kind: 'batch', fields: {}, stages: [{ kind: 'layer', place: casting }] },
  filling: { kind: 'batch', fields: {}, stages: [{ kind: 'pipe', place: bare }] },
  coat: { kind: 'batch', fields: {}, stages: [{ kind: 'dip', place: onTop }, turn] },
  piping: { kind: 'batch', fields: {}, stages: [{ kind: 'pipe', place: onTop }] },
  decor: {
    kind: 'decor',
    fields: { perPiece: 1 },
    stages: [
      { kind: 'press-decor', place: 'first' },
      { kind: 'set-in', place: ['dip', 'pipe'] },
    ],
    // Pressed dough dries overnight, so that it bears being picked up.
    standsMin: 720,
  },
  glaze: { kind: 'melt-and-pour', fields: {}, stages: [{ kind: 'glaze', place: onTop }, turn] },
  embed: {
    kind: 'melt-and-pour',
    fields: { amount: { by: 'cavity', fillPercent: 100 } },
    stages: [
      { kind: 'unmould', place: 'first' },
      { kind: 'pour', place: 'first' },
      { kind: 'melt-base', place: 'first' },
      { kind: 'set-in', place: casting },
    ],
  },
  cast: {
    kind: 'batch',
    role: 'base',
    fields: { amount: { by: 'cavity', fillPercent: 100 } },
    stages: [
      { kind: 'pour', place: 'first' },
      { kind: 'unmould', place: casting },
    ],
  },
};

/** A design with something more on the piece: the part, and its stages in the place where they are usually done. */
export function withAddition(design: Value, addition: Addition, titles: PieceTitles): Value {
  const { kind, fields, stages, standsMin, role = addition as Role } = added[addition];
  const recipe = kind === 'batch' ? valueAt(castParts(design)[0], ['recipe']) : undefined;
  const part = withRole(design, role, titles, {
    kind,
    ...fields,
    ...(recipe !== undefined && { recipe }),
  });
  const made = stages.reduce<Value>((before, stage) => {
    if (stage.isOnce === true && kindsOf(before).includes(stage.kind)) return before;
    const handled = stage.ofCast === true ? castParts(before)[0] : listAt(part, ['parts']).at(-1);
    return withStageIn(before, stage.kind, placeIn(before, stage.place), handled, titles);
  }, part);
  if (standsMin !== undefined) return standing(made, part, standsMin);
  return addition === 'layer' ? sharedOut(made) : made;
}

/** The first and the last stage of the part that was added, apart by the time that it stands. */
function standing(design: Value, withPart: Value, atLeastMin: number): Value {
  const key = valueAt(listAt(withPart, ['parts']).at(-1), ['key']);
  const own = listAt(design, ['stages']).filter((stage) => valueAt(stage, ['part']) === key);
  const [from, to] = [own[0], own.at(-1)].map((stage) => textAt(stage, ['key']));
  if (from === undefined || to === undefined || from === to) return design;
  return withValue(design, ['links'], [...listAt(design, ['links']), { from, to, atLeastMin }]);
}

/** The design with one part more, named after what it is on the piece. */
export function withRole(design: Value, role: Role, titles: PieceTitles, fields: Group): Value {
  const parts = listAt(design, ['parts']);
  const taken = parts.map((each) => textAt(each, ['title']));
  const plain = titles.roles[role];
  const title =
    role === 'layer' || taken.includes(plain) ? firstFree(plain, taken, role === 'layer' ? 1 : 2) : plain;
  const key = newKey(
    title,
    parts.map((each) => textAt(each, ['key'])),
  );
  return withValue(design, ['parts'], [...parts, { key, title, ...fields }]);
}

/** The design with one stage more at a place, called after what is done to its part. */
export function withStageIn(
  design: Value,
  kind: StageKind,
  place: number,
  part: Value,
  titles: PieceTitles,
): Value {
  const stages = listAt(design, ['stages']);
  const usual = titles.stage(kind, textAt(part, ['title']));
  // Two that do not say what they handle would be the same to read.
  const isTaken = stages.some((each) => textAt(each, ['title']) === usual);
  const title = isTaken ? `${usual}: ${textAt(part, ['title'])}` : usual;
  const key = newKey(
    title,
    stages.map((each) => textAt(each, ['key'])),
  );
  const stage = { key, title, kind, part: valueAt(part, ['key']) };
  return withValue(design, ['stages'], [...stages.slice(0, place), stage, ...stages.slice(place)]);
}

/** What is poured, or, where nothing is, the first part there is. */
export function castParts(design: Value): readonly Value[] {
  const parts = listAt(design, ['parts']);
  const making = listAt(design, ['stages']).filter((stage) =>
    casting.includes(valueAt(stage, ['kind']) as StageKind),
  );
  const cast = parts.filter((part) =>
    making.some((stage) => valueAt(stage, ['part']) === valueAt(part, ['key'])),
  );
  return cast.length > 0 ? cast : parts.slice(0, 1);
}

/** Kinds in the order in which they usually come. Common practice, no source. */
const usualOrder: readonly (readonly StageKind[])[] = [
  ['press-decor'],
  ['make-lye', 'melt-fats', 'melt-base'],
  ['mix', 'cook', 'rebatch'],
  ['split'],
  casting,
  ['unmould'],
  ['cut', 'patch'],
  ['dip', 'pipe', 'set-in', 'sprinkle', 'mist', 'glaze'],
  ['turn', 'stamp'],
  ['zap-test'],
  ['wrap', 'label'],
];

/** Where a stage of a kind usually goes: behind all that comes before it or beside it; a kind of no place goes last. */
export function placeOf(design: Value, kind: StageKind): number {
  const rank = usualOrder.findIndex((kinds) => kinds.includes(kind));
  const kinds = kindsOf(design);
  if (rank < 0) return kinds.length;
  const before = new Set(usualOrder.slice(0, rank + 1).flat());
  return kinds.findLastIndex((each) => before.has(each)) + 1;
}

/** Behind the last stage of some kinds; else behind the last that casts, as decor is then set into the mould. */
function placeIn(design: Value, place: Place): number {
  if (place === 'first') return 0;
  const kinds = kindsOf(design);
  const last = kinds.findLastIndex((kind) => place.includes(kind));
  return last >= 0 ? last + 1 : kinds.findLastIndex((kind) => casting.includes(kind)) + 1;
}

/**
 * One more layer takes its share of the cavity, as long as each of those there has an equal one: all that was cast in it
 * shares it evenly. Where the maker said otherwise, the new layer is theirs to size.
 */
function sharedOut(design: Value): Value {
  const parts = listAt(design, ['parts']);
  const mould = valueAt(castParts(design)[0], ['mould']);
  const cavity = (each: Value): boolean => valueAt(each, ['amount', 'by']) === 'cavity';
  const inside = parts.flatMap((part, i) =>
    i < parts.length - 1 && cavity(part) && valueAt(part, ['mould']) === mould ? [i] : [],
  );
  const shares = new Set(inside.map((i) => valueAt(parts[i], ['amount', 'fillPercent'])));
  const amount = { by: 'cavity', fillPercent: shareOf(inside.length + 1) };
  const placed = withValue(design, ['parts', parts.length - 1], {
    ...(parts.at(-1) as Group),
    ...(mould !== undefined && { mould }),
    ...sameCavities(castParts(design)[0]),
    ...(shares.size === 1 && { amount }),
  });
  if (shares.size !== 1) return placed;
  return inside.reduce((before, i) => withValue(before, ['parts', i, 'amount'], amount), placed);
}

/** Pieces from a cavity, or cavities for a piece: all that shares one has the same. */
function sameCavities(part: Value): Group {
  const fields = ['piecesPerCavity', 'cavitiesPerPiece'] as const;
  return Object.fromEntries(
    fields.flatMap((field) => {
      const count = valueAt(part, [field]);
      return count === undefined ? [] : [[field, count]];
    }),
  );
}

/** An equal share of a cavity, to a tenth of a per cent and never more than all of it together. */
export function shareOf(count: number): number {
  return Math.floor(1000 / count) / 10;
}

function kindsOf(design: Value): StageKind[] {
  return listAt(design, ['stages']).map((stage) => valueAt(stage, ['kind']) as StageKind);
}

function firstFree(title: string, taken: readonly string[], from: number): string {
  for (let number = from; ; number += 1) {
    const name = `${title} ${String(number)}`;
    if (!taken.includes(name)) return name;
  }
}
